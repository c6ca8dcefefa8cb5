import type { Fault } from '../fault/index.js';
import {
  count,
  type Field,
  type Fields,
  type Length,
  type LengthInput,
  nested,
  notNegative,
  oneOf,
  optional,
  positive,
  readInto,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { type Face, faces } from './cuboid.js';

/** The sizes of a driver or a passive radiator, or of several equal ones. */
export interface RoundBodyInput {
  /** Diameter of the frame on the outer surface. */
  readonly outerDiameter: LengthInput;
  /** Diameter of the hole, and of everything behind the panel. */
  readonly cutoutDiameter: LengthInput;
  /** From the outer surface of the panel to the rear end at rest. */
  readonly depth: LengthInput;
  /** How far the rear end moves inwards from there while it plays; default 0, since the magnet of a driver does not move. */
  readonly travel?: LengthInput;
  /** How far its frame stays from the outer edges of its panel, where it asks for more than the space does. */
  readonly edgeMargin?: LengthInput;
  /** Total number; default 1. */
  readonly count?: number;
  /** The faces on which they may sit; default the front. */
  readonly faces?: readonly Face[];
  /**
   * How they are spread over the faces. `one-face` (default): all in one block on one face. `each-face`: equally many on every
   * face. `opposed`: half on one face and half on the opposite one, back to back on common axes, so that their forces cancel.
   */
  readonly spread?: 'one-face' | 'each-face' | 'opposed';
  /**
   * Where the centres of all of them are, from the left, bottom, front outer edge, if they may not move: they stand in a panel that
   * another box has in common. Default: wherever they fit. They are then on one face; the coordinate across it does not count.
   */
  readonly centres?: readonly (readonly [LengthInput, LengthInput, LengthInput])[];
}

export const facesField: Field<readonly Face[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value) && value.length > 0) {
      const face = oneOf(...faces);
      const read = value.map((name, index) => face.read(faults, name, `${path}[${index}]`));
      return read.every((name) => name !== undefined) ? [...new Set(read as Face[])] : undefined;
    }
    const remedy = 'Name at least one face, or leave the field out.';
    faults.push({ code: 'empty', path, got: value, expected: `a list of ${faces.join(', ')}`, remedy });
    return undefined;
  },
};

/** Greatest number of equal bodies. */
const MOST_HELD = 8;

const point: Field<readonly [Length, Length, Length]> = {
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value) && value.length === 3) {
      const part = (axis: 0 | 1 | 2) => readInto(faults, 'length', value[axis], `${path}[${axis}]`, 'any');
      const [x, y, z] = [part(0), part(1), part(2)];
      return x === undefined || y === undefined || z === undefined ? undefined : [x, y, z];
    }
    const remedy = 'Give three lengths, as a fit tells a centre.';
    faults.push({ code: 'inconsistent', path, got: value, expected: 'a list of width, height and depth', remedy });
    return undefined;
  },
};

const centresField: Field<readonly (readonly [Length, Length, Length])[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value)) {
      const remedy = 'Give a list, or leave the field out.';
      faults.push({ code: 'inconsistent', path, got: value, expected: 'a list of centres', remedy });
      return undefined;
    }
    // Longer lists are at fault anyway: there is one centre for each body.
    const read = value.slice(0, MOST_HELD).map((one, index) => point.read(faults, one, `${path}[${index}]`));
    return value.length <= MOST_HELD && read.some((one) => one === undefined) ? undefined : (read as never);
  },
};

const shape = {
  outerDiameter: positive('length'),
  cutoutDiameter: positive('length'),
  depth: positive('length'),
  travel: optional(notNegative('length')),
  edgeMargin: optional(notNegative('length')),
  count: optional(count(MOST_HELD)),
  faces: optional(facesField),
  spread: optional(oneOf('one-face', 'each-face', 'opposed')),
  centres: optional(centresField),
};
type ReadBody = Fields<typeof shape>;
const one = nested(shape);

/** Greatest number of different bodies of a kind, because each one adds places to try. */
const MOST = 4;

/** Reads one body, or a list of different bodies. */
export const bodiesField: Field<ReadBody | readonly ReadBody[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value)) return one.read(faults, value, path);
    if (value.length === 0 || value.length > MOST) {
      const remedy = 'Give equal bodies as one record with a count.';
      faults.push({ code: 'out-of-range', path, got: value.length, expected: `1 to ${MOST} records`, remedy });
      return undefined;
    }
    const read = value.map((body, index) => one.read(faults, body, `${path}[${index}]`));
    return read.every((body) => body !== undefined) ? (read as ReadBody[]) : undefined;
  },
};

