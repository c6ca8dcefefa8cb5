import type { Fault } from '@airspring/core/fault';
import { decimalText, NANOMETRE } from '@airspring/core/quantity';
import type { Job, Written } from '../job/job.js';
import { faultsOfAmplifier } from './amplifier.js';
import type { Faultless } from './faultless.js';
import type { BriefPart } from './fields.js';
import { faultsOfRoom } from './room.js';
import type { BriefFor, ReadBrief } from './schema.js';
import { tellingOf } from './units.js';

const EDGES = ['width', 'height', 'depth'] as const;

/** The fields of every brief, as they are written. */
type Plain = BriefFor<readonly []>;

/** Reports that two values in the brief contradict each other. */
type Contradicts = (path: string, got: unknown, expected: string) => void;

/** Faults between fields that are each right by themselves, as far as they were read. Values are quoted as written. */
export function faultsAcross(
  brief: unknown,
  read: Faultless<ReadBrief>,
  parts: readonly Pick<BriefPart, 'across'>[],
): Fault[] {
  const { wanted = {}, drivers = [] } = read;
  const written = brief as Plain;
  const faults: Fault[] = parts.flatMap(({ across }) => [
    ...(across?.(brief as Written, read as Partial<Job['sections']>) ?? []),
  ]);
  const contradicts: Contradicts = (path, got, expected) =>
    faults.push({ code: 'inconsistent', path, got, expected, remedy: 'Correct one of the two.' });

  if (wanted.lowest !== undefined && wanted.highest !== undefined && wanted.lowest >= wanted.highest) {
    const { lowest, highest } = written.wanted;
    contradicts('wanted.lowest', lowest, `less than wanted.highest, ${highest}`);
  }
  if (wanted.safeFrom !== undefined && wanted.highest !== undefined && wanted.safeFrom >= wanted.highest) {
    contradicts('wanted.safeFrom', written.wanted.safeFrom, `less than wanted.highest, ${written.wanted.highest}`);
  }
  if (typeof written.amplifier === 'object') faults.push(...faultsOfAmplifier(written.amplifier, read.amplifier ?? {}));
  if (typeof written.room === 'object' && written.room !== null)
    faults.push(...faultsOfRoom(written.room, read.room ?? {}));
  if (wanted.at === 'listener' && written.room === undefined) {
    const remedy = 'Add room with the distance, or state the wants at 1 m.';
    faults.push({
      code: 'inconsistent',
      path: 'wanted.at',
      got: wanted.at,
      expected: 'a listener: the section room',
      remedy,
    });
  }
  acrossSpace(contradicts, written.space, read.space ?? {}, tellingOf(written).volume);
  if (read.workshop !== undefined) acrossWorkshop(contradicts, written, read.workshop, read.space?.panelThickness);
  for (const [i, driver] of drivers.entries()) {
    if (driver !== undefined) acrossDriver(contradicts, written.drivers[i] as Plain['drivers'][number], driver, i);
  }
  return faults;
}

function acrossWorkshop(
  contradicts: Contradicts,
  written: Plain,
  { pipes = [], joint, sheets = [], trim, recess, roundOver }: Faultless<NonNullable<ReadBrief['workshop']>>,
  panelThickness: number | undefined,
): void {
  for (const [i, pipe] of pipes.entries()) {
    if (pipe?.inner === undefined || pipe.outer === undefined || pipe.inner < pipe.outer) continue;
    const { inner, outer } = written.workshop?.pipes?.[i] ?? {};
    contradicts(`workshop.pipes[${i}].inner`, inner, `less than its outer diameter, ${outer}`);
  }
  for (const [i, sheet] of sheets.entries()) {
    for (const edge of ['length', 'width'] as const) {
      if (sheet?.[edge] === undefined || trim === undefined || sheet[edge] > 2 * trim) continue;
      const { [edge]: got } = written.workshop?.sheets?.[i] ?? {};
      contradicts(`workshop.sheets[${i}].${edge}`, got, `more than twice workshop.trim, ${written.workshop?.trim}`);
    }
  }
  const depth = joint?.rabbet?.depth;
  if (depth !== undefined && panelThickness !== undefined && depth >= panelThickness) {
    const expected = `less than space.panelThickness, ${written.space?.panelThickness}`;
    contradicts('workshop.joint.rabbet.depth', written.workshop?.joint?.rabbet?.depth, expected);
  }
  if (panelThickness === undefined) return;
  const board = `space.panelThickness, ${written.space?.panelThickness}`;
  // Half of the board stays for the screws of the frame (common practice).
  if (recess !== undefined && recess > panelThickness / 2 + NANOMETRE) {
    contradicts('workshop.recess', written.workshop?.recess, `at most half of ${board}`);
  } else if (roundOver !== undefined && roundOver > panelThickness - (recess ?? 0) + NANOMETRE) {
    const less = recess === undefined ? '' : ` less workshop.recess, ${written.workshop?.recess}`;
    contradicts('workshop.roundOver', written.workshop?.roundOver, `at most ${board}${less}`);
  }
}

