import { NANOMETRE } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { areaOf, boundsOf, type Outline, type PlanePoint } from '../outline/index.js';
import { type Along, axesOf, type BoxShape, cuboidFaces, type OuterLayer } from './box-shape.js';

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
  /** On a face: where its edges begin, from those of the cuboid, across and up, m. */
  readonly from?: PlanePoint;
  /** A hole that leads on to the next layer. */
  readonly opening?: Outline;
  readonly thickness: number;
  /** For each side of `outline`, the angle between the outer surface and the cut, rad: π/2 is a square cut, less is a sharp edge. */
  readonly angles: readonly number[];
  /** It is bent, and turns by this angle from one edge to the other, rad. */
  readonly bent?: { readonly turn: number };
  /** Volume of the material, m³. */
  readonly volume: number;
  /** Where it stands: the ends of its outer surface in the section, and between which places on the axis, m. */
  readonly at: { readonly corners: readonly PlanePoint[]; readonly from: number; readonly to: number };
}

const SQUARE = Math.PI / 2;
const minus = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint): PlanePoint => [ax - bx, ay - by];
/** A figure from its own edges. */
const moved = (outline: Outline): Outline => {
  const [least] = boundsOf(outline);
  return outline.map((point) => minus(point, least));
};
const length = ([x, y]: PlanePoint): number => Math.hypot(x, y);
const angleBetween = (a: PlanePoint, b: PlanePoint): number =>
  Math.atan2(Math.abs(a[0] * b[1] - a[1] * b[0]), a[0] * b[0] + a[1] * b[1]);

/** The axes of a face, across and up, as a builder looks at it. */
const axesOfFace = (face: Face): readonly [number, number] =>
  (
    [
      [2, 1],
      [0, 2],
      [0, 1],
    ] as const
  )[faces.indexOf(face) >> 1]!;

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

const rectangle = (wide: number, high: number): Outline => [
  [0, 0],
  [wide, 0],
  [wide, high],
  [0, high],
];

/** A rectangle along a side, between two places on the axis; `angles` are those of its cuts where the side begins and where it ends. */
function sideOn(
  face: Face | undefined,
  points: readonly PlanePoint[],
  wide: number,
  [low, high]: readonly [number, number],
  [start, end]: readonly [number, number],
  along: Along,
): Pick<ShapePanel, 'outline' | 'angles' | 'from'> {
  if (face === undefined) return { outline: rectangle(wide, high - low), angles: [SQUARE, end, SQUARE, start] };
  const [first, last] = [points[0]!, points.at(-1)!];
  const k = Math.abs(first[0] - last[0]) < NANOMETRE ? 1 : 0;
  const least = Math.min(first[k], last[k]);
  const [near, far] = first[k] < last[k] ? [start, end] : [end, start];
  const isAcross = axesOfFace(face)[0] === axesOf[along][2];
  return isAcross
    ? { outline: rectangle(high - low, wide), angles: [near, SQUARE, far, SQUARE], from: [low, least] }
    : { outline: rectangle(wide, high - low), angles: [SQUARE, far, SQUARE, near], from: [least, low] };
}

/** The panels along one layer, each over one side or over a run of sides. */
function sidesOf(
  { outline, within, corners, thickness, bent }: OuterLayer,
  from: number,
  to: number,
  around: Around,
): ShapePanel[] {
  const count = outline.length;
  const inside = (corner: number) => within[corners[corner % count]!]!;
  const runs = outline.flatMap((_, side) => {
    const run = bent.find(({ first, count: many }) => side >= first && side < first + many);
    if (run === undefined) return [{ first: side, count: 1 }];
    return run.first === side ? [run] : [];
  });
  return runs.map(({ first, count: many }) => {
    const points = Array.from({ length: many + 1 }, (_, i) => outline[(first + i) % count]!);
    const steps = points.slice(1).map((point, i) => minus(point, points[i]!));
    const wide = steps.reduce((sum, step) => sum + length(step), 0);
    // Sides that lose their inner edge still share the ring between both figures with their neighbours.
    const ring = [...points, ...Array.from({ length: many + 1 }, (_, i) => inside(first + many - i))];
    const closed = many === count;
    const start = closed ? SQUARE : angleBetween(steps[0]!, minus(inside(first), points[0]!));
    const end = closed
      ? SQUARE
      : angleBetween(minus([0, 0], steps.at(-1)!), minus(inside(first + many), points.at(-1)!));
    const turn = closed ? 2 * Math.PI : steps.slice(1).reduce((sum, step, i) => sum + angleBetween(steps[i]!, step), 0);
    const place = many === 1 ? placeOf(points[0]!, points[1]!, around) : { name: 'bent' };
    return {
      ...place,
      ...sideOn(place.face, points, wide, [from, to], [start, end], around.along),
      thickness: thickness[first]!,
      ...(many > 1 && { bent: { turn } }),
      volume: areaOf(ring) * (to - from),
      at: { corners: points, from, to },
    };
  });
}

/** The same panels with a number where several have one name. */
function numbered(panels: readonly ShapePanel[]): ShapePanel[] {
  const seen = new Map<string, number>();
  return panels.map((panel) => {
    const alike = panels.filter(({ name }) => name === panel.name).length;
    if (alike === 1) return panel;
    const number = (seen.get(panel.name) ?? 0) + 1;
    seen.set(panel.name, number);
    return { ...panel, name: `${panel.name} ${number}` };
  });
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
    named: { name: string; face?: Face },
    opening?: Outline,
  ): ShapePanel => ({
    ...named,
    outline: named.face ? moved(outline) : outline,
    ...(named.face && { from: boundsOf(outline)[0] }),
    ...(opening && { opening }),
    thickness: ends,
    angles: outline.map(() => SQUARE),
    volume: (areaOf(outline) - (opening ? areaOf(opening) : 0)) * ends,
    at: { corners: outline, from, to: from + ends },
  });
  const panels = outer.flatMap((layer, i): ShapePanel[] => {
    const { from, to } = inner[i]!;
    // Where the air goes on into a panel that closes a larger layer, the sides begin behind that panel.
    const [low, high] = [Math.max(from, layer.from), Math.min(to, layer.to)];
    const shelves: ShapePanel[] = [];
    const [before, after] = [outer[i - 1], outer[i + 1]];
    if (before && from > layer.from + NANOMETRE)
      shelves.push(across(layer.outline, layer.from, { name: 'shelf' }, before.within));
    if (after && to < layer.to - NANOMETRE) shelves.push(across(layer.outline, to, { name: 'shelf' }, after.within));
    return [...sidesOf(layer, low, high, around), ...shelves];
  });
  const last = outer.at(-1)!;
  const [near, far] = [names[4]!, names[5]!];
  return numbered([
    ...panels,
    across(outer[0]!.outline, 0, { name: near, face: near }),
    across(last.outline, last.to - ends, { name: far, face: far }),
  ]);
}
