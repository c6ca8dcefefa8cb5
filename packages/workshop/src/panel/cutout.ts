import type { Fault } from '@airspring/core/fault';
import {
  count,
  type Field,
  type Fields,
  given,
  type Length,
  type LengthInput,
  nested,
  notNegative,
  oneOf,
  optional,
  positive,
  si,
} from '@airspring/core/quantity';
import { type Face, faces, type Hole } from '@airspring/core/space';
import { words } from './board.js';
import { axisOf } from './box-edges.js';

/** The shape of an opening or a recess. */
export type Form =
  | { readonly diameter: Length }
  | { readonly width: Length; readonly height: Length; readonly cornerRadius: Length };

export type FormInput =
  | { readonly diameter: LengthInput }
  | {
      readonly width: LengthInput;
      readonly height: LengthInput;
      /** Default: 0, which a router cannot cut. */
      readonly cornerRadius?: LengthInput | undefined;
    };

/** Bolts on a circle. */
export interface BoltCircle {
  readonly count: number;
  /** Of the circle through their centres. */
  readonly diameter: Length;
  readonly hole: Length;
  /** Of the first bolt, counted from the right, rad. */
  readonly turn: number;
}

/** What is cut into a panel at one place: an opening, a recess around it, its bolts, and a rounded edge. */
export interface Cutout {
  /** What it is for: driver, vent, terminals. */
  readonly part: string;
  /** Its centre. */
  readonly across: Length;
  readonly up: Length;
  readonly opening?: Form;
  /** A step on the outer side, for a frame that shall lie flush. */
  readonly recess?: { readonly form: Form; readonly depth: Length };
  readonly bolts?: BoltCircle;
  /** Radius at the inner edge of the opening, so that air gets behind a driver. */
  readonly roundOver?: Length;
  /** Diameter of what lies around it on the outer surface, such as a frame or a flange. Nothing is cut along it. */
  readonly cover?: Length;
  /** Whether it may end at the panels beside it, as the opening of a slot whose sides they are. */
  readonly flush?: boolean;
}

export interface CutoutInput {
  readonly part: string;
  readonly face: Face;
  /** From the left outer edge of the box, or from the front one on its sides. */
  readonly across: LengthInput;
  /** From the lower outer edge of the box, or from the front one on its top and bottom. */
  readonly up: LengthInput;
  readonly opening?: FormInput | undefined;
  readonly recess?: (FormInput & { readonly depth: LengthInput }) | undefined;
  readonly bolts?:
    | {
        readonly count: number;
        readonly diameter: LengthInput;
        readonly hole: LengthInput;
        /** Degrees or radians; default: half the angle between two bolts, so that none is at the side. */
        readonly turn?: `${number} deg` | `${number} rad` | undefined;
      }
    | undefined;
  readonly roundOver?: LengthInput | undefined;
  /** Diameter of the frame or the flange that lies around it, to be drawn. */
  readonly cover?: LengthInput | undefined;
  /** Default: false. */
  readonly flush?: boolean | undefined;
}

const length = positive('length');
const formShape = {
  diameter: optional(length),
  width: optional(length),
  height: optional(length),
  cornerRadius: optional(notNegative('length')),
};

function formFrom(
  faults: Fault[],
  path: string,
  { diameter, width, height, cornerRadius }: Fields<typeof formShape>,
): Form | undefined {
  if (diameter !== undefined && width === undefined && height === undefined && cornerRadius === undefined)
    return { diameter };
  if (diameter === undefined && width !== undefined && height !== undefined) {
    const radius = cornerRadius ?? si('length', 0);
    if (2 * radius <= Math.min(width, height)) return { width, height, cornerRadius: radius };
    const expected = `at most half of the shorter side, ${Math.min(width, height) / 2} m`;
    faults.push({
      code: 'inconsistent',
      path: `${path}.cornerRadius`,
      got: radius,
      expected,
      remedy: 'Make it smaller.',
    });
    return undefined;
  }
  const got = { diameter, width, height, cornerRadius };
  const code = diameter === undefined ? 'empty' : 'conflict';
  faults.push({ code, path, got, expected: 'diameter, or width and height', remedy: 'Give one of the two shapes.' });
  return undefined;
}

const plainForm = nested(formShape);
const form: Field<Form> = {
  optional: false,
  read: (faults, value, path) => {
    const read = plainForm.read(faults, value, path);
    return read && formFrom(faults, path, read);
  },
};
const plainRecess = nested({ ...formShape, depth: length });
const recess: Field<{ readonly form: Form; readonly depth: Length }> = {
  optional: false,
  read: (faults, value, path) => {
    const read = plainRecess.read(faults, value, path);
    const shape = read && formFrom(faults, path, read);
    return read && shape && { form: shape, depth: read.depth };
  },
};

