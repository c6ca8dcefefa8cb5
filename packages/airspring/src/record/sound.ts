import { currentLimit, greatestLevel, heatLimit, type Limit, travelLimit, voltageLimit } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { type Columns, features, respond } from '@airspring/core/response';
import type { Job } from '../job/job.js';
import type { Variant } from '../kind/box-kind.js';
import type { Box } from '../search/box.js';
import type { At, Curves, Design, Stretch } from './answer.js';
import { depthOf, readingsOf } from './depth.js';
import { guardOf } from './protection.js';

const CURVE_POINTS = 240;

/** Frequencies between which the impedance is told, Hz. */
export const IMPEDANCE_RANGE = [5, 500] as const;

/** Stretches of frequencies, each with the one limit that binds there. */
function stretchesOf(frequencies: ArrayLike<number>, binding: readonly string[]): Stretch[] {
  const stretches: { from: number; to: number; binding: string }[] = [];
  binding.forEach((name, i) => {
    const last = stretches.at(-1);
    const f = frequencies[i]!;
    if (last?.binding === name) last.to = f;
    else stretches.push({ from: last?.to ?? f, to: f, binding: name });
  });
  return stretches;
}

const worst = (frequencies: ArrayLike<number>, values: ArrayLike<number>, sign = 1): At => {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (sign * values[i]! > sign * values[at]!) at = i;
  return { frequency: frequencies[at]!, value: values[at]! };
};

/** Every limit: of the driver, of the kind's own parts, and of the amplifier. */
function limitsOf(job: Job, { choice, limits }: Variant, point: Box['point']): Limit[] {
  return [
    ...travelLimit(choice.drivers),
    ...heatLimit(choice.drivers),
    ...limits(point),
    voltageLimit(si('voltageRms', job.amplifier.voltage)),
    ...(job.amplifier.current < Infinity ? [currentLimit(si('currentRms', job.amplifier.current))] : []),
  ];
}

/** Names of the limits of every box, as nouns: 'the first limit it reaches is …'. */
const GIVES_OUT: Readonly<Record<string, string>> = {
  travel: 'the travel of the cone (Xmax)',
  heat: 'the heat of the voice coil (Pe)',
  'amplifier voltage': 'the voltage of the amplifier',
  'amplifier current': 'the current of the amplifier',
};

const curvesOf = (columns: Columns, most: ReturnType<typeof greatestLevel>): Curves => ({
  driveVoltageRms: columns.driveVoltageRms,
  frequencies: [...columns.frequencies],
  levelHalfSpace: [...columns.levelHalfSpace],
  groupDelay: [...columns.groupDelay],
  displacementPeak: [...columns.displacementPeak],
  ...(columns.airSpeedPeak && { airSpeedPeak: [...columns.airSpeedPeak] }),
  impedance: [...columns.impedance],
  impedancePhase: [...columns.impedancePhase],
  greatestLevel: [...most.levelHalfSpace],
  binding: most.binding,
});

/** How a box plays. Its system is swept over the band and over the range of the curves. */
export function soundOf(
  job: Job,
  { variant, point, demand }: Box,
  givesOut: Readonly<Record<string, string>>,
): Pick<Design, 'response' | 'loudness' | 'atWantedLevel' | 'protection' | 'impedance' | 'curves'> {
  const { wanted } = job;
  const { choice, load } = variant;
  const { drivers } = choice;
  const system = variant.system(point);
  const limits = limitsOf(job, variant, point);
  const band = logarithmicGrid(wanted.lowest, wanted.highest, 200);
  const loudest = greatestLevel(system, limits, band);
  const perVolt = respond(system, band);
  const driveFor = perVolt.levelHalfSpace.map((level) => 10 ** ((wanted.level - level) / 20));
  const scaled = (column: Float64Array) => column.map((value, i) => value * driveFor[i]!);
  const currents = scaled(perVolt.currentRms);
  const heat = currents.map((current) => (current ** 2 * drivers.equivalent.Re) / drivers.count);

  const found = features(system, {
    from: si('frequency', Math.min(5, wanted.lowest / 4)),
    to: si('frequency', wanted.highest),
  });
  const impedances = features(system, {
    from: si('frequency', IMPEDANCE_RANGE[0]),
    to: si('frequency', IMPEDANCE_RANGE[1]),
  });
  const { frequencies, impedance } = respond(system, logarithmicGrid(...IMPEDANCE_RANGE, 500));
  const flatDrive = si('voltageRms', 10 ** ((wanted.level - found.referenceLevel) / 20));
  const grid = logarithmicGrid(Math.min(10, wanted.lowest / 2), Math.max(200, wanted.highest), CURVE_POINTS);
  const own = load && ownLoad(system, load, point, band, driveFor);

  return {
    response: {
      ...(found.f3 !== undefined && { f3: found.f3 }),
      ...(found.f6 !== undefined && { f6: found.f6 }),
      ...(found.f10 !== undefined && { f10: found.f10 }),
      cutoff: demand.cutoff,
      ...depthOf(job, system, limits, demand.cutoff, load && { load, point }),
      referenceLevel: found.referenceLevel,
      greatestRise: demand.rise,
    },
    loudness: {
      level: loudest.least.levelHalfSpace,
      frequency: loudest.least.frequency,
      binding: loudest.least.binding,
      stretches: stretchesOf(loudest.frequencies, loudest.binding),
      givesOut: { ...GIVES_OUT, ...givesOut },
    },
    atWantedLevel: {
      driveVoltageRms: worst(band, driveFor),
      currentRms: worst(band, currents),
      displacementPeak: worst(band, scaled(perVolt.displacementPeak)),
      heat: worst(band, heat),
      ...(perVolt.airSpeedPeak && { airSpeedPeak: worst(band, scaled(perVolt.airSpeedPeak)) }),
      ...(own && { own }),
    },
    protection: {
      ...guardOf(job, { variant, point }, system, flatDrive),
      atFullVoltage: guardOf(job, { variant, point }, system, si('voltageRms', job.amplifier.voltage)),
    },
    impedance: {
      maxima: impedances.impedanceMaxima,
      minima: impedances.impedanceMinima,
      least: worst(frequencies, impedance, -1),
    },
    curves: curvesOf(respond(system, grid, { driveVoltageRms: flatDrive }), greatestLevel(system, limits, grid)),
  };
}

/** The greatest load, at the wanted level, of the part that the kind limits. */
function ownLoad(
  system: ReturnType<Variant['system']>,
  load: NonNullable<Variant['load']>,
  point: Box['point'],
  band: Float64Array,
  driveFor: Float64Array,
) {
  const readings = readingsOf(system, load, band);
  const perReading = load.perReading(point);
  const values = readings.map((reading, i) => reading * perReading * driveFor[i]!);
  return { what: load.what, meaning: load.meaning, at: worst(band, values), limit: load.capacity(point) * perReading };
}
