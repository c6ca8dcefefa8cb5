import { type Length, si } from '../quantity/index.js';
import type { Face } from './cuboid.js';
import type { Layout } from './fit-input.js';
import { axesOf } from './fit-reasons.js';
import { centreLimits, inwards, look, turn, type View } from './placement.js';
import { axisOf, emptyBlock, faceName, type Solid, solid, span } from './solids.js';
import type { Place } from './vent-places.js';
import { bend, bendLength, firstLeg, secondLeg, type VentShape } from './vent-solids.js';

/** From the left, bottom, front outer edge. */
export type Point = readonly [Length, Length, Length];

/** A driver and a vent that fit, and where. */
export interface Fit {
  readonly ok: true;
  readonly placement: {
    readonly driver: { readonly face: Face; readonly centres: readonly Point[] };
    readonly vent?: {
      readonly face: Face;
      readonly centres: readonly Point[];
      /** Straight part, panel included. */
      readonly firstLeg: Length;
      /** Left out: straight. */
      readonly bend?: { readonly length: Length; readonly secondLeg: Length; readonly towards: Face };
    };
  };
  /** All that stands inside, the free air before the vents included. */
  readonly solids: readonly Solid[];
  /** What is left, before something would touch. */
  readonly slack: { readonly driverDepth: Length; readonly ventLength?: Length };
}

type Edges = readonly [number, number, number];

type DriverPlace = Pick<Place, 'driverFace' | 'columns' | 'rows' | 'driverCentre'>;

/** Drivers alone stand in the middle of their face. */
export function middle(
  inner: Edges,
  { thickness, driver, edgeMargin }: Layout,
  alone: { readonly face: number; readonly columns: number; readonly rows: number },
): DriverPlace {
  const driverCentre: [number, number, number] = [0, 0, 0];
  const limit = new Float64Array(2);
  const halfOutside = driver.outerDiameter / 2 + edgeMargin;
  for (const axis of axesOf(alone.face)) {
    centreLimits(inner[axis]!, driver.cutoutDiameter / 2, halfOutside, thickness, axis, limit);
    driverCentre[axis] = (limit[0]! + limit[1]!) / 2;
  }
  return { driverFace: alone.face, columns: alone.columns, rows: alone.rows, driverCentre };
}

interface PlacedVent {
  readonly vent: VentShape;
  readonly length: number;
  readonly bent: boolean;
  readonly pitch: number;
}

export function placed(inner: Edges, layout: Layout, place: DriverPlace): Fit;
export function placed(inner: Edges, layout: Layout, place: Place, vent: PlacedVent): Fit;
export function placed(inner: Edges, layout: Layout, place: DriverPlace | Place, vent?: PlacedVent): Fit {
  const { driver, thickness } = layout;
  const face = place.driverFace;
  const reach = Math.min(Math.max(0, driver.depth - thickness[face]!), inner[axisOf(face)]!);
  const [first, second] = axesOf(face);
  const pitch = driver.outerDiameter + layout.gap;
  const solids: Solid[] = [];
  const centres: Point[] = [];
  for (let row = 0; row < place.rows; row++) {
    for (let column = 0; column < place.columns; column++) {
      const centre = [...place.driverCentre] as [number, number, number];
      centre[first] = centre[first]! + (column - (place.columns - 1) / 2) * pitch;
      centre[second] = centre[second]! + (row - (place.rows - 1) / 2) * pitch;
      centres.push(onFace(centre, face, inner, thickness));
      if (reach === 0) continue;
      const block = emptyBlock();
      block.axis = axisOf(face);
      for (const axis of [first, second]) {
        span(block, axis, centre[axis]! - driver.cutoutDiameter / 2, centre[axis]! + driver.cutoutDiameter / 2);
      }
      const ends = [inwards(face, inner[axisOf(face)]!, 0), inwards(face, inner[axisOf(face)]!, reach)];
      span(block, axisOf(face), Math.min(...ends), Math.max(...ends));
      solids.push(solid('driver', block, thickness));
    }
  }
  const driverDepth = si('length', inner[axisOf(face)]! - reach);
  if (!vent) {
    return { ok: true, placement: { driver: { face: faceName(face), centres } }, solids, slack: { driverDepth } };
  }
  const seat = place as Place;
  const described = ventPlaced(inner, layout, seat, vent, solids);
  return {
    ok: true,
    placement: { driver: { face: faceName(face), centres }, vent: described },
    solids,
    slack: { driverDepth, ventLength: si('length', Math.max(0, seat.length - vent.length)) },
  };
}

/** A point on the outer surface of a face, from the outer edges. */
const onFace = (centre: Edges, face: number, inner: Edges, thickness: readonly number[]): Point => {
  const outside = inwards(face, inner[axisOf(face)]!, -thickness[face]!);
  return centre.map((at, axis) =>
    si('length', (axis === axisOf(face) ? outside : at) + thickness[2 * axis]!),
  ) as unknown as Point;
};

function ventPlaced(
  inner: Edges,
  { thickness, vent: { count } }: Layout,
  place: Place,
  placedVent: PlacedVent,
  solids: Solid[],
) {
  const { vent, length, bent, pitch } = placedVent;
  const view: View = { axes: [0, 0, 0], turned: [false, false, false], size: [0, 0, 0] };
  look(view, inner, place.ventFace, place.along, bent && place.backwards);
  const along = turn(view, 1, place.ventCentre[view.axes[1]]!);
  const middleAcross = place.ventCentre[view.axes[2]]!;
  const first = bent ? place.firstLeg : Math.max(0, length - vent.panel);
  const second = bent ? Math.max(0, length - vent.panel - bendLength(vent) - first) : 0;
  const block = emptyBlock();
  const add = (part: Solid['part']) => {
    const turned = emptyBlock();
    turned.axis = block.axis < 0 ? -1 : view.axes[block.axis]!;
    for (let k = 0; k < 3; k++) {
      const ends = [turn(view, k, block.low[k]!), turn(view, k, block.high[k]!)];
      span(turned, view.axes[k]!, Math.min(...ends), Math.max(...ends));
    }
    if (turned.low.every((low, axis) => low < turned.high[axis]!)) solids.push(solid(part, turned, thickness));
  };
  const centres: Point[] = [];
  for (let index = 0; index < count; index++) {
    const across = middleAcross + (index - (count - 1) / 2) * pitch;
    const centre: [number, number, number] = [...place.ventCentre];
    centre[view.axes[2]] = across;
    centres.push(onFace(centre, place.ventFace, inner, thickness));
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
    firstLeg: si('length', bent ? vent.panel + first : length),
    ...(bent ? { bend: { length: si('length', bendLength(vent)), secondLeg: si('length', second), towards } } : {}),
  };
}
