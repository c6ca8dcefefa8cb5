import type { Impossible, Reason } from '@airspring/core/fault';
import { type Mass, si } from '@airspring/core/quantity';
import type { SizeInput } from '@airspring/core/space';
import { type Nesting, nest, partsOf, type SheetInput } from '../nesting/index.js';
import { isRectangle } from '../outline/measures.js';
import {
  type Board,
  type BraceInput,
  birchPlywood,
  butt,
  type CutListRow,
  type CutoutInput,
  cutList,
  type Joint,
  mdf,
  mitre,
  type PanelBox,
  panelBox,
  particleBoard,
  rabbet,
} from '../panel/index.js';
import type { WorkHole } from './hole.js';
import { recessDiameter } from './recess-room.js';
import type { Says } from './says.js';
import { holesIn, isDrawn, type ShapedBoard, shapedBoards, woodOf } from './shaped-boards.js';
import { shapedReasons } from './shaped-cutouts.js';
import type { WorkBoard, WorkBox, WorkTools } from './work.js';

/** What a workshop is taken to have where it does not say (common practice). */
export const usual = {
  sheets: [{ length: si('length', 2.5), width: si('length', 1.25) }],
  kerf: si('length', 0.003),
  trim: si('length', 0.01),
} as const;

/** All that a saw makes for a box. */
export interface Sawing {
  readonly box?: PanelBox;
  /** Of a box that is no cuboid: its panels, with what is cut into them. */
  readonly shaped: readonly ShapedBoard[];
  /** Holes that no drawing shows: those in boards inside. */
  readonly listed: readonly WorkHole[];
  readonly rows: readonly CutListRow[];
  readonly sheets: readonly { readonly board: string; readonly thickness: number; readonly nesting: Nesting }[];
  /** The boards whose pieces do not all go on the sheets, and why. */
  readonly unnested: readonly {
    readonly board: string;
    readonly thickness: number;
    readonly because: readonly Reason[];
  }[];
  /** Of all pieces together. */
  readonly mass: Mass;
}

const jointOf = ({ joint }: WorkTools): Joint => {
  if (joint?.rabbet) return rabbet({ depth: si('length', joint.rabbet.depth) });
  return joint?.mitre ? mitre : butt;
};

/** What the board is called, and whether its stiffness is known. */
export function knownBoard({ board: name }: WorkTools): { readonly name: string; readonly known: boolean } {
  const known = name === undefined || [mdf, birchPlywood, particleBoard].some((one) => one.name === name);
  return { name: name ?? mdf.name, known };
}

/** The board that is named, or one of that name with the numbers of fibreboard. */
export function boardOf({ board: name, density, grain }: WorkTools): Board {
  const known = [birchPlywood, particleBoard].find((one) => one.name === name) ?? mdf;
  return {
    ...known,
    ...(name !== undefined && { name }),
    ...(density !== undefined && { density: si('density', density), densityRange: [1, 1] as const }),
    ...(grain !== undefined && { grained: grain }),
  };
}

const openingOf = (hole: WorkHole): CutoutInput['opening'] =>
  hole.form === 'circle'
    ? { diameter: si('length', hole.diameter) }
    : { width: si('length', hole.sides[0]), height: si('length', hole.sides[1]) };

/** What is made around the hole of a driver. */
const aroundDriver = (
  { bolts, recess, roundOver }: WorkTools,
  { frame }: WorkHole,
): Pick<CutoutInput, 'bolts' | 'recess' | 'roundOver'> => ({
  ...(bolts && {
    bolts: { count: bolts.count, diameter: si('length', bolts.circle), hole: si('length', bolts.hole) },
  }),
  ...(recess !== undefined &&
    frame !== undefined && {
      recess: { diameter: si('length', recessDiameter(frame)), depth: si('length', recess) },
    }),
  ...(roundOver !== undefined && { roundOver: si('length', roundOver) }),
});

const cutoutOf = (box: WorkBox, tools: WorkTools, hole: WorkHole): CutoutInput => ({
  part: hole.what,
  face: hole.face,
  across: si('length', hole.across),
  up: si('length', hole.up),
  opening: openingOf(hole),
  flush: runsAlong(box, hole),
  cover: hole.frame === undefined ? undefined : si('length', hole.frame),
  ...(hole.what === 'driver' && aroundDriver(tools, hole)),
});

const inPanels = ({ holes }: WorkBox): readonly WorkHole[] => holes.filter(({ board }) => board === undefined);

/** The pieces of a box with what is cut into them. */
export const panelsOf = (box: WorkBox, tools: WorkTools, braces: readonly BraceInput[] = []): PanelBox | Impossible =>
  panelBox({
    outer: box.outer as SizeInput,
    thickness: si('length', box.thickness),
    joint: jointOf(tools),
    board: boardOf(tools),
    cutouts: inPanels(box).map((hole) => cutoutOf(box, tools, hole)),
    braces,
  });

