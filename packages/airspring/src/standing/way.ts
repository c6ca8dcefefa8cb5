import { NANOMETRE, si } from '@airspring/core/quantity';
import {
  collisions,
  compileLongestVent,
  cuboidInterior,
  type Face,
  faces,
  roundBodies,
  type Solid,
} from '@airspring/core/space';
import { axisOf, isFar } from '../kind/face-axis.js';
import { cuboidBeyondElbow, elbowMeets } from './elbow-path.js';
import { type Edges, type Legs, longerBy, type Place, type Standing, type StandingVent, type Way } from './standing.js';

/** A tube that has to find room behind its hole, m. */
export interface TubeBody {
  readonly outerDiameter: number;
  /** Free air that is kept before its inner end. */
  readonly clearance: number;
  /** Of the centre line of an elbow. */
  readonly bendRadius: number;
}

/** As fine as a person measures, m. */
const MM = 1e-3;
const AXES = ['x', 'y', 'z'] as const;

/** A cylinder along an axis of the box, from one point of its centre line to another. */
function cylinder(
  part: Solid['part'],
  axis: number,
  from: readonly number[],
  to: readonly number[],
  radius: number,
): Solid {
  const side = (sign: number, pick: (...both: number[]) => number): Solid['least'] => {
    const at = (k: number) => si('length', pick(from[k]!, to[k]!) + (k === axis ? 0 : sign * radius));
    return [at(0), at(1), at(2)];
  };
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

/** The greatest whole millimetre for which something stands clear, or −1. */
function greatest(most: number, stands: (length: number) => boolean): number {
  let [low, high] = [-1, Math.floor(most / MM + 1e-6)];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (stands(middle * MM)) low = middle;
    else high = middle - 1;
  }
  return low < 0 ? -1 : low * MM;
}

const along = (point: readonly number[], axis: number, by: number) => point.map((at, i) => (i === axis ? at + by : at));

/** Other vents, straight behind their holes. They stand in the way as drivers do: parts of one vent may meet each other. */
const ventSolids = (vents: readonly StandingVent[], outer: Edges, t: number): Solid[] =>
  vents.flatMap(({ place, diameter, wall, length }) => {
    if (place === undefined) return [];
    const axis = axisOf(place.face);
    const edge = outer[axis]!;
    const at = (depth: number) =>
      place.centre.map((one, k) => (k === axis ? (isFar(place.face) ? edge - depth : depth) : one));
    return length > t ? [cylinder('driver', axis, at(t), at(length), diameter / 2 + wall)] : [];
  });

/**
 * The longest tube from one hole, straight and with one bend, beside drivers and vents whose places are known; `undefined` where
 * these stand in each other's way as they are told.
 */
function wayFrom(
  standing: Standing,
  inner: Edges,
  { face, centre }: Place,
  body: TubeBody,
  besides: readonly StandingVent[],
): Way | undefined {
  const t = standing.panelThickness;
  const outer = longerBy(inner, 2 * t);
  const size = { width: outer[0], height: outer[1], depth: outer[2] };
  const interior = cuboidInterior({ outer: size as never, thickness: si('length', t) });
  const others = [...driverSolids(standing, outer), ...ventSolids(besides, outer, t)];
  const clear = (solids: readonly Solid[]) => collisions(interior, [...others, ...solids]).length === 0;
  // A vent that does not stand straight where it is told has a shape that is not told.
  if (!clear([])) return undefined;
  const axis = axisOf(face);
  const inwards = isFar(face) ? -1 : 1;
  const { outerDiameter, clearance, bendRadius: R } = body;
  const radius = outerDiameter / 2;
  const arc = (Math.PI / 2) * R;
  const mouth = centre.map((at, i) => (i !== axis ? at : isFar(face) ? outer[axis]! - t : t));
  const leg = (length: number) => cylinder('vent', axis, mouth, along(mouth, axis, inwards * length), radius);
  const straight = greatest(inner[axis]! - clearance, (length) => clear([leg(length + clearance)]));
  const turns = [0, 1, 2].filter((other) => other !== axis).flatMap((turn) => [-1, 1].map((sign) => ({ turn, sign })));

  /** Whether a first leg and its elbow stand clear. Of the walls an elbow is as clear as the cuboid around it. */
  function turnStands(first: number, turn: number, sign: number): boolean {
    const third = 3 - axis - turn;
    const corners = [
      [first, -radius, -radius],
      [first + R + radius, R, radius],
    ].map(([u, v, w]) => along(along(along(mouth, axis, inwards * u!), turn, sign * v!), third, w!));
    const corner = (pick: (...both: number[]) => number): Solid['least'] => {
      const at = (k: number) => si('length', pick(...corners.map((point) => point[k]!)));
      return [at(0), at(1), at(2)];
    };
    const around: Solid = { part: 'vent', form: 'cuboid', least: corner(Math.min), greatest: corner(Math.max) };
    if (collisions(interior, [around]).length > 0 || (first > 0 && !clear([leg(first)]))) return false;
    const quarter = {
      start: along(mouth, axis, inwards * first),
      radius: R,
      along: { axis, sign: inwards },
      into: { axis: turn, sign },
    };
    return !elbowMeets(others, quarter, radius);
  }

  /** Whether a second leg of this length, with the free air before its end, stands clear behind an elbow. */
  function secondStands(first: number, turn: number, sign: number, length: number): boolean {
    const end = along(along(mouth, axis, inwards * (first + R)), turn, sign * R);
    return clear([cylinder('vent', turn, end, along(end, turn, sign * (length + clearance)), radius)]);
  }

  /** The longest second leg that a wall behind the elbow allows. */
  const atMost = (turn: number, sign: number) =>
    (sign < 0 ? mouth[turn]! - t : outer[turn]! - t - mouth[turn]!) - R - clearance;
  /** First legs before an elbow, the longest first: whole millimetres, and as far as the back wall lets it. */
  const farthest = inner[axis]! - R - radius;
  const firsts =
    farthest < 0
      ? []
      : [farthest, ...Array.from({ length: Math.floor(farthest / MM) + 1 }, (_, i) => i * MM).reverse()];

  function bent(): number {
    let longest = straight;
    for (const { turn, sign } of turns) {
      const most = atMost(turn, sign);
      for (const first of firsts) {
        // Shorter first legs cannot do better.
        if (first + arc + most < longest) break;
        const needed = Math.max(0, longest - first - arc);
        if (!secondStands(first, turn, sign, needed) || !turnStands(first, turn, sign)) continue;
        const second = greatest(most, (length) => secondStands(first, turn, sign, length));
        longest = Math.max(longest, first + arc + Math.max(needed, second));
      }
    }
    return longest < 0 ? 0 : longest + t;
  }

  function legs(length: number): Legs | undefined {
    for (const { turn, sign } of turns) {
      for (const first of firsts) {
        const second = length - t - first - arc;
        if (second < -NANOMETRE) continue;
        if (second > atMost(turn, sign) + NANOMETRE) break;
        if (!secondStands(first, turn, sign, Math.max(0, second)) || !turnStands(first, turn, sign)) continue;
        return { first: first + t, arc, second: Math.max(0, second), towards: faces[2 * turn + (sign > 0 ? 1 : 0)]! };
      }
    }
    return undefined;
  }
  return { straight: straight < 0 ? 0 : straight + t, bent, legs, certain: true };
}

