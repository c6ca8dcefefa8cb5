import { type Fault, refuse } from '@airspring/core/fault';
import {
  type Field,
  type Length,
  type LengthInput,
  nested,
  oneOf,
  optional,
  positive,
  readFields,
  si,
} from '@airspring/core/quantity';
import {
  type Face,
  faces,
  innerSize,
  type SizeInput,
  sizeShape,
  type ThicknessInput,
  thicknessField,
} from '@airspring/core/space';
import { type Board, boardField, mdf } from './board.js';
import { type BoxEdge, boxEdges, neighboursOf } from './box-edges.js';
import type { Brace, BraceForm } from './brace.js';
import { type Cutout, type CutoutInput, cutoutsField } from './cutout.js';
import { butt, type Joint } from './joint.js';

export interface BraceInput {
  readonly across: 'width' | 'height' | 'depth';
  /** Its middle, from the left, bottom or front outer edge of the box. */
  readonly at: LengthInput;
  /** Default: that of the left panel. */
  readonly thickness?: LengthInput | undefined;
  /** `windowBrace`, `shelf`, or a form of one's own. */
  readonly form: BraceForm;
}

type PerFace<T> = Readonly<Partial<Record<Face, T>>>;

/** A cuboid box of panels. */
export interface PanelBoxInput {
  readonly outer: SizeInput;
  /** As measured: boards are rarely as thick as they are called. Of a double panel that of its outer layer. */
  readonly thickness: ThicknessInput;
  /** Default: `butt`. */
  readonly joint?: Joint | undefined;
  /** Edges with another joint. */
  readonly joints?: Readonly<Partial<Record<BoxEdge, Joint>>> | undefined;
  /** Panels, those that cover others first. Default: front, back, top, bottom, left, right; recessed ones last. */
  readonly covering?: readonly Face[] | undefined;
  /** How far a panel stands back from the edges of those around it, as a front that is set back to protect a cone. */
  readonly recess?: PerFace<LengthInput> | undefined;
  /** Thickness of a second layer inside a panel, between the panels around it. */
  readonly innerLayer?: PerFace<LengthInput> | undefined;
  readonly braces?: readonly BraceInput[] | undefined;
  /** From `cutoutOf` of core's `fit`, or written by hand. */
  readonly cutouts?: readonly CutoutInput[] | undefined;
  /** What stays between a cutout and the panels, joints, braces and other cutouts beside it. Default: 2 mm. */
  readonly play?: LengthInput | undefined;
  /** Radius of the outer corner along edges of the box. */
  readonly roundOver?: Readonly<Partial<Record<BoxEdge, LengthInput>>> | undefined;
  /** Default: `mdf`. */
  readonly board?: Board | undefined;
  readonly boards?: PerFace<Board> | undefined;
  /** Along which axis of the box the grain of a panel runs. Default: up, and along the width on top and bottom. */
  readonly grain?: PerFace<'width' | 'height' | 'depth'> | undefined;
}

/** The same, read: lengths in m, everything filled in. Lists by face are in the order of core's faces. */
export interface BoxOfPanels {
  readonly outer: readonly [number, number, number];
  readonly thickness: readonly Length[];
  readonly jointAt: (edge: BoxEdge) => Joint;
  readonly covering: readonly Face[];
  readonly recess: PerFace<Length>;
  readonly innerLayer: PerFace<Length>;
  readonly braces: readonly Brace[];
  readonly cutouts: readonly (Cutout & { readonly face: Face })[];
  readonly play: Length;
  readonly roundOver: Readonly<Partial<Record<BoxEdge, Length>>>;
  readonly boardOf: (face: Face | undefined) => Board;
  readonly grain: PerFace<'width' | 'height' | 'depth'>;
}

/** A record with some of the names. */
const some = <N extends string, T>(names: readonly N[], field: Field<T>): Field<Readonly<Partial<Record<N, T>>>> =>
  nested(Object.fromEntries(names.map((name) => [name, optional(field)]))) as Field<Readonly<Partial<Record<N, T>>>>;

