import type { Face } from '@airspring/core/space';
import { areaOf, boundsOf, type Outline, type PlanePoint } from '../outline/index.js';
import { type BoxShape, cuboidFaces, type OuterLayer } from './box-shape.js';

/** A panel of a box that need not be a cuboid, as it is cut. */
export interface ShapePanel {
  readonly name: string;
  /** The face of the cuboid around the box that it lies on. */
  readonly face?: Face;
  /** Its outer surface, flat: from its own edges; a bent panel is told as it is before it is bent. m. */
  readonly outline: Outline;
  /** A hole that leads on to the next layer. */
  readonly opening?: Outline;
  readonly thickness: number;
  /** For each side of `outline`, the angle between the outer surface and the cut, rad: π/2 is a square cut, less is a sharp edge. */
  readonly angles: readonly number[];
  /** It is bent along its second pair of sides; in a smooth arc of this radius outside, where it has one, m. */
  readonly bent?: { readonly turn: number };
  /** Volume of the material, m³. */
  readonly volume: number;
  /** Where it stands: the ends of its outer surface in the section, and between which places on the axis, m. */
  readonly at: { readonly corners: readonly PlanePoint[]; readonly from: number; readonly to: number };
}

const SQUARE = Math.PI / 2;
const NEAR = 1e-9;

const minus = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint): PlanePoint => [ax - bx, ay - by];
const length = ([x, y]: PlanePoint): number => Math.hypot(x, y);
const angleBetween = (a: PlanePoint, b: PlanePoint): number =>
  Math.atan2(Math.abs(a[0] * b[1] - a[1] * b[0]), a[0] * b[0] + a[1] * b[1]);

/** What a side is called: by the face of the cuboid that it lies on, or by how it lies. */
function placeOf(from: PlanePoint, to: PlanePoint, bounds: readonly [PlanePoint, PlanePoint], names: readonly Face[]) {
  for (const k of [0, 1] as const) {
    for (const side of [0, 1] as const) {
      const at = bounds[side][k];
      const face = names[2 * k + side]!;
      if (Math.abs(from[k] - at) < NEAR && Math.abs(to[k] - at) < NEAR) return { name: face, face };
    }
  }
  const isStep = Math.abs(from[0] - to[0]) < NEAR || Math.abs(from[1] - to[1]) < NEAR;
  return { name: isStep ? 'step' : 'slanted' };
}

/** The panels along one layer, each over one side or over a run of sides. */
function sidesOf(
  layer: OuterLayer,
  from: number,
  to: number,
  bounds: readonly [PlanePoint, PlanePoint],
  names: readonly Face[],
): ShapePanel[] {
  const { outline, within, corners, thickness, bent } = layer;
  const count = outline.length;
  const inside = (corner: number) => within[corners[corner % count]!]!;
  const runs = outline.flatMap((_, side) => {
    const run = bent.find(({ first, count: many }) => side >= first && side < first + many);
    if (run === undefined) return [{ first: side, count: 1 }];
    return run.first === side ? [run] : [];
  });
  const high = to - from;
  return runs.map(({ first, count: many }) => {
    const points = Array.from({ length: many + 1 }, (_, i) => outline[(first + i) % count]!);
    const steps = points.slice(1).map((point, i) => minus(point, points[i]!));
    const wide = steps.reduce((sum, step) => sum + length(step), 0);
    // Sides that lose their inner edge still share the ring between both figures with their neighbours.
    const ring = [...points, ...Array.from({ length: many + 1 }, (_, i) => inside(first + many - i))];
    const start = angleBetween(steps[0]!, minus(inside(first), points[0]!));
    const end = angleBetween(minus([0, 0], steps.at(-1)!), minus(inside(first + many), points.at(-1)!));
    const turn = steps.slice(1).reduce((sum, step, i) => sum + angleBetween(steps[i]!, step), 0);
    const closed = many === count;
    return {
      ...(many === 1 ? placeOf(points[0]!, points[1]!, bounds, names) : { name: 'bent' }),
      outline: [
        [0, 0],
        [wide, 0],
        [wide, high],
        [0, high],
      ],
      thickness: thickness[first]!,
      angles: [SQUARE, closed ? SQUARE : end, SQUARE, closed ? SQUARE : start],
      ...(many > 1 && { bent: { turn: closed ? 2 * Math.PI : turn } }),
      volume: areaOf(ring) * high,
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
 * @symbol \alpha angle between the outer surface and the cut, rad
 * @symbol \beta angle inside the box between two panels, rad
 * @validity flat panels; a bent panel is as wide as its outer surface, and its material is taken to keep its thickness
 * @source own geometry of prisms
 * @example panelsOf(shape).map(({ name }) => name) // ['bottom', 'slanted', 'top', 'front', 'left', 'right']
 */
export function panelsOf({ along, ends, outer, inner }: BoxShape): readonly ShapePanel[] {
  const names = cuboidFaces[along];
  const bounds = boundsOf(outer.flatMap(({ outline }) => outline));
  const across = (
    outline: Outline,
    from: number,
    named: { name: string; face?: Face },
    opening?: Outline,
  ): ShapePanel => ({
    ...named,
    outline,
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
    if (before && from > layer.from + NEAR)
      shelves.push(across(layer.outline, layer.from, { name: 'shelf' }, before.within));
    if (after && to < layer.to - NEAR) shelves.push(across(layer.outline, to, { name: 'shelf' }, after.within));
    return [...sidesOf(layer, low, high, bounds, names), ...shelves];
  });
  const last = outer.at(-1)!;
  const [near, far] = [names[4]!, names[5]!];
  return numbered([
    ...panels,
    across(outer[0]!.outline, 0, { name: near, face: near }),
    across(last.outline, last.to - ends, { name: far, face: far }),
  ]);
}