/** How long a tube may be behind a hole; `undefined` where only the air of the box is known. */
export function wayBehind(
  standing: Standing,
  place: Place | undefined,
  body: TubeBody,
  besides: readonly StandingVent[] = [],
): Way | undefined {
  const { inner, drivers, ways } = standing;
  if (inner === undefined) return undefined;
  const others = besides.map(({ place: there, diameter, wall, length }) => [there, diameter, wall, length]);
  const key = JSON.stringify([place, body, drivers.fronts, others]);
  let way = ways.get(key);
  if (way === undefined) {
    const { cutoutDiameter, depth } = drivers.driver;
    const sized = cutoutDiameter !== undefined && depth !== undefined;
    const driversKnown = sized && standing.driverPlaces?.length === drivers.fronts;
    const known = place !== undefined && driversKnown && besides.every((one) => one.place !== undefined);
    way =
      (known ? wayFrom(standing, inner, place, body, besides) : undefined) ??
      bestWay(standing, inner, place?.face ?? 'front', body);
    const bent = once(way.bent);
    way = { ...way, bent };
    ways.set(key, way);
  }
  return way;
}

const once = (work: () => number) => {
  let known: number | undefined;
  return () => {
    known ??= work();
    return known;
  };
};

/** The longest tube with a driver and the hole in the best of all places: an upper bound for every place of all drivers. */
function bestWay({ job, drivers, panelThickness: t }: Standing, inner: Edges, face: Face, body: TubeBody): Way {
  const { outerDiameter = 0, cutoutDiameter = 0, depth: ofOne = 0 } = drivers.driver;
  const depth = (drivers.isobaric ? 2 : 1) * ofOne;
  const [choice] = job.choices;
  const seating = choice?.seating ?? { faces: ['front' as const], spread: 'one-face' as const };
  /** The longest tubes, straight and bent, beside a driver that is smaller by this on all sides. */
  function longest(less: number): Float64Array {
    const driver = {
      outerDiameter: si('length', outerDiameter),
      cutoutDiameter: si('length', cutoutDiameter - 2 * less),
      depth: si('length', depth - less),
      // Several may stand apart in ways that core does not try: beside one alone no tube is longer than this.
      count: 1,
      faces: seating.faces,
    };
    const isLeft = driver.cutoutDiameter > 0 && driver.depth > t;
    const layout = {
      thickness: faces.map(() => t),
      gap: 0,
      edgeMargin: 0,
      cutoutMargin: 0,
      bodies: less === 0 || isLeft ? roundBodies('driver', driver) : [],
      vent: { count: 1, faces: [faces.indexOf(face)], bend: true, walls: 0 as const },
    };
    const out = new Float64Array(2);
    compileLongestVent(layout)(...inner, { ...body, flangeDiameter: body.outerDiameter }, out);
    return out;
  }
  const straight = longest(0)[0]!;
  // The search keeps the whole cuboid around an elbow free, the tube itself may be nearer to a driver.
  const bent = () => Math.max(straight, longest(cuboidBeyondElbow(body.bendRadius, body.outerDiameter / 2))[1]!);
  return { straight, bent, certain: false };
}
