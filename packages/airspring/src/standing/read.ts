import { type Fault, InputError, refuse } from '@airspring/core/fault';
import { NANOMETRE, si } from '@airspring/core/quantity';
import { innerSize } from '@airspring/core/space';
import type * as v from 'valibot';
import { jobOf } from '../brief/defaults.js';
import type { DriverModels } from '../brief/driver-models.js';
import type { ReadFields } from '../brief/fields.js';
import { checked } from '../brief/read.js';
import { type ReadBrief, schemaWith } from '../brief/schema.js';
import { standardModels } from '../brief/standard-models.js';
import { tellingOf } from '../brief/units.js';
import type { DriverChoice, Job, Written } from '../job/job.js';
import type { BoxKind } from '../kind/box-kind.js';
import { contentsOf, driverDepth } from '../kind/drivers.js';
import { axisOf } from '../kind/face-axis.js';
import { USUAL_NOZZLE } from '../kind/printed-tube.js';
import type { roundVentFields } from '../kind/round-vent-fields.js';
import { airSpeedOf } from '../kind/vented-fields.js';
import { acrossStanding } from './across.js';
import { type ReadStanding, standingFields, type WrittenStanding } from './fields.js';
import { dataOf, type Measurement, measuredDriver } from './measured-driver.js';
import { faultsOfPlaces, holeOf } from './places.js';
import { type Edges, longerBy, type Place, type Standing, type StandingVent } from './standing.js';
import { tunedBy, ventOf } from './state.js';
import { airTaken, WALL } from './tube.js';

const edgesOf = ({ width, height, depth }: { width: number; height: number; depth: number }): Edges => [
  width,
  height,
  depth,
];

type WrittenPlace = { readonly face: Place['face']; readonly across: number; readonly up: number };

/** A place as a builder measures it, as a point on the outer surface. */
function placeOf({ face, across, up }: WrittenPlace, outer: Edges): Place {
  const [width, height, depth] = outer;
  const at: Record<Place['face'], Edges> = {
    left: [0, up, across],
    right: [width, up, across],
    bottom: [across, 0, up],
    top: [across, height, up],
    front: [across, up, 0],
    back: [across, up, depth],
  };
  return { face, centre: at[face] };
}

/** What the sizes of the box leave, with the air where no size is known; outer edges of a cube then stand for the box. */
function sizesOf({ outer, inner, panelThickness: t }: ReadStanding['standing'], air: number) {
  if (inner) return { inner: edgesOf(inner), outer: longerBy(edgesOf(inner), 2 * t) };
  if (outer) {
    const size = innerSize({ outer: outer as never, thickness: si('length', t) });
    return { inner: edgesOf(size), outer: edgesOf(outer) };
  }
  const edge = Math.cbrt(air) + 2 * t;
  return { outer: [edge, edge, edge] as Edges };
}

/** The measured tuning: the dip itself, or what two peaks and fs say of a box with few losses (small1973vented4, fsB = fL fH/fB). */
const measuredTuning = ({ measured }: ReadStanding['standing'], fs: number): number | undefined =>
  measured?.tuning ?? (measured?.peaks && (measured.peaks[0] * measured.peaks[1]) / fs);

/** Whether a brief is about a box that stands. */
export const stands = (brief: unknown): boolean =>
  typeof brief === 'object' && brief !== null && Object.hasOwn(brief, 'standing');

/**
 * Reads a brief about an existing box.
 *
 * @throws InputError with every fault at its path
 */
