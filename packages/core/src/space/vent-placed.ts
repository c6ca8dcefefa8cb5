import { si } from '../quantity/index.js';
import type { Edges } from './cuboid.js';
import type { Layout } from './fit-input.js';
import { type Hole, onFace, type Point, roundHole } from './hole.js';
import type { Place } from './place.js';
import { look, turn, turnBlock, type View } from './placement.js';
import { emptyBlock, faceName, type Solid, solid, span } from './solids.js';
import type { SlotBody, VentBody } from './vent-body.js';
import { bend, emptyShape, firstLeg, roundVent, secondLeg, slotVent, type VentShape } from './vent-solids.js';

/** What the search looked at, and the wanted length. */
export interface PlacedVent {
  readonly body: VentBody | SlotBody;
  readonly seen: VentShape;
  readonly length: number;
  readonly bent: boolean;
}

/** The record of a row of vents. Adds their solids and holes to the lists. */
export function ventPlaced(
  inner: Edges,
  { thickness, gap, vent: { count, walls } }: Layout,
  place: Place,
  { body, seen, length, bent }: PlacedVent,
  solids: Solid[],
  holes: Hole[],
) {
  // One vent of the row.
  const vent: VentShape = emptyShape();
  if ('longSide' in body) slotVent(vent, body, walls, 1, gap);
  else roundVent(vent, body, 1, gap);
  const panel = thickness[place.ventFace]!;
  const view: View = { axes: [0, 0, 0], turned: [false, false, false], size: [0, 0, 0] };
  look(view, inner, place.ventFace, place.along, bent && place.backwards);
  const along = turn(view, 1, place.ventCentre[view.axes[1]]!);
  const middleAcross = place.ventCentre[view.axes[2]]!;
  const pitch = 2 * vent.flangeHalfAcross + gap;
  const first = bent ? place.firstLeg : Math.max(0, length - panel);
  const second = bent ? Math.max(0, length - panel - seen.bendLength - first) : 0;
  const block = emptyBlock();
  const add = (part: Solid['part']) => {
    const turned = turnBlock(view, block);
    if (turned.low.every((low, axis) => low < turned.high[axis]!)) solids.push(solid(part, turned, thickness));
  };
  const centres: Point[] = [];
  for (let index = 0; index < count; index++) {
    const across = middleAcross + (index - (count - 1) / 2) * pitch;
    const centre: [number, number, number] = [...place.ventCentre];
    centre[view.axes[2]] = across;
    if ('longSide' in body) {
      // The middle of the air is half a board nearer to a panel that replaces the other board.
      const shift = (onPanel: boolean, at: number, size: number) =>
        onPanel ? ((at > size / 2 ? 1 : -1) * body.wall) / 2 + at : at;
      const [one, two] = [view.axes[1], view.axes[2]];
      centre[one] = shift(walls > 0, centre[one]!, inner[one]!);
      centre[two] = shift(walls === 2, centre[two]!, inner[two]!);
    }
    const at = onFace(centre, place.ventFace, inner, thickness);
    centres.push(at);
    holes.push(hole(body, view, place.ventFace, at, walls));
    firstLeg(block, vent, along, across, first);
    add('vent');
    if (bent) {
      bend(block, vent, along, across, first);
      add('vent');
      const start = along + vent.bendRadius;
      secondLeg(block, vent, start, start + second, across, first);
      add('vent');
      secondLeg(block, vent, start + second, start + second + vent.clearance, across, first);
    } else {
      firstLeg(block, vent, along, across, first);
      span(block, 0, first, first + vent.clearance);
    }
    add('clearance');
  }
  const towards = faceName(2 * place.along + (place.backwards ? 0 : 1));
  return {
    face: faceName(place.ventFace),
    centres,
    firstLeg: si('length', bent ? panel + first : length),
    ...(bent ? { bend: { length: si('length', vent.bendLength), secondLeg: si('length', second), towards } } : {}),
  };
}

/** A tube goes through the panel, and so does a free slot with its boards. A slot along panels ends behind the panel. */
function hole(body: VentBody | SlotBody, view: View, face: number, centre: Point, walls: number): Hole {
  if ('outerDiameter' in body) return roundHole('vent', face, centre, body.outerDiameter);
  const boards = walls === 0 ? 2 * body.wall : 0;
  const edges: [number, number, number] = [0, 0, 0];
  edges[view.axes[1]] = body.shortSide + boards;
  edges[view.axes[2]] = body.longSide + boards;
  const lengths: Point = [si('length', edges[0]), si('length', edges[1]), si('length', edges[2])];
  return { part: 'vent', face: faceName(face), centre, form: 'rectangle', edges: lengths };
}
