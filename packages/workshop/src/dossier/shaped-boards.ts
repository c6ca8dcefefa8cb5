import { si } from '@airspring/core/quantity';
import type { ShapedPanel } from '@airspring/core/space';
import { type Drawing, outlineDrawing } from '../drawing/index.js';
import { seenFromOutside } from '../drawing/outline-drawing.js';
import { boundsOf, clearanceAt } from '../outline/index.js';
import { boltsOf, type Cutout, cutoutVolume } from '../panel/cutout.js';
import { elbowsBehind } from './elbow-mark.js';
import type { WorkHole } from './hole.js';
import { slug } from './slug.js';
import type { Work, WorkBoard, WorkBox, WorkTools } from './work.js';

const metres = (value: number) => si('length', value);

/** The holes that are in a panel of a box that is no cuboid. */
export const holesIn = ({ name, face }: ShapedPanel, { holes }: WorkBox): readonly WorkHole[] =>
  holes.filter(({ board, face: own }) => (board === undefined ? own === face : board.name === name));

/** A hole as it is cut, from the lower left of the outer surface as it is seen from outside; with the bolts of a driver where there is room for them. */
function cutoutOf(hole: WorkHole, { face, outline }: ShapedPanel, { bolts }: WorkTools): Cutout {
  const [across, up] = seenFromOutside(face, boundsOf(outline)[1], [hole.across, hole.up]);
  const cutout: Cutout = {
    part: hole.what,
    across: metres(across),
    up: metres(up),
    opening:
      hole.form === 'circle'
        ? { diameter: metres(hole.diameter) }
        : { width: metres(hole.sides[0]), height: metres(hole.sides[1]), cornerRadius: metres(0) },
  };
  if (bolts === undefined || hole.what !== 'driver') return cutout;
  const circle = {
    count: bolts.count,
    diameter: metres(bolts.circle),
    hole: metres(bolts.hole),
    turn: Math.PI / bolts.count,
  };
  const fits = boltsOf(circle).every(([x, y]) => clearanceAt(outline, [hole.across + x, hole.up + y]) > bolts.hole / 2);
  return fits ? { ...cutout, bolts: circle } : cutout;
}

/** The panels of a box that is no cuboid, each with what is cut into it. */
const shapedPanels = (box: WorkBox, tools: WorkTools) =>
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
  const plain = { outline: [[0, 0]] } as unknown as ShapedPanel;
  const cutouts = panel
    ? holesIn(panel, box).map((hole) => cutoutOf(hole, panel, tools))
    : box.holes.filter(({ board }) => board?.name === name).map((hole) => cutoutOf(hole, plain, {}));
  const whole = count * (panel?.volume ?? length * width * thickness);
  return cutouts.reduce((left, cutout) => left - cutoutVolume(cutout, thickness), whole);
}

/** The drawing of each panel of a box that is no cuboid, and where its files go. */
export function shapedDrawings({ box, tools, vents }: Work): readonly { path: string; drawing: Drawing }[] {
  if (box === undefined) return [];
  return shapedPanels(box, tools).map(({ panel, cutouts }) => ({
    path: `panels/${slug(panel.name)}`,
    drawing: outlineDrawing(panel, {
      cutouts,
      pointing: panel.face ? elbowsBehind({ face: panel.face }, { vents }) : [],
    }),
  }));
}
