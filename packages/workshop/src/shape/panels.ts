import { NANOMETRE } from '@airspring/core/quantity';
import type { Face } from '@airspring/core/space';
import { areaOf, boundsOf, type Outline, type PlanePoint } from '../outline/index.js';
import { type Along, type BoxShape, cuboidFaces, type OuterLayer } from './box-shape.js';
import {
  endsOf,
  type Hollow,
  hollowOf,
  longOf,
  minus,
  type Span,
  type Strip,
  spansOf,
  stepsOf,
  surfacesOf,
  turnOf,
} from './strip.js';

/** A panel of a box that need not be a cuboid, as it is cut. */
export interface ShapePanel {
  readonly name: string;
  /** The face of the cuboid around the box that it lies on. */
  readonly face?: Face;
  /**
   * Its outer surface from its own edges, m. On a face it is given as seen there: left and right by depth, bottom and top by width and depth, front
   * and back by width, the rest up. Elsewhere it is given along the section and along the axis; a bent panel as it is before it is bent.
   */
  readonly outline: Outline;
  /**
   * The corners of its inner surface, in the same order and from the same edges: below zero where it reaches farther than the outer one, as at a
   * corner that points into the box. Of a bent panel as it is before it is bent, about the same middle.
   */
  readonly inner: Outline;
  /** The least rectangle of board that it is sawn from, across and up, m: it holds both surfaces. */
  readonly blank: PlanePoint;
  /** For each side of `outline`, the panel that it meets; '' where that is not one alone. */
  readonly meets: readonly string[];
  /** On a face: where its edges begin, from those of the cuboid, across and up, m. */
  readonly from?: PlanePoint;
  /** A hole that leads on to the next layer, from the edges of the panel, m. */
  readonly opening?: Outline;
  readonly thickness: number;
  /** For each side of `outline`, the angle between the outer surface and the cut, rad: π/2 is a square cut, less is a sharp edge. */
  readonly angles: readonly number[];
  /** It is bent, and turns by this angle from one edge to the other, rad. `hollow` is the surface that gets shorter: grooves close there. */
  readonly bent?: { readonly turn: number; readonly hollow: Hollow };
  /** Volume of the material, m³. */
  readonly volume: number;
  /** Where it stands: the ends of its outer surface in the section, and between which places on the axis, m. */
  readonly at: { readonly corners: readonly PlanePoint[]; readonly from: number; readonly to: number };
}

const SQUARE = Math.PI / 2;
/** A figure from its own edges. */
const moved = (outline: Outline): Outline => {
  const [least] = boundsOf(outline);
  return outline.map((point) => minus(point, least));
};
const angleBetween = (a: PlanePoint, b: PlanePoint): number =>
  Math.atan2(Math.abs(a[0] * b[1] - a[1] * b[0]), a[0] * b[0] + a[1] * b[1]);

/** What a layer needs of the box that it belongs to. */
interface Around {
  readonly along: Along;
  readonly bounds: readonly [PlanePoint, PlanePoint];
  readonly names: readonly Face[];
}

/** What a side is called: by the face of the cuboid that it lies on, or by how it lies. */
function placeOf(
  from: PlanePoint,
  to: PlanePoint,
  { bounds, names }: Around,
): { readonly name: string; readonly face?: Face } {
  for (const k of [0, 1] as const) {
    for (const side of [0, 1] as const) {
      const at = bounds[side][k];
      const face = names[2 * k + side]!;
      if (Math.abs(from[k] - at) < NANOMETRE && Math.abs(to[k] - at) < NANOMETRE) return { name: face, face };
    }
  }
  const isStep = Math.abs(from[0] - to[0]) < NANOMETRE || Math.abs(from[1] - to[1]) < NANOMETRE;
  return { name: isStep ? 'step' : 'slanted' };
}

/** A panel whose neighbours are told by their place in the list of all panels; -1 where that is not one alone. */
type Placed = Omit<ShapePanel, 'meets'> & { readonly meets: readonly number[] };

/** The runs of sides of a layer of which each is one panel. */
const runsOf = ({ outline, bent }: OuterLayer) =>
  outline.flatMap((_, side) => {
    const run = bent.find(({ first, count: many }) => side >= first && side < first + many);
    if (run === undefined) return [{ first: side, count: 1 }];
    return run.first === side ? [run] : [];
  });