const shape = {
  part: words,
  face: oneOf<Face>(...faces),
  across: length,
  up: length,
  opening: optional(form),
  recess: optional(recess),
  bolts: optional(nested({ count: count(100), diameter: length, hole: length, turn: optional(notNegative('angle')) })),
  roundOver: optional(length),
  cover: optional(length),
  flush: optional(given<boolean>()),
};

const one = nested(shape);

/** A list of cutouts, each with its face. */
export const cutoutsField: Field<readonly (Cutout & { readonly face: Face })[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value)) {
      faults.push({ code: 'empty', path, got: value, expected: 'a list of cutouts', remedy: 'Give a list.' });
      return undefined;
    }
    const before = faults.length;
    const list = value.map((each, i) => {
      const read = one.read(faults, each, `${path}[${i}]`);
      if (read === undefined) return undefined;
      const { bolts, ...cutout } = read;
      if (!cutout.opening && !cutout.recess && !bolts) {
        const remedy = 'Say what is cut.';
        faults.push({
          code: 'empty',
          path: `${path}[${i}]`,
          got: each,
          expected: 'an opening, a recess or bolts',
          remedy,
        });
      }
      return bolts ? { ...cutout, bolts: { ...bolts, turn: bolts.turn ?? Math.PI / bolts.count } } : cutout;
    });
    return faults.length === before ? (list as (Cutout & { readonly face: Face })[]) : undefined;
  },
};

/** Half of the width and the height of a form. */
export const halvesOf = (one: Form): readonly [number, number] =>
  'diameter' in one ? [one.diameter / 2, one.diameter / 2] : [one.width / 2, one.height / 2];

const areaOfForm = (one: Form): number =>
  'diameter' in one
    ? (Math.PI / 4) * one.diameter ** 2
    : one.width * one.height - (4 - Math.PI) * one.cornerRadius ** 2;

/** Centres of the bolts, from the centre of their circle. */
export const boltsOf = ({ count: bolts, diameter, turn }: BoltCircle): readonly (readonly [number, number])[] =>
  Array.from({ length: bolts }, (_, i) => {
    const angle = turn + (2 * Math.PI * i) / bolts;
    return [(diameter / 2) * Math.cos(angle), (diameter / 2) * Math.sin(angle)] as const;
  });

/** The section that a quarter circle leaves of its square, and how far its middle is from the sides of that square, over the radius. */
const CORNER = 1 - Math.PI / 4;
const MIDDLE = (10 - 3 * Math.PI) / (12 - 3 * Math.PI);

/** What a rounded edge takes beside an opening: the section times the way of its middle (Pappus). */
function roundOverVolume(opening: Form, radius: number): number {
  const way =
    'diameter' in opening
      ? 2 * Math.PI * (opening.diameter / 2 + MIDDLE * radius)
      : 2 * (opening.width + opening.height) - (8 - 2 * Math.PI) * opening.cornerRadius + 2 * Math.PI * MIDDLE * radius;
  return CORNER * radius ** 2 * way;
}

/** What a cutout takes from a panel, m³. The recess lies around the opening, and bolts in the recess are shorter by it. */
export function cutoutVolume({ opening, recess: step, bolts, roundOver }: Cutout, thickness: number): number {
  const open = opening ? areaOfForm(opening) : 0;
  const [across, up] = step ? halvesOf(step.form) : [0, 0];
  let volume = open * thickness;
  if (step) volume += (areaOfForm(step.form) - open) * step.depth;
  if (bolts) {
    const inStep = bolts.diameter / 2 < Math.min(across, up);
    volume += bolts.count * (Math.PI / 4) * bolts.hole ** 2 * (thickness - (inStep && step ? step.depth : 0));
  }
  return opening && roundOver ? volume + roundOverVolume(opening, roundOver) : volume;
}

const axes = (face: Face): readonly [number, number] =>
  axisOf(face) === 0 ? [2, 1] : axisOf(face) === 1 ? [0, 2] : [0, 1];

/**
 * The cutout of a hole that core's `fit` found, to which recess and bolts can be added.
 *
 * @validity holes of the six panels
 * @source own geometry of a cuboid
 * @example panelBox({ ...box, cutouts: fitted.holes.map(cutoutOf) })
 */
export function cutoutOf(hole: Hole): CutoutInput {
  const [across, up] = axes(hole.face);
  const at = { part: hole.part, face: hole.face, across: hole.centre[across]!, up: hole.centre[up]! };
  return hole.form === 'circle'
    ? { ...at, opening: { diameter: hole.diameter } }
    : { ...at, opening: { width: hole.edges[across]!, height: hole.edges[up]! } };
}