function acrossSpace(
  contradicts: Contradicts,
  written: Plain['space'],
  space: Faultless<ReadBrief['space']>,
  says: (volume: number) => string,
): void {
  const edges = EDGES.filter((edge) => space[edge] !== undefined);
  const [least] = [...edges].sort((a, b) => space[a]! - space[b]!);
  if (least !== undefined && 2 * (space.panelThickness ?? 0) >= space[least]!) {
    contradicts('space.panelThickness', written.panelThickness, `less than half of space.${least}, ${written[least]}`);
  }
  const cuboid = edges.length === 3 ? edges.reduce((product, edge) => product * space[edge]!, 1) : Infinity;
  const whole = Math.min(cuboid, space.volume ?? Infinity);
  const exact = edges.length === 3 && edges.every((edge) => space.exactly?.includes(edge));
  if (exact && space.volume !== undefined && space.volume < cuboid) {
    const expected = `at least ${says(cuboid)}, since space.exactly holds all three edges`;
    contradicts('space.volume', written.volume, expected);
  }
  if (space.bracing !== undefined && space.bracing >= whole) {
    contradicts('space.bracing', written.bracing, `less than the volume of the whole space, ${says(whole)}`);
  }
}

const litres = (volume: number): string => `${decimalText(volume * 1e3, 4)} L`;
const squareCentimetres = (area: number): string => `${decimalText(area * 1e4, 4)} cm²`;
const disc = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

/**
 * The parts of a driver must fit within its frame: the cone, its travel, and the volume that the driver displaces. A cone that is wider than
 * the cutout is no fault: Sd counts the surround up to its middle, and a surround may lie over the edge of the hole.
 */
function acrossDriver(
  contradicts: Contradicts,
  written: Plain['drivers'][number],
  {
    Sd,
    coneDiameter,
    Xmax,
    outerDiameter,
    depth,
    displacedVolume,
    largeSignal,
  }: Faultless<ReadBrief['drivers'][number]>,
  i: number,
): void {
  const at = (field: string) => `drivers[${i}].${field}`;
  if (outerDiameter !== undefined) {
    const frame = `outerDiameter, ${written.outerDiameter}`;
    if (Sd !== undefined && Sd >= disc(outerDiameter)) {
      contradicts(
        at('Sd'),
        written.Sd,
        `less than the area of a disc of ${frame}: ${squareCentimetres(disc(outerDiameter))}`,
      );
    }
    if (coneDiameter !== undefined && coneDiameter >= outerDiameter) {
      contradicts(at('coneDiameter'), written.coneDiameter, `less than ${frame}`);
    }
  }
  const { Xmech } = largeSignal ?? {};
  if (Xmech !== undefined && Xmax !== undefined && Xmech < Xmax) {
    contradicts(at('largeSignal.Xmech'), written.largeSignal?.Xmech, `at least Xmax, ${written.Xmax}`);
  }
  if (depth === undefined) return;
  if (Xmax !== undefined && Xmax >= depth) {
    contradicts(at('Xmax'), written.Xmax, `a one-way travel less than depth, ${written.depth}`);
  }
  if (outerDiameter === undefined || displacedVolume === undefined) return;
  const cylinder = disc(outerDiameter) * depth;
  if (displacedVolume > cylinder) {
    const sizes = `outerDiameter, ${written.outerDiameter}, and depth, ${written.depth}`;
    contradicts(
      at('displacedVolume'),
      written.displacedVolume,
      `at most the volume of a cylinder of ${sizes}: ${litres(cylinder)}`,
    );
  }
}