const jointField: Field<Joint> = {
  optional: false,
  read: (faults, value, path) => {
    const { name, meet } = (value ?? {}) as Partial<Joint>;
    if (typeof name === 'string' && typeof meet === 'function') return value as Joint;
    const remedy = 'Give butt, mitre, rabbet({ depth }) or one of your own.';
    faults.push({ code: 'inconsistent', path, got: value, expected: 'a joint: name and meet (a function)', remedy });
    return undefined;
  },
};

const listOf = <T>(field: Field<T>, of: string): Field<readonly T[]> => ({
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value)) {
      const read = value.map((each, i) => field.read(faults, each, `${path}[${i}]`));
      return read.includes(undefined) ? undefined : (read as T[]);
    }
    faults.push({ code: 'empty', path, got: value, expected: `a list of ${of}`, remedy: 'Give a list.' });
    return undefined;
  },
});

const formField: Field<BraceForm> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'function') return value as BraceForm;
    const remedy = 'Give windowBrace({ border }), shelf({ reach }) or a function of your own.';
    faults.push({ code: 'inconsistent', path, got: value, expected: 'a form of brace', remedy });
    return undefined;
  },
};

const length = positive('length');
const axis = oneOf('width', 'height', 'depth');
const shape = {
  outer: nested(sizeShape),
  thickness: thicknessField,
  joint: optional(jointField),
  joints: optional(some(boxEdges, jointField)),
  covering: optional(listOf(oneOf<Face>(...faces), 'faces')),
  recess: optional(some(faces, length)),
  innerLayer: optional(some(faces, length)),
  braces: optional(
    listOf(nested({ across: axis, at: length, thickness: optional(length), form: formField }), 'braces'),
  ),
  cutouts: optional(cutoutsField),
  play: optional(length),
  roundOver: optional(some(boxEdges, length)),
  board: optional(boardField),
  boards: optional(some(faces, boardField)),
  grain: optional(some(faces, axis)),
};

const usual: readonly Face[] = ['front', 'back', 'top', 'bottom', 'left', 'right'];
/** What is left of a board around what is cut into it, unless the box says. */
export const DEFAULT_PLAY: Length = si('length', 0.002);

export function readPanelBox(input: PanelBoxInput): BoxOfPanels {
  const read = readFields('box', input, shape);
  const { outer, thickness, joint = butt, joints = {}, recess = {}, innerLayer = {}, board = mdf, boards = {} } = read;
  const faults: Fault[] = [];
  const covering = read.covering ?? [
    ...usual.filter((face) => recess[face] === undefined),
    ...usual.filter((face) => recess[face] !== undefined),
  ];
  if (new Set(covering).size !== faces.length || covering.length !== faces.length) {
    const expected = 'each of the six faces once';
    faults.push({
      code: 'inconsistent',
      path: 'box.covering',
      got: covering,
      expected,
      remedy: 'List each face once.',
    });
  }
  for (const face of faces) {
    const beside = neighboursOf(face).find((one) => recess[face] !== undefined && recess[one] !== undefined);
    if (beside === undefined) continue;
    const expected = 'no panel set back beside another that is';
    const remedy = 'One of the two must cover the other.';
    faults.push({ code: 'conflict', path: `box.recess.${face}`, got: recess[face], expected, remedy });
  }
  refuse(faults);
  const walls = faces.map((face, i) => si('length', thickness[i]! + (recess[face] ?? 0) + (innerLayer[face] ?? 0)));
  // Core's refusal of panels that leave nothing between them.
  innerSize({
    outer,
    thickness: Object.fromEntries(faces.map((face, i) => [face, walls[i]!])) as Record<Face, Length>,
  });
  return {
    outer: [outer.width, outer.height, outer.depth],
    thickness,
    jointAt: (edge) => joints[edge] ?? joint,
    covering,
    recess,
    innerLayer,
    braces: (read.braces ?? []).map((brace) => ({ ...brace, thickness: brace.thickness ?? thickness[0]! })),
    cutouts: read.cutouts ?? [],
    play: read.play ?? DEFAULT_PLAY,
    roundOver: read.roundOver ?? {},
    boardOf: (face) => (face && boards[face]) ?? board,
    grain: read.grain ?? {},
  };
}
