import { si } from '@airspring/core/quantity';
import type { ShapedPanel } from '@airspring/core/space';
import { type Drawing, outlineDrawing } from '../drawing/index.js';
import { seenFromOutside } from '../drawing/outline-drawing.js';
import { boundsOf } from '../outline/index.js';
import { type Cutout, cutoutVolume } from '../panel/cutout.js';
import { elbowsBehind } from './elbow-mark.js';
import type { WorkHole } from './hole.js';
import { recessDiameter } from './recess-room.js';
import { slug } from './slug.js';
import type { Work, WorkBoard, WorkBox, WorkTools } from './work.js';

const metres = (value: number) => si('length', value);

/** The holes that are in a panel of a box that is no cuboid. */
export const holesIn = ({ name, face }: ShapedPanel, { holes }: WorkBox): readonly WorkHole[] =>
  holes.filter(({ board, face: own }) => (board === undefined ? own === face : board.name === name));

/** What is made around the hole of a driver. */
const aroundDriver = ({ bolts, recess, roundOver }: WorkTools, frame: number | undefined): Partial<Cutout> => ({
  ...(bolts && {
    bolts: {
      count: bolts.count,
      diameter: metres(bolts.circle),
      hole: metres(bolts.hole),
      turn: Math.PI / bolts.count,
    },
  }),
  ...(recess !== undefined &&
    frame !== undefined && {
      recess: { form: { diameter: metres(recessDiameter(frame)) }, depth: metres(recess) },
    }),
  ...(roundOver !== undefined && { roundOver: metres(roundOver) }),
});

/** A hole as it is cut, from the lower left of the outer surface as it is seen from outside. */
function cutoutOf(hole: WorkHole, { face, outline }: Pick<ShapedPanel, 'face' | 'outline'>, tools: WorkTools): Cutout {
  const [across, up] = seenFromOutside(face, boundsOf(outline)[1], [hole.across, hole.up]);
  return {
    part: hole.what,
    across: metres(across),
    up: metres(up),
    opening:
      hole.form === 'circle'
        ? { diameter: metres(hole.diameter) }
        : { width: metres(hole.sides[0]), height: metres(hole.sides[1]), cornerRadius: metres(0) },
    ...(hole.frame !== undefined && { cover: metres(hole.frame) }),
    ...(hole.what === 'driver' && aroundDriver(tools, hole.frame)),
  };
}

/** A panel of a box that is no cuboid, with what is cut into it. */
export interface ShapedBoard {
  readonly panel: ShapedPanel;
  readonly cutouts: readonly Cutout[];
}

/** The panels of a box that is no cuboid, each with what is cut into it. */
export const shapedBoards = (box: WorkBox, tools: WorkTools): readonly ShapedBoard[] =>
  box.boards.flatMap(({ panel }) =>
    panel ? [{ panel, cutouts: holesIn(panel, box).map((hole) => cutoutOf(hole, panel, tools)) }] : [],
  );

/** Whether a drawing of a panel that is no cuboid's shows a hole. */
export const isDrawn = (box: WorkBox, hole: WorkHole): boolean =>
  box.boards.some(({ panel }) => panel && holesIn(panel, box).includes(hole));

/** What is left of equal boards once their holes are cut, m³. */
export function woodOf(
  { name, count, length, width, thickness, panel }: WorkBoard,
  box: WorkBox,
  tools: WorkTools,
): number {
  const plain = { outline: [[0, 0]] as const };
  const cutouts = panel
    ? holesIn(panel, box).map((hole) => cutoutOf(hole, panel, tools))
    : box.holes.filter(({ board }) => board?.name === name).map((hole) => cutoutOf(hole, plain, {}));
  const whole = count * (panel?.volume ?? length * width * thickness);
  return cutouts.reduce((left, cutout) => left - cutoutVolume(cutout, thickness), whole);
}

/** The drawing of each panel of a box that is no cuboid, and where its files go. */
export const shapedDrawings = (
  shaped: readonly ShapedBoard[],
  { vents }: Pick<Work, 'vents'>,
): readonly { path: string; drawing: Drawing }[] =>
  shaped.map(({ panel, cutouts }) => ({
    path: `panels/${slug(panel.name)}`,
    drawing: outlineDrawing(panel, {
      cutouts,
      pointing: panel.face ? elbowsBehind({ face: panel.face }, { vents }) : [],
    }),
  }));
