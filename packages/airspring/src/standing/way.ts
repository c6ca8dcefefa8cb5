import { si } from '@airspring/core/quantity';
import { collisions, compileLongestVent, cuboidInterior, type Face, faces, type Solid } from '@airspring/core/space';
import { driverLayout } from '../kind/drivers.js';
import type { Edges, Place, Standing } from './standing.js';

/** A tube that has to find room behind its hole, m. */
export interface TubeBody {
  readonly outerDiameter: number;
  /** Free air that is kept before its inner end. */
  readonly clearance: number;
  /** Of the centre line of an elbow. */
  readonly bendRadius: number;
}

/** How long a tube may be behind its hole, from the outer surface of its panel, m. */
export interface Way {
  readonly straight: number;
  /** With one bend; never less than `straight`. */
  readonly bent: number;
  /**
   * Whether places of drivers and hole are known. Where they are not, this is the way in the best of all places: what is
   * longer does not fit, and what is shorter has to be measured.
   */
  readonly certain: boolean;
}

const MM = 1e-3;
const AXES = ['x', 'y', 'z'] as const;
const axisOf = (face: Face): number => faces.indexOf(face) >> 1;
const isFar = (face: Face): boolean => (faces.indexOf(face) & 1) === 1;
const lengths = (point: readonly number[]) => point.map((at) => si('length', at)) as unknown as Solid['least'];

/** A cylinder along an axis of the box, from one point of its centre line to another. */
function cylinder(
  part: Solid['part'],
  axis: number,
  from: readonly number[],
  to: readonly number[],
  radius: number,
): Solid {
  const side = (sign: number, pick: (...both: number[]) => number) =>
    lengths(from.map((at, k) => pick(at, to[k]!) + (k === axis ? 0 : sign * radius)));
  return { part, form: 'cylinder', axis: AXES[axis]!, least: side(-1, Math.min), greatest: side(1, Math.max) };
}

/** The drivers behind their places. */
function driverSolids({ drivers, driverPlaces = [], panelThickness: t }: Standing, outer: Edges): Solid[] {
  const { cutoutDiameter = 0, depth = 0 } = drivers.driver;
  return driverPlaces.map(({ face, centre }) => {
    const axis = axisOf(face);
    const edge = outer[axis]!;
    const [from, to] = isFar(face) ? [edge - t, edge - depth] : [t, depth];
    const at = (value: number) => centre.map((one, k) => (k === axis ? value : one));
    return cylinder('driver', axis, at(from), at(to), cutoutDiameter / 2);
  });
}

/** The longest tube from one hole, straight and with one bend, beside drivers whose places are known. */
function wayFrom(standing: Standing, inner: Edges, place: Place, body: TubeBody): Way {
  const t = standing.panelThickness;
  const outer = inner.map((edge) => edge + 2 * t) as unknown as Edges;
  const size = { width: outer[0], height: outer[1], depth: outer[2] };
  const interior = cuboidInterior({ outer: size as never, thickness: si('length', t) });
  const others = driverSolids(standing, outer);
  const clear = (solids: readonly Solid[]) => collisions(interior, [...others, ...solids]).length === 0;
  const { face, centre } = place;
  const axis = axisOf(face);
  const inwards = isFar(face) ? -1 : 1;
  const surface = isFar(face) ? outer[axis]! : 0;
  const { outerDiameter, clearance, bendRadius: R } = body;
  const radius = outerDiameter / 2;
  const along = (point: readonly number[], k: number, by: number) => point.map((at, i) => (i === k ? at + by : at));
  const mouth = along(centre, axis, surface + inwards * t - centre[axis]!);

  /** The greatest whole millimetre for which something stands clear, or −1. */
  const greatest = (most: number, stands: (length: number) => boolean): number => {
    let [low, high] = [-1, Math.floor(most / MM + 1e-6)];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (stands(middle * MM)) low = middle;
      else high = middle - 1;
    }
    return low < 0 ? -1 : low * MM;
  };
  const leg = (length: number) => cylinder('vent', axis, mouth, along(mouth, axis, inwards * length), radius);
  const straight = greatest(inner[axis]! - clearance, (length) => clear([leg(length + clearance)]));

  let bent = straight;
  const longestLeg = greatest(inner[axis]!, (length) => clear([leg(length)]));
  for (const k of [0, 1, 2].filter((other) => other !== axis)) {
    for (const sign of [-1, 1]) {
      for (let first = 0; first + R + radius <= longestLeg + 1e-9; first += 2 * MM) {
        // The elbow is kept free as the cuboid around it: inwards to its far side, and from its near side to its end.
        const third = 3 - axis - k;
        const ends = [
          [first, -radius, -radius],
          [first + R + radius, R, radius],
        ].map(([u, v, w]) => along(along(along(mouth, axis, inwards * u!), k, sign * v!), third, w!));
        const corner = (pick: (...both: number[]) => number) =>
          lengths([0, 1, 2].map((i) => pick(ends[0]![i]!, ends[1]![i]!)));
        const elbow: Solid = { part: 'vent', form: 'cuboid', least: corner(Math.min), greatest: corner(Math.max) };
        const end = along(along(mouth, axis, inwards * (first + R)), k, sign * R);
        if (!clear(first > 0 ? [leg(first), elbow] : [elbow])) continue;
        const second = greatest(inner[k]!, (length) =>
          clear([cylinder('vent', k, end, along(end, k, sign * (length + clearance)), radius)]),
        );
        if (second >= 0) bent = Math.max(bent, first + (Math.PI / 2) * R + second);
      }
    }
  }
  return { straight: straight < 0 ? 0 : straight + t, bent: bent < 0 ? 0 : bent + t, certain: true };
}

/** How long a tube may be behind a hole; `undefined` where only the air of the box is known. */
export function wayFor(standing: Standing, place: Place | undefined, body: TubeBody): Way | undefined {
  const { inner, job, driverPlaces, drivers } = standing;
  if (inner === undefined) return undefined;
  if (place && driverPlaces?.length === drivers.fronts) return wayFrom(standing, inner, place, body);
  const [choice] = job.choices;
  if (choice === undefined) return undefined;
  const face = faces.indexOf(place?.face ?? 'front');
  const layout = { ...driverLayout(job, choice), vent: { count: 1, faces: [face], bend: true, walls: 0 as const } };
  const out = new Float64Array(2);
  compileLongestVent(layout)(...inner, { ...body, flangeDiameter: body.outerDiameter }, out);
  return { straight: out[0]!, bent: Math.max(out[0]!, out[1]!), certain: false };
}