export function readStanding(
  brief: unknown,
  kinds: readonly BoxKind[],
  models: DriverModels = standardModels,
): Standing {
  const schema = schemaWith(kinds, standingFields, models);
  const parts = [...kinds, { across: acrossStanding }];
  let measurement: Measurement | undefined;
  const { read, air, choices } = checked(
    brief,
    schema as unknown as v.GenericSchema<unknown, ReadBrief>,
    parts,
    models,
    (faults, faultless, medium) => {
      const wrong: Fault[] = [];
      measurement = measuredDriver(faultless, medium, wrong);
      faults.push(...wrong);
      const [sheet, ...others] = faultless.drivers ?? [];
      // What is missing has been told: no driver then says it again.
      if (wrong.length > 0) return { ...faultless, drivers: [undefined, ...others] };
      return measurement
        ? { ...faultless, drivers: [{ ...sheet, ...dataOf(measurement.told) }, ...others] }
        : faultless;
    },
  );
  const { standing, workshop } = read as unknown as ReadStanding;
  const [choice] = choices;
  if (choice === undefined || choices.length > 1) throw new InputError([oneWiring(choices.length)]);
  const { drivers } = choice;
  const { panelThickness } = standing;
  const vents = (standing.vents ?? []).map((vent) => tubeOf(vent));
  const sizes = sizesOf(standing, standing.air ?? 0);
  const [width, height, depth] = sizes.outer;
  const bracing = standing.bracing !== undefined && { bracing: standing.bracing };
  const space = { width, height, depth, panelThickness, ...bracing };
  const job: Job = jobOf(brief as Written, { ...read, space } as ReadBrief, air, choices);
  const contents = contentsOf(job, choice);
  const taken = vents.reduce((sum, tube) => sum + airTaken(tube, panelThickness), 0);
  const fromSizes = sizes.inner && standing.air === undefined;
  const airBeforeVents = fromSizes ? product(sizes.inner) - contents.taken : (standing.air ?? 0) + taken;
  const says = tellingOf(brief as object);
  refuse([
    ...faultsOfPlaces(
      standing,
      drivers.driver.cutoutDiameter ?? 0,
      sizes.inner && { width, height, depth },
      says.length,
    ),
    ...faultsOfRoom(brief as WrittenStandingBrief, says, {
      airBeforeVents,
      taken,
      contents: contents.taken,
      choice,
      outer: sizes.inner && sizes.outer,
      inner: sizes.inner,
    }),
  ]);
  const { vent = {}, printer } = job.sections as ReadFields<typeof roundVentFields>;
  const measured = measuredTuning(standing, choice.completed.parameters.fs);
  const computed = vents.length > 0 ? tunedBy(vents.map(ventOf), airBeforeVents, panelThickness, air) : undefined;
  const tuning = measured !== undefined && computed?.ok ? { measured, computed: computed.fb as number } : undefined;
  const { peaks } = standing.measured ?? {};
  const byPeaks = !measurement && peaks ? (peaks[0] * peaks[1]) / choice.completed.parameters.fs : undefined;
  const airOfSizes =
    sizes.inner && standing.air !== undefined ? product(sizes.inner) - contents.taken - taken : undefined;

  const ventsNow = vents.map((tube, i): StandingVent => {
    const { hole, place } = (standing.vents ?? [])[i] ?? {};
    return {
      ...tube,
      index: i,
      hole: holeOf({ ...tube, hole }, panelThickness),
      holeAssumed: hole === undefined,
      ...(place && sizes.inner && { place: placeOf(place, sizes.outer) }),
    };
  });
  return {
    job,
    drivers,
    ...(sizes.inner && { inner: sizes.inner }),
    panelThickness,
    airBeforeVents,
    contentsAssumed: fromSizes ? contents.assumed : [],
    vents: ventsNow,
    ventsNow,
    ...(standing.drivers && sizes.inner && { driverPlaces: standing.drivers.map((one) => placeOf(one, sizes.outer)) }),
    ...(tuning && { tuning: { ...tuning, ...(byPeaks !== undefined && { byPeaks }) } }),
    ...(airOfSizes !== undefined && { airOfSizes }),
    tuningRatio: tuning ? (measurement?.tuning ?? tuning.measured) / tuning.computed : 1,
    keep: new Set(standing.keep ?? ['box']),
    workshop: {
      holeSaws: [...(workshop?.holeSaws ?? [])].sort((a, b) => a - b),
      pipes: workshop?.pipes ?? [],
      printer: { height: printer?.height ?? Infinity, width: printer?.width ?? Infinity },
      nozzle: workshop?.nozzle ?? USUAL_NOZZLE,
    },
    ways: new Map(),
    ...(job.amplifier.filter && { filter: job.amplifier.filter }),
    airSpeedPeak: airSpeedOf(vent),
    quiet: vent.quiet ?? false,
    ...(measurement && { measurement, QL: measurement.told.leaks.QL }),
  };
}

