import { innerSize, type System } from '@airspring/core/enclosure';
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
import { tuning } from '@airspring/core/vent';
import type { At, Curves, Design, Hole, Stretch } from '../answer.js';
import type { Build } from '../box/build.js';
import { PLAY, reachOf, ventBody } from '../box/candidate.js';
import { compileDemand } from '../box/demand.js';
import { place } from '../box/placement.js';
import type { Job } from '../brief/job.js';
import { points } from '../search/wishes.js';
import { cautions } from './cautions.js';
import { holeOf, panelsOf } from './cut-list.js';
import { marginsOf, plainMargin } from './margins.js';
import { guardOf } from './protection.js';
import { ventOf } from './vent-record.js';

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

/** Makes the record of a design from a build: everything a reader needs, from the public functions of core. */
export function assemble(job: Job, build: Build, name: string, leaning: string, words: readonly string[]): Design {
  const { kin, edges, netVolume, diameter, ventLength, demand, criteria } = build;
  const { space, wanted } = job;
  const { drivers } = kin.offer;
  const one = drivers.driver;
  const vented = kin.family === 'vented';
  const [width, height, depth] = edges.map((edge) => si('length', edge)) as [never, never, never];
  const outer = { width, height, depth };
  const thickness = si('length', space.panelThickness);
  const body = ventBody(job, diameter);
  const metres = (value: number) => si('length', value);
  const tuned = vented
    ? tuning(
        {
          vent: {
            diameter: metres(diameter),
            count: kin.vents,
            wall: metres(job.vent.wall),
            length: metres(ventLength),
          },
          netVolume: si('volume', netVolume),
          panelThickness: thickness,
        },
        job.air,
      )
    : undefined;
  const fb = tuned?.ok ? tuned.fb : 0;
  const system = compileDemand(job, kin.offer, kin.family).system(netVolume, fb);
  const area = (kin.vents * Math.PI * diameter ** 2) / 4;
  const sounding = vented ? withVentArea(system, area) : system;

  const placement = place(job, build);
  if (!placement.ok)
    throw new Error(
      `a design that does not fit left the search: ${placement.because.map(({ text }) => text).join(' ')}`,
    );
  const vent = ventOf(job, { ...build, fb }, placement);

  const limits = limitsOf(job, build);
  const band = logarithmicGrid(wanted.lowest, wanted.highest, 200);
  const loudest = greatestLevel(sounding, limits, band);
  const perVolt = respond(sounding, band);
  const driveFor = perVolt.levelHalfSpace.map((level) => 10 ** ((wanted.level - level) / 20));
  const scaled = (column: Float64Array) => column.map((value, i) => value * (driveFor[i] as number));
  const currents = scaled(perVolt.currentRms);

  const found = features(sounding, {
    from: si('frequency', Math.min(5, wanted.lowest / 4)),
    to: si('frequency', wanted.highest),
  });
  const impedances = features(sounding, { from: si('frequency', 5), to: si('frequency', 500) });
  const flatDrive = si('voltageRms', 10 ** ((wanted.level - found.referenceLevel) / 20));
  const grid = logarithmicGrid(Math.min(10, wanted.lowest / 2), Math.max(200, wanted.highest), CURVE_POINTS);
  const columns = respond(sounding, grid, { driveVoltageRms: flatDrive });
  const everywhere = greatestLevel(sounding, limits, grid);

  const path = `drivers[${kin.offer.driverIndex}]`;
  const atWanted = {
    driveVoltageRms: worst(band, driveFor),
    currentRms: worst(band, currents),
    displacementPeak: worst(band, scaled(perVolt.displacementPeak)),
    heat: worst(
      band,
      currents.map((current) => (current ** 2 * drivers.equivalent.Re) / drivers.count),
    ),
    ...(perVolt.airSpeedPeak && { airSpeedPeak: worst(band, scaled(perVolt.airSpeedPeak)) }),
  };

  return {
    name,
    leaning,
    words,
    family: kin.family,
    drivers: {
      name: kin.offer.name,
      count: drivers.count,
      series: drivers.series,
      parallel: drivers.parallel,
      isobaric: drivers.isobaric,
      Xmax: one.Xmax ?? 0,
      Pe: one.Pe ?? 0,
      outerDiameter: one.outerDiameter ?? 0,
      cutoutDiameter: one.cutoutDiameter ?? 0,
    },
    box: {
      outer: edges,
      inner: Object.values(innerSize({ outer, thickness })) as unknown as readonly [number, number, number],
      panelThickness: space.panelThickness,
      outerVolume: criteria.volume,
      netVolume,
      panels: panelsOf(edges, space.panelThickness),
      holes: [
        ...placement.placement.driver.centres.map((centre) =>
          holeOf('driver', placement.placement.driver.face, one.cutoutDiameter ?? 0, centre),
        ),
        ...(placement.placement.vent?.centres ?? []).map((centre) =>
          holeOf(
            'vent',
            (placement.placement.vent as { face: Hole['face'] }).face,
            body.outerDiameter + 2 * PLAY,
            centre,
          ),
        ),
      ],
    },
    ...(vent && { vent }),
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
    atWantedLevel: atWanted,
    protection: {
      ...guardOf(job, kin.offer, sounding, flatDrive),
      atFullVoltage: guardOf(job, kin.offer, sounding, si('voltageRms', job.amplifier.voltage)),
    },
    impedance: {
      maxima: impedances.impedanceMaxima,
      minima: impedances.impedanceMinima,
      least: leastOf(respond(sounding, logarithmicGrid(5, 500, 500))),
    },
    points: points(job, job.weights, criteria),
    margins: [
      ...marginsOf(job, build),
      ...plainMargin(
        `${path}.Xmax`,
        'cone travel, peak',
        ['displacementPeak', 'mm'],
        atWanted.displacementPeak.value,
        one.Xmax ?? Infinity,
      ),
      ...plainMargin(`${path}.Pe`, 'heat in each voice coil', ['power', 'W'], atWanted.heat.value, one.Pe ?? Infinity),
      ...plainMargin(
        `${path}.depth`,
        'room behind the driver',
        ['length', job.units.length],
        reachOf(drivers) + placement.slack.driverDepth,
        reachOf(drivers),
        'at least',
      ),
      ...(vent
        ? plainMargin(
            'printer.height',
            'longest printed piece',
            ['length', job.units.length],
            Math.max(...vent.pieces),
            job.printer.height,
          )
        : []),
    ],
    warnings: [
      ...job.air.warnings,
      ...(tuned?.ok ? tuned.warnings : []),
      ...(drivers.isobaric
        ? [
            {
              code: 'neglected' as const,
              text: 'The walls of the chamber between the drivers of an isobaric pair, and the spring and mass of its air. Counted is the room of a tube as wide as the cutout, with one driver at each end of it.',
            },
          ]
        : []),
    ],
    cautions: cautionsOf(Math.max(wanted.level, loudest.least.levelHalfSpace), vented),
    curves: curvesOf(columns, everywhere),
  };
}

const leastOf = ({ frequencies, impedance }: Columns): At => worst(frequencies, impedance, -1);

/** The search sweeps flows, the report speeds: the same network with the area of the vents. */
function withVentArea(system: System, area: number): System {
  const probes = { ...system.network.probes, ventAirSpeed: { of: 'flow', element: 'vent', factor: 1 / area } as const };
  return { ...system, network: { ...system.network, probes } };
}

const cautionsOf = (level: number, vented: boolean): string[] => [
  ...(level >= 85 ? [cautions.hearing] : []),
  cautions.travel,
  cautions.mains,
  cautions.dust,
  ...(vented ? [cautions.fumes] : []),
  cautions.weight,
];

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
