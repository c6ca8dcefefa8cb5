import { conicalTaper, exponentialTaper, flanged, type Taper, wedgeTaper } from '../duct/index.js';
import type { Fault } from '../fault/index.js';
import {
  type Area,
  type AreaInput,
  type Fields,
  type FlowResistivity,
  type FlowResistivityInput,
  type Length,
  type LengthInput,
  notNegative,
  optional,
  positive,
  type RatioInput,
  readFieldsInto,
  si,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';

/** One part of a line, as people write it. It keeps its area unless one of `conicalTo`, `exponentialTo`, `wedgeTo` is given. */
export interface LinePartInput {
  readonly length: LengthInput;
  /** Cross-section, at the end that is nearer to the start of the line. */
  readonly area: AreaInput;
  /** Cross-section at the other end, with straight sides that widen alike in all directions. */
  readonly conicalTo?: AreaInput;
  /** Cross-section at the other end, which grows by the same factor over equal lengths. */
  readonly exponentialTo?: AreaInput;
  /** Cross-section at the other end, between two parallel boards and two that draw apart. */
  readonly wedgeTo?: AreaInput;
  /** Flow resistivity of the fibre that fills it; default 0, empty. See `withFill`. */
  readonly flowResistivity?: FlowResistivityInput;
  /** Loss at its walls over that of smooth round ones; default 1, and 0 without loss. See `withWallLoss`. */
  readonly wallLoss?: RatioInput;
}

/** The opening of a line, as people write it. */
export interface LineOpeningInput {
  /** Distance from the start of the line; default its far end. */
  readonly at?: LengthInput;
  /** Default: the cross-section of the line there. */
  readonly area?: AreaInput;
  /**
   * What the air around the opening adds to the length of the line. The default is that of an end flush with a wide wall. An
   * opening in the side, or one that is smaller than the line, has it on both faces; add the thickness of the wall yourself.
   */
  readonly endCorrection?: LengthInput;
  /** How much farther it is from the listener than the cone; default 0. */
  readonly path?: LengthInput;
}

const tapers = { conicalTo: conicalTaper, exponentialTo: exponentialTaper, wedgeTo: wedgeTaper } as const;
const taperNames = Object.keys(tapers) as (keyof typeof tapers)[];

const partShape = {
  length: positive('length'),
  area: positive('area'),
  conicalTo: optional(positive('area')),
  exponentialTo: optional(positive('area')),
  wedgeTo: optional(positive('area')),
  flowResistivity: optional(notNegative('flowResistivity')),
  wallLoss: optional(notNegative('ratio')),
};
const openingShape = {
  at: optional(notNegative('length')),
  area: optional(positive('area')),
  endCorrection: optional(notNegative('length')),
  path: optional(notNegative('length')),
};

/** One part of a line after reading, in SI units. */
export interface LinePartSpec extends Omit<Fields<typeof partShape>, 'flowResistivity' | 'wallLoss'> {
  readonly flowResistivity: FlowResistivity;
  readonly wallLoss: number;
}

/** The opening of a line after reading, in SI units. */
export interface LineOpeningSpec {
  readonly at: Length;
  readonly area: Area;
  readonly endCorrection: Length;
  readonly path?: Length;
}

/** The parts of a line, read; nothing if any is refused. */
export function readParts(faults: Fault[], given: unknown): readonly LinePartSpec[] | undefined {
  const path = 'box.parts';
  if (!Array.isArray(given) || given.length === 0) {
    const remedy = "Give its parts from the start: parts: [{ length: '2 m', area: '200 cm²' }].";
    faults.push({ code: 'empty', path, got: given, expected: 'a list of parts of the line', remedy });
    return undefined;
  }
  const read = given.map((one: unknown, i) => {
    const part = readFieldsInto(faults, `${path}[${i}]`, one, partShape);
    const [first, second] = taperNames.filter((name) => part?.[name] !== undefined);
    if (second !== undefined) {
      const expected = `one of ${first} and ${second}`;
      faults.push({ code: 'conflict', path: `${path}[${i}].${second}`, got: second, expected, remedy: 'Remove one.' });
    }
    return (
      part && {
        ...part,
        flowResistivity: part.flowResistivity ?? si('flowResistivity', 0),
        wallLoss: part.wallLoss ?? 1,
      }
    );
  });
  return read.every((part) => part !== undefined) ? read : undefined;
}

export const lengthOf = (parts: readonly LinePartSpec[]): number => parts.reduce((sum, { length }) => sum + length, 0);

/** A stretch of a line: the part that it belongs to, and where in it it begins and ends, m. */
interface Stretch {
  readonly part: LinePartSpec;
  readonly from: number;
  readonly to: number;
}

/** How the area of a part changes along it, and to what. */
export function taperOf(part: LinePartSpec): { readonly taper: Taper; readonly far: number } {
  const name = taperNames.find((one) => part[one] !== undefined);
  return name === undefined ? { taper: conicalTaper, far: part.area } : { taper: tapers[name], far: part[name]! };
}

/** The area of a part at a distance from its near end, m². The taper between two such areas is that of the part. */
export function areaIn(part: LinePartSpec, distance: number): number {
  const { taper, far } = taperOf(part);
  return far === part.area ? far : taper(part.area, far, distance / part.length);
}

/** The stretches of a line between cuts at distances from its start, m, and where each of them begins. */
export function stretchesOf(
  parts: readonly LinePartSpec[],
  cuts: readonly number[],
): readonly (Stretch & { start: number })[] {
  let start = 0;
  return parts.flatMap((part) => {
    const begin = start;
    start += part.length;
    const inside = cuts.map((x) => x - begin).filter((x) => x > NANOMETRE && x < part.length - NANOMETRE);
    const joints = [0, ...new Set(inside.sort((a, b) => a - b)), part.length];
    return joints.slice(1).map((to, i) => ({ part, from: joints[i]!, to, start: begin + joints[i]! }));
  });
}

/** Adds a fault for a place beyond the end of a line. */
export function refuseBeyond(faults: Fault[], path: string, at: number, length: number): void {
  if (at <= length + NANOMETRE) return;
  const remedy = 'Lengthen the line, or measure from its start.';
  faults.push({ code: 'inconsistent', path, got: at, expected: `at most ${length} m, the length of the line`, remedy });
}

/** The opening of a line, read; nothing if it is refused. */
export function readOpening(
  faults: Fault[],
  given: unknown,
  parts: readonly LinePartSpec[],
): LineOpeningSpec | undefined {
  const read = readFieldsInto(faults, 'box.opening', given, openingShape);
  if (read === undefined) return undefined;
  const length = lengthOf(parts);
  const at = read.at ?? length;
  refuseBeyond(faults, 'box.opening.at', at, length);
  const isEnd = at > length - NANOMETRE;
  const end = isEnd
    ? undefined
    : stretchesOf(parts, [at]).find(
        ({ start, from, to }) => at < start + to - from - NANOMETRE && at > start - NANOMETRE,
      );
  const last = parts.at(-1)!;
  const own = end === undefined ? areaIn(last, last.length) : areaIn(end.part, end.from);
  const { area = own, path } = read;
  const faces = isEnd && area >= own ? 1 : 2;
  const { endCorrection = faces * flanged({ radius: Math.sqrt(area / Math.PI) }, 0) } = read;
  return {
    at: si('length', at),
    area: si('area', area),
    endCorrection: si('length', endCorrection),
    ...(path !== undefined && { path }),
  };
}
