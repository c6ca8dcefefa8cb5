import type { Fault } from '@airspring/core/fault';
import { InputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { estimatedDriverVolume, innerSize } from '@airspring/core/space';
import { severalVents } from '@airspring/core/vent';
import type * as v from 'valibot';
import { jobOf } from '../brief/defaults.js';
import type { ReadFields } from '../brief/fields.js';
import { checked } from '../brief/read.js';
import { type ReadBrief, schemaWith } from '../brief/schema.js';
import type { Job, Written } from '../job/job.js';
import type { BoxKind } from '../kind/box-kind.js';
import type { roundVentFields } from '../kind/round-vent-fields.js';
import { airSpeedOf } from '../kind/tuned-by-vent.js';
import { acrossStanding } from './across.js';
import { type ReadStanding, standingFields } from './fields.js';
import type { Edges, Place, Standing, StandingVent } from './standing.js';
import { ventOf } from './state.js';

const WALL = 0.003;
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
  const grown = (edges: Edges, by: number) => edges.map((edge) => edge + by) as unknown as Edges;
  if (inner) return { inner: edgesOf(inner), outer: grown(edgesOf(inner), 2 * t) };
  if (outer) {
    const size = innerSize({ outer: outer as never, thickness: si('length', t) });
    return { inner: edgesOf(size), outer: edgesOf(outer) };
  }
  const edge = Math.cbrt(air) + 2 * t;
  return { outer: [edge, edge, edge] as Edges };
}

/** The measured tuning: the dip itself, or what two peaks and fs say of a box with few losses (small1973vented3). */
const measuredTuning = ({ measured }: ReadStanding['standing'], fs: number): number | undefined =>
  measured?.tuning ?? (measured?.peaks && (measured.peaks[0] * measured.peaks[1]) / fs);

/** Whether a brief is about a box that stands. */
export const stands = (brief: unknown): boolean =>
  typeof brief === 'object' && brief !== null && Object.hasOwn(brief, 'standing');

/**
 * Reads a brief about a box that stands.
 *
 * @throws InputError with every fault at its path
 */
export function readStanding(brief: unknown, kinds: readonly BoxKind[]): Standing {
  const schema = schemaWith(kinds, standingFields);
  const parts = [...kinds, { across: acrossStanding }];
  const { read, air, choices } = checked(brief, schema as unknown as v.GenericSchema<unknown, ReadBrief>, parts);
  const { standing, workshop } = read as unknown as ReadStanding;
  const [choice] = choices;
  if (choice === undefined || choices.length > 1) throw new InputError([oneWiring(choices.length)]);
  const { drivers } = choice;
  const { driver, fronts } = drivers;
  const { panelThickness } = standing;
  const vents = (standing.vents ?? []).map((vent) => tubeOf(vent));
  const taken = vents.reduce(
    (sum, { count, diameter, wall, length }) =>
      sum + (count * Math.PI * (diameter + 2 * wall) ** 2 * Math.max(0, length - panelThickness)) / 4,
    0,
  );
  const sizes = sizesOf(standing, standing.air ?? 0);
  const inside = Math.max(0, (driver.depth ?? 0) - panelThickness);
  const driverVolume = driver.displacedVolume ?? estimatedDriverVolume(driver.cutoutDiameter ?? 0, inside);
  const product = ([a, b, c]: Edges) => a * b * c;
  const airBeforeVents =
    sizes.inner && standing.air === undefined
      ? product(sizes.inner) - (standing.bracing ?? 0) - fronts * driverVolume
      : (standing.air ?? 0) + taken;
  const [width, height, depth] = sizes.outer;
  const space = { width, height, depth, panelThickness, ...(standing.bracing && { bracing: standing.bracing }) };
  const job: Job = jobOf(brief as Written, { ...read, space } as ReadBrief, air, choices);
  const { vent = {}, printer } = job.sections as ReadFields<typeof roundVentFields>;
  const measured = measuredTuning(standing, choice.completed.parameters.fs);
  const computed =
    vents.length > 0
      ? severalVents(
          {
            vents: vents.map(ventOf),
            volumeBeforeVent: si('volume', airBeforeVents),
            panelThickness: si('length', panelThickness),
          },
          air,
        )
      : undefined;

  const tuning = measured !== undefined && computed?.ok ? { measured, computed: computed.fb as number } : undefined;

  return {
    job,
    drivers,
    ...(sizes.inner && { inner: sizes.inner }),
    panelThickness,
    airBeforeVents,
    driverVolume,
    driverVolumeAssumed: driver.displacedVolume === undefined,
    vents: vents.map((tube, i): StandingVent => {
      const { hole, place } = (standing.vents ?? [])[i] ?? {};
      return {
        ...tube,
        hole: hole ?? tube.diameter + 2 * tube.wall,
        holeAssumed: hole === undefined,
        ...(place && sizes.inner && { place: placeOf(place, sizes.outer) }),
      };
    }),
    ...(standing.drivers && sizes.inner && { driverPlaces: standing.drivers.map((one) => placeOf(one, sizes.outer)) }),
    ...(tuning && { tuning }),
    tuningRatio: tuning ? tuning.measured / tuning.computed : 1,
    keep: new Set(standing.keep ?? ['box']),
    workshop: {
      holeSaws: [...(workshop?.holeSaws ?? [])].sort((a, b) => a - b),
      pipes: workshop?.pipes ?? [],
      printer: { height: printer?.height ?? Infinity, width: printer?.width ?? Infinity },
    },
    ways: new Map(),
    ...(job.amplifier.filter && { filter: job.amplifier.filter }),
    airSpeedPeak: airSpeedOf(vent),
  };
}

const tubeOf = (vent: NonNullable<ReadStanding['standing']['vents']>[number]) => ({
  diameter: vent.diameter,
  length: vent.length,
  count: vent.count ?? 1,
  wall: vent.wall ?? WALL,
  rounding: vent.rounding ?? 0,
});

const oneWiring = (count: number): Fault => ({
  code: 'conflict',
  path: 'drivers',
  got: `${count} drivers or wirings`,
  expected: 'one kind of driver in one wiring, the one that stands in the box',
  remedy: 'Leave the others out.',
});
