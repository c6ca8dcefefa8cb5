import { type Length, si } from '../quantity/index.js';
import { type Edges, type Face, faces } from './cuboid.js';
import type { Layout } from './fit-input.js';
import { axesOf } from './fit-reasons.js';
import { type Hole, onFace, type Point, roundHole } from './hole.js';
import type { Place, Seat } from './place.js';
import { inwards } from './placement.js';
import { axisOf, emptyBlock, faceName, type Solid, solid, span } from './solids.js';
import { type PlacedVent, ventPlaced } from './vent-placed.js';

/** Drivers or passive radiators on one face. */
export interface Seated {
  readonly face: Face;
  readonly centres: readonly Point[];
  /** Room behind them, up to the opposite panel or to the bodies on it. */
  readonly depthLeft: Length;
  /** Distance from their cutouts to the inner side of the nearest neighbouring panel. */
  readonly cutoutLeft: Length;
}

/** What fits, and where. */
export interface Fit {
  readonly ok: true;
  readonly placement: {
    /** One block for each face that they stand on. */
    readonly drivers: readonly Seated[];
    readonly radiators: readonly Seated[];
    readonly vent?: {
      readonly face: Face;
      readonly centres: readonly Point[];
      /** Straight part, including the panel. */
      readonly firstLeg: Length;
      /** Missing when the vent is straight. */
      readonly bend?: { readonly length: Length; readonly secondLeg: Length; readonly towards: Face };
    };
  };
  /** The holes in the panels. */
  readonly holes: readonly Hole[];
  /** Everything inside the box, including the free air in front of the vents. */
  readonly solids: readonly Solid[];
  /** What could be added before parts touch: depth behind drivers and radiators, width beside their cutouts, length of the vent. */
  readonly slack: { readonly driverDepth: Length; readonly cutout: Length; readonly ventLength?: Length };
}

/** The records of the places of the bodies, and of the vent if there is one. */
export function placed(inner: Edges, layout: Layout, place: Place, vent?: PlacedVent): Fit {
  const solids: Solid[] = [];
  const holes: Hole[] = [];
  const drivers: Seated[] = [];
  const radiators: Seated[] = [];
  let index = 0;
  for (const body of layout.bodies) {
    const seats = place.seats.slice(index, index + (body.opposed ? 2 : 1));
    index += seats.length;
    const reaches = seats.map(({ face }) => Math.max(0, body.depth - layout.thickness[face]!));
    const across = inner[axisOf(seats[0]!.face)]!;
    const taken = reaches.reduce((sum, reach) => sum + reach, 0);
    const blocks = seats.map((seat, side) => {
      const reach = Math.min(reaches[side]!, across);
      const { way, ...block } = seated(inner, layout, seat, body, reach, solids, holes);
      return { ...block, face: faceName(seat.face), left: way - (taken - reaches[side]!) };
    });
    const depthLeft = si('length', Math.max(0, Math.min(across - taken, ...blocks.map(({ left }) => left))));
    for (const { face, centres, cutoutLeft } of blocks) {
      const list = body.part === 'driver' ? drivers : radiators;
      list.push({ face, centres, depthLeft, cutoutLeft });
    }
  }
  const all = [...drivers, ...radiators];
  const least = (lengths: readonly Length[]) => si('length', Math.min(...lengths));
  const slack = {
    driverDepth: least(all.map(({ depthLeft }) => depthLeft)),
    cutout: least(all.map(({ cutoutLeft }) => cutoutLeft)),
  };
  if (!vent) return { ok: true, placement: { drivers, radiators }, holes, solids, slack };
  const placement = { drivers, radiators, vent: ventPlaced(inner, layout, place, vent, solids, holes) };
  const ventLength = si('length', Math.max(0, place.length - vent.length));
  return { ok: true, placement, holes, solids, slack: { ...slack, ventLength } };
}

/**
 * Centres of a block of bodies, and in an interior that is no cuboid how far they can move inwards. Adds their solids and holes to
 * the lists.
 */
function seated(
  inner: Edges,
  { thickness, gap, interior: interiorIn }: Layout,
  { face, columns, rows, centre: middle }: Seat,
  { part, outerDiameter, cutoutDiameter }: Layout['bodies'][number],
  reach: number,
  solids: Solid[],
  holes: Hole[],
): { readonly centres: readonly Point[]; readonly cutoutLeft: Length; readonly way: number } {
  const axes = axesOf(face);
  const interior = interiorIn?.(inner);
  const pitch = outerDiameter + gap;
  const centres: Point[] = [];
  let cutoutLeft = Number.POSITIVE_INFINITY;
  let way = Number.POSITIVE_INFINITY;
  for (let n = 0; n < columns * rows; n++) {
    const centre: [number, number, number] = [...middle];
    centre[axes[0]] = centre[axes[0]]! + ((n % columns) - (columns - 1) / 2) * pitch;
    centre[axes[1]] = centre[axes[1]]! + (Math.floor(n / columns) - (rows - 1) / 2) * pitch;
    const block = emptyBlock();
    block.axis = axisOf(face);
    for (const axis of axes) {
      span(block, axis, centre[axis]! - cutoutDiameter / 2, centre[axis]! + cutoutDiameter / 2);
      cutoutLeft = Math.min(cutoutLeft, block.low[axis]!, inner[axis]! - block.high[axis]!);
    }
    const ends = [inwards(face, inner[axisOf(face)]!, 0), inwards(face, inner[axisOf(face)]!, reach)];
    if (interior) {
      span(block, axisOf(face), ends[0]!, ends[0]!);
      const flat = solid(part, block, thickness);
      const beside = faces.filter((_, side) => axisOf(side) !== axisOf(face));
      cutoutLeft = Math.min(cutoutLeft, ...beside.map((side) => interior.way(flat, side)));
    }
    span(block, axisOf(face), Math.min(...ends), Math.max(...ends));
    if (interior) way = Math.min(way, interior.way(solid(part, block, thickness), faceName(face ^ 1)));
    if (reach > 0) solids.push(solid(part, block, thickness));
    const at = onFace(centre, face, inner, thickness);
    centres.push(at);
    holes.push(roundHole(part, face, at, cutoutDiameter));
  }
  return { centres, cutoutLeft: si('length', cutoutLeft), way };
}