/** The panels along one layer, each over one side or over a run of sides. */
function sidesOf(layer: OuterLayer, axis: Span, around: Around, place: Place): Placed[] {
  const { outline, within, corners, thickness } = layer;
  const count = outline.length;
  const inside = (corner: number) => within[corners[corner % count]!]!;
  const runs = runsOf(layer);
  return runs.map(({ first, count: many }, nth) => {
    const points = Array.from({ length: many + 1 }, (_, i) => outline[(first + i) % count]!);
    const pointsWithin = Array.from({ length: many + 1 }, (_, i) => inside(first + i));
    const steps = stepsOf(points);
    const [begin, finish] = endsOf(steps);
    // Sides that lose their inner edge still share the ring between both figures with their neighbours.
    const ring = [...points, ...pointsWithin.toReversed()];
    const closed = many === count;
    const start = closed ? SQUARE : angleBetween(begin, minus(pointsWithin[0]!, points[0]!));
    const end = closed ? SQUARE : angleBetween(minus([0, 0], finish), minus(pointsWithin.at(-1)!, points.at(-1)!));
    const turn = closed ? 2 * Math.PI : turnOf(steps);
    const hollow = many > 1 ? hollowOf(steps) : undefined;
    const called = many === 1 ? placeOf(points[0]!, points[1]!, around) : { name: 'bent' };
    const beside = (by: number) => place.first + ((nth + by + runs.length) % runs.length);
    const strip: Strip = {
      face: called.face,
      points,
      ...spansOf(points, pointsWithin, hollow),
      axis,
      angles: { start, end, low: SQUARE, high: SQUARE },
      meets: { start: beside(-1), end: beside(1), low: place.low, high: place.high },
    };
    return {
      ...called,
      ...surfacesOf(strip, around.along),
      thickness: thickness[first]!,
      ...(hollow && { bent: { turn, hollow } }),
      volume: areaOf(ring) * longOf(axis),
      at: { corners: points, from: axis[0], to: axis[1] },
    };
  });
}

/** Where the panels of a layer are in the list of all, and which one is below and above them on the axis. */
interface Place {
  readonly first: number;
  readonly low: number;
  readonly high: number;
}

/** The same panels with a number where several have one name, and with the names of their neighbours. */
function named(panels: readonly Placed[]): ShapePanel[] {
  const seen = new Map<string, number>();
  const names = panels.map(({ name }) => {
    if (panels.filter((other) => other.name === name).length === 1) return name;
    const number = (seen.get(name) ?? 0) + 1;
    seen.set(name, number);
    return `${name} ${number}`;
  });
  return panels.map((panel, i) => ({ ...panel, name: names[i]!, meets: panel.meets.map((at) => names[at] ?? '') }));
}

/**
 * The panels of a box, each with its outline, its thickness and the angles of its cuts. The panels across the axis cover the others, whose
 * edges meet in mitres. Together with the air they fill the outside.
 *
 * $$\alpha = \tfrac12\beta \quad\text{between panels of one thickness}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $\alpha$ | rad | angle between the outer surface and the cut |
 * | $\beta$ | rad | angle inside the box between two panels |
 *
 * @validity flat panels; a bent panel is as wide as its outer surface, and its material is taken to keep its thickness
 * @source own geometry of prisms
 * @example panelsOf(shape).map(({ name }) => name) // ['bottom', 'slanted', 'top', 'front', 'left', 'right']
 */
export function panelsOf({ along, ends, outer, inner }: BoxShape): readonly ShapePanel[] {
  const names = cuboidFaces[along];
  const bounds = boundsOf(outer.flatMap(({ outline }) => outline));
  const around = { along, bounds, names };
  const across = (
    outline: Outline,
    from: number,
    called: { name: string; face?: Face },
    meets: readonly number[],
    opening?: Outline,
  ): Placed => {
    const [least, greatest] = boundsOf(outline);
    const surface = moved(outline);
    return {
      ...called,
      outline: surface,
      inner: surface,
      blank: minus(greatest, least),
      ...(called.face && { from: least }),
      ...(opening && { opening: opening.map((corner) => minus(corner, least)) }),
      thickness: ends,
      angles: outline.map(() => SQUARE),
      meets,
      volume: (areaOf(outline) - (opening ? areaOf(opening) : 0)) * ends,
      at: { corners: outline, from, to: from + ends },
    };
  };
  const unknown = (layer: OuterLayer) => layer.outline.map(() => -1);
  const shelves = outer.map((layer, i): Placed[] => {
    const { from, to } = inner[i]!;
    const [before, after] = [outer[i - 1], outer[i + 1]];
    return [
      ...(before && from > layer.from + NANOMETRE
        ? [across(layer.outline, layer.from, { name: 'shelf' }, unknown(layer), before.within)]
        : []),
      ...(after && to < layer.to - NANOMETRE
        ? [across(layer.outline, to, { name: 'shelf' }, unknown(layer), after.within)]
        : []),
    ];
  });
  const counts = outer.map((layer, i) => runsOf(layer).length + shelves[i]!.length);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const firsts = counts.map((_, i) => counts.slice(0, i).reduce((sum, count) => sum + count, 0));
  const panels = outer.flatMap((layer, i): Placed[] => {
    const { from, to } = inner[i]!;
    // Where the air goes on into a panel that closes a larger layer, the sides begin behind that panel.
    const axis = [Math.max(from, layer.from), Math.min(to, layer.to)] as const;
    const place = { first: firsts[i]!, low: i === 0 ? total : -1, high: i === outer.length - 1 ? total + 1 : -1 };
    return [...sidesOf(layer, axis, around, place), ...shelves[i]!];
  });
  const last = outer.at(-1)!;
  const [near, far] = [names[4]!, names[5]!];
  const covered = (layer: OuterLayer, first: number) =>
    runsOf(layer).flatMap(({ count }, run) => Array.from({ length: count }, () => first + run));
  return named([
    ...panels,
    across(outer[0]!.outline, 0, { name: near, face: near }, covered(outer[0]!, 0)),
    across(last.outline, last.to - ends, { name: far, face: far }, covered(last, firsts.at(-1)!)),
  ]);
}