/** What is sawn of a board beside its edges. */
const otherwise = ({ panel }: WorkBoard): string[] =>
  panel === undefined || panel.bent || isRectangle(panel.outline) ? [] : ['no rectangle: its drawing has its corners'];

/** Equal boards inside the box, or a panel of one that is no cuboid, as a row of the cut list. */
const boardRow = (one: WorkBoard, board: Board, box: WorkBox): CutListRow => ({
  names: Array.from({ length: one.count }, () => one.name),
  count: one.count,
  length: si('length', Math.max(one.length, one.width)),
  width: si('length', Math.min(one.length, one.width)),
  thickness: si('length', one.thickness),
  board: board.name,
  grained: board.grained,
  edges: [...(one.cuts === undefined ? [] : [one.cuts]), ...otherwise(one)],
  cutouts: [
    ...(one.panel ? holesIn(one.panel, box) : box.holes.filter((hole) => hole.board?.name === one.name)).map(
      ({ what }) => what,
    ),
    ...(one.panel?.opening ? ['opening'] : []),
  ],
});

/** Boards as rows; those that differ in their names alone are one. */
function rowsOf(board: Board, box: WorkBox): CutListRow[] {
  const alike = new Map<string, CutListRow>();
  for (const one of box.boards) {
    const { names, count, ...row } = boardRow(one, board, box);
    const figures = one.panel && [one.panel.outline, one.panel.inner, one.panel.opening];
    // Sizes that differ by less than a nanometre are equal.
    const key = JSON.stringify([row, figures], (_, value) =>
      typeof value === 'number' ? Math.round(value * 1e9) : value,
    );
    const same = alike.get(key);
    alike.set(key, { ...row, names: [...(same?.names ?? []), ...names], count: (same?.count ?? 0) + count });
  }
  return [...alike.values()];
}

/** Axes of the two measures of a hole: 0 width, 1 height, 2 depth. */
const axesOf = (face: WorkHole['face']): readonly [number, number] =>
  face === 'left' || face === 'right' ? [2, 1] : face === 'bottom' || face === 'top' ? [0, 2] : [0, 1];

/** Openings nearer to a panel than this end at it, m. */
const ALONG = 0.002;

/** Whether an opening is meant to run along a panel, as that of a slot whose sides are the panels. */
export function runsAlong({ outer, thickness }: WorkBox, hole: WorkHole): boolean {
  if (hole.form === 'circle') return false;
  const edges = [outer.width, outer.height, outer.depth];
  return axesOf(hole.face).some((axis, k) => {
    const [middle, half] = [k === 0 ? hole.across : hole.up, hole.sides[k]! / 2];
    return middle - half < thickness + ALONG || middle + half > edges[axis]! - thickness - ALONG;
  });
}

/**
 * What is sawn for a box, on which sheets, and how heavy it is; or why it cannot be sawn so. Only drawings of panels have holes: they
 * are listed where they shall not be drawn.
 */
export function sawingOf(
  box: WorkBox,
  tools: WorkTools,
  braces: readonly BraceInput[] = [],
  holes: 'drawn' | 'listed' = 'drawn',
  says?: Says,
): ({ readonly ok: true } & Sawing) | Impossible {
  const board = boardOf(tools);
  const holed = box.joints === undefined ? inPanels(box) : box.holes.filter((hole) => isDrawn(box, hole));
  const drawn = holes === 'drawn' ? holed : [];
  const listed = box.holes.filter((hole) => !drawn.includes(hole));
  const panels = box.joints === undefined ? panelsOf({ ...box, holes: drawn }, tools, braces) : undefined;
  if (panels && !panels.ok) return panels;
  const shaped = shapedBoards({ ...box, holes: drawn }, tools);
  const because = shapedReasons(shaped);
  if (because.length > 0) return { ok: false, because };
  const rows = [...(panels ? cutList(panels, says) : []), ...rowsOf(board, box)];
  const sheets: Sawing['sheets'][number][] = [];
  const unnested: Sawing['unnested'][number][] = [];
  for (const { board: name, thickness, parts } of partsOf(rows)) {
    const nesting = nest({
      parts,
      sheets: (tools.sheets ?? usual.sheets) as readonly SheetInput[],
      kerf: si('length', tools.kerf ?? usual.kerf),
      trim: si('length', tools.trim ?? usual.trim),
    });
    if (nesting.ok) sheets.push({ board: name, thickness, nesting });
    else unnested.push({ board: name, thickness, because: nesting.because });
  }
  const inside = box.boards.reduce((sum, one) => sum + woodOf(one, box, tools), 0);
  const volume = (panels?.pieces ?? []).reduce((sum, piece) => sum + piece.volume, inside);
  return {
    ok: true,
    ...(panels && { box: panels }),
    shaped,
    listed,
    rows,
    sheets,
    unnested,
    mass: si('mass', volume * board.density),
  };
}