/** Plain SI numbers of equal round bodies. Faces are places in the list of faces. */
export interface RoundBody {
  readonly part: 'driver' | 'radiator';
  readonly outerDiameter: number;
  readonly cutoutDiameter: number;
  /** From the outer surface of the panel to the rear end, including travel. */
  readonly depth: number;
  /** How far its frame stays from the outer edges of its panel, where it asks for more than the space does. */
  readonly edgeMargin?: number;
  /** Number on one face. */
  readonly count: number;
  /** The faces on which they may sit. */
  readonly faces: readonly number[];
  /** Whether the same number are on the opposite face, on the same axes. */
  readonly opposed: boolean;
  /** Where its centre is, from the outer edges, if it may not move; one body on one face. */
  readonly held?: readonly [width: number, height: number, depth: number];
}

const listed = (bodies: ReadBody | readonly ReadBody[] | undefined): readonly ReadBody[] =>
  bodies === undefined ? [] : Array.isArray(bodies) ? bodies : [bodies as ReadBody];

/** The left, lower or front face of each opposite pair that the list holds. */
const pairs = (list: readonly number[]): readonly number[] =>
  [0, 2, 4].filter((face) => list.includes(face) && list.includes(face + 1));

/**
 * Bodies alike as a layout lists them: defaults filled in, and those on each of several faces taken apart.
 *
 * @validity bodies that `fit` accepts
 * @source own (definition)
 * @example roundBodies('driver', { ...sizes, count: 2, faces: ['left', 'right'], spread: 'opposed' }) // one, opposed
 */
export const roundBodies = (
  part: RoundBody['part'],
  bodies: ReadBody | readonly ReadBody[] | undefined,
): readonly RoundBody[] =>
  listed(bodies).flatMap<RoundBody>(
    ({ travel = 0, count: all = 1, faces: names = ['front'], spread = 'one-face', centres, ...body }) => {
      const list = names.map((name) => faces.indexOf(name));
      const { outerDiameter, cutoutDiameter, edgeMargin = 0 } = body;
      const common = { part, outerDiameter, cutoutDiameter, depth: body.depth + travel, edgeMargin } as const;
      if (centres !== undefined) {
        return centres.map((held) => ({ ...common, count: 1, faces: list, opposed: false, held }));
      }
      if (spread === 'opposed') return [{ ...common, count: all / 2, faces: pairs(list), opposed: true }];
      if (spread === 'one-face') return [{ ...common, count: all, faces: list, opposed: false }];
      return list.map((face) => ({ ...common, count: all / list.length, faces: [face], opposed: false }));
    },
  );

/** Faults of bodies whose sizes or counts contradict each other. */
export function judgeBodies(bodies: ReadBody | readonly ReadBody[] | undefined, path: string): Fault[] {
  return listed(bodies).flatMap((body, index) => {
    const at = Array.isArray(bodies) ? `${path}[${index}]` : path;
    const { outerDiameter, cutoutDiameter, count: all = 1, faces: names = ['front'], spread, centres } = body;
    const faults: Fault[] = [];
    const fault = (field: string, got: unknown, expected: string, remedy: string) =>
      faults.push({ code: 'inconsistent', path: `${at}.${field}`, got, expected, remedy });
    if (outerDiameter < cutoutDiameter - NANOMETRE) {
      fault(
        'outerDiameter',
        outerDiameter,
        `at least the cutout diameter, ${cutoutDiameter} m`,
        'Check the two sizes.',
      );
    }
    if (centres !== undefined) {
      if (centres.length !== all) fault('centres', centres.length, `${all}, one for each`, 'Give each a centre.');
      if (names.length > 1) fault('faces', names, 'one face, for bodies that may not move', 'Name that face alone.');
      if (spread !== undefined && spread !== 'one-face') {
        fault('spread', spread, 'one-face, for bodies that may not move', 'Leave it out.');
      }
    }
    if (spread === 'opposed') {
      if (all % 2 !== 0) fault('count', all, 'an even number, half for each face', 'Add one, or remove one.');
      if (pairs(names.map((name) => faces.indexOf(name))).length === 0) {
        fault('faces', names, 'two opposite faces, such as left and right', 'Name both faces of a pair.');
      }
    }
    if (spread === 'each-face' && all % names.length !== 0) {
      fault('count', all, `a multiple of the ${names.length} faces`, 'Change the count or the faces.');
    }
    return faults;
  });
}
