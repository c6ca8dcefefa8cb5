import type { System } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  currentLimit,
  greatestLevel,
  heatLimit,
  type Limit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { type Columns, features, respond } from '@airspring/core/response';
import type { At, Curves, Design, Stretch } from '../answer.js';
import type { Build } from '../box/build.js';
import { compileDemand } from '../box/demand.js';
import type { Job } from '../brief/job.js';
import { guardOf } from './protection.js';

const CURVE_POINTS = 240;

/** Stretches of frequencies over which one limit binds. */
function stretchesOf(frequencies: ArrayLike<number>, binding: readonly string[]): Stretch[] {
  const stretches: { from: number; to: number; binding: string }[] = [];
  binding.forEach((name, i) => {
    const last = stretches.at(-1);
    const f = frequencies[i] as number;
    if (last?.binding === name) last.to = f;
    else stretches.push({ from: last?.to ?? f, to: f, binding: name });
  });
  return stretches;
}

const worst = (frequencies: ArrayLike<number>, values: ArrayLike<number>, sign = 1): At => {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (sign * (values[i] as number) > sign * (values[at] as number)) at = i;
  return { frequency: frequencies[at] as number, value: values[at] as number };
};

function limitsOf(job: Job, { kin }: Build): Limit[] {
  const { drivers } = kin.offer;
  return [
    ...travelLimit(drivers),
    ...heatLimit(drivers),
    ...(kin.family === 'vented' ? [airSpeedLimit(si('airSpeedRms', job.vent.airSpeedPeak / Math.SQRT2))] : []),
    voltageLimit(si('voltageRms', job.amplifier.voltage)),
    ...(job.amplifier.current < Infinity ? [currentLimit(si('currentRms', job.amplifier.current))] : []),
  ];
}

/** The search sweeps flows, the report speeds: the same network with the area of the vents. */
function withVentArea(system: System, area: number): System {
  const probes = { ...system.network.probes, ventAirSpeed: { of: 'flow', element: 'vent', factor: 1 / area } as const };
  return { ...system, network: { ...system.network, probes } };
}

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

/** How a build plays: one system swept over the band and over what the curves show. `fb` is that of its placed vent. */
export function soundOf(
  job: Job,
  build: Build,
  fb: number,
): Pick<Design, 'response' | 'loudness' | 'atWantedLevel' | 'protection' | 'impedance' | 'curves'> {
  const { kin, netVolume, diameter, demand } = build;
  const { wanted } = job;
  const { drivers } = kin.offer;
  const swept = compileDemand(job, kin.offer, kin.family).system(netVolume, fb);
  const area = (kin.vents * Math.PI * diameter ** 2) / 4;
  const system = kin.family === 'vented' ? withVentArea(swept, area) : swept;

  const limits = limitsOf(job, build);
  const band = logarithmicGrid(wanted.lowest, wanted.highest, 200);
  const loudest = greatestLevel(system, limits, band);
  const perVolt = respond(system, band);
  const driveFor = perVolt.levelHalfSpace.map((level) => 10 ** ((wanted.level - level) / 20));
  const scaled = (column: Float64Array) => column.map((value, i) => value * (driveFor[i] as number));
  const currents = scaled(perVolt.currentRms);
  const heat = currents.map((current) => (current ** 2 * drivers.equivalent.Re) / drivers.count);

  const found = features(system, {
    from: si('frequency', Math.min(5, wanted.lowest / 4)),
    to: si('frequency', wanted.highest),
  });
  const impedances = features(system, { from: si('frequency', 5), to: si('frequency', 500) });
  const { frequencies, impedance } = respond(system, logarithmicGrid(5, 500, 500));
  const flatDrive = si('voltageRms', 10 ** ((wanted.level - found.referenceLevel) / 20));
  const grid = logarithmicGrid(Math.min(10, wanted.lowest / 2), Math.max(200, wanted.highest), CURVE_POINTS);

  return {
    response: {
      ...(found.f3 !== undefined && { f3: found.f3 }),
      ...(found.f6 !== undefined && { f6: found.f6 }),
      ...(found.f10 !== undefined && { f10: found.f10 }),
      cutoff: demand.cutoff,
      referenceLevel: found.referenceLevel,
      greatestRise: demand.rise,
    },
    loudness: {
      level: loudest.least.levelHalfSpace,
      frequency: loudest.least.frequency,
      binding: loudest.least.binding,
      stretches: stretchesOf(loudest.frequencies, loudest.binding),
    },
    atWantedLevel: {
      driveVoltageRms: worst(band, driveFor),
      currentRms: worst(band, currents),
      displacementPeak: worst(band, scaled(perVolt.displacementPeak)),
      heat: worst(band, heat),
      ...(perVolt.airSpeedPeak && { airSpeedPeak: worst(band, scaled(perVolt.airSpeedPeak)) }),
    },
    protection: {
      ...guardOf(job, kin.offer, system, flatDrive),
      atFullVoltage: guardOf(job, kin.offer, system, si('voltageRms', job.amplifier.voltage)),
    },
    impedance: {
      maxima: impedances.impedanceMaxima,
      minima: impedances.impedanceMinima,
      least: worst(frequencies, impedance, -1),
    },
    curves: curvesOf(respond(system, grid, { driveVoltageRms: flatDrive }), greatestLevel(system, limits, grid)),
  };
}