const tubeOf = (vent: NonNullable<ReadStanding['standing']['vents']>[number]) => ({
  diameter: vent.diameter,
  length: vent.length,
  count: vent.count ?? 1,
  wall: vent.wall ?? WALL,
  rounding: vent.rounding ?? 0,
});

type WrittenStandingBrief = { readonly standing: WrittenStanding['standing'] };
const product = ([a, b, c]: Edges): number => a * b * c;

/** Drivers or vents that leave no air, and places that are not one for each driver. */
function faultsOfRoom(
  { standing }: WrittenStandingBrief,
  says: ReturnType<typeof tellingOf>,
  found: {
    readonly airBeforeVents: number;
    readonly taken: number;
    readonly contents: number;
    readonly choice: DriverChoice;
    /** Left out where no size is known. */
    readonly outer: Edges | undefined;
    readonly inner: Edges | undefined;
  },
): Fault[] {
  const { airBeforeVents, taken, contents, choice, outer, inner } = found;
  const { drivers, seating } = choice;
  const where = standing.outer ? 'standing.outer' : standing.inner ? 'standing.inner' : 'standing.air';
  const remedy = 'Correct the sizes of the box, or of what is in it.';
  const faults: Fault[] = [];
  const told = (path: string, got: unknown, expected: string, toDo = remedy) =>
    faults.push({ code: 'inconsistent', path, got, expected, remedy: toDo });
  if (!(airBeforeVents > 0)) {
    told(
      where,
      says.volume(airBeforeVents + contents),
      `more air than drivers and bracing take up, ${says.volume(contents)}`,
    );
  } else if (!(airBeforeVents > taken)) {
    told(
      'standing.vents',
      says.volume(taken),
      `vents that take up less than the air in the box, ${says.volume(airBeforeVents)}`,
    );
  }
  const inwards = outer && Math.max(...seating.faces.map((face) => outer[axisOf(face)]!));
  const depth = driverDepth(drivers);
  if (inwards !== undefined && depth >= inwards) {
    const expected = `a driver that is less deep than the box behind it, ${says.length(inwards)}`;
    told('drivers[0].depth', says.length(depth), expected);
  }
  const { cutoutDiameter } = drivers.driver;
  // The panel may be any of them: the second longest edge is the narrower one of the largest.
  const widest = inner && [...inner].sort((a, b) => b - a)[1]!;
  if (cutoutDiameter !== undefined && widest !== undefined && cutoutDiameter > widest + NANOMETRE) {
    const expected = `a cutout that a panel of the box holds: the largest is ${says.length(widest)} wide inside`;
    told('drivers[0].cutoutDiameter', says.length(cutoutDiameter), expected);
  }
  const places = standing.drivers?.length;
  if (places !== undefined && places !== drivers.fronts) {
    const expected = `one for each driver that shows on the outside, ${drivers.fronts}`;
    told('standing.drivers', `${places} places`, expected, 'List each place once, or leave the list out.');
  }
  return faults;
}

const oneWiring = (count: number): Fault => ({
  code: 'conflict',
  path: 'drivers',
  got: `${count} drivers or wirings`,
  expected: 'one kind of driver in one wiring: those that are in the box',
  remedy: 'Leave the others out.',
});
