import { NANOMETRE } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import type { Outline, PlanePoint } from '../outline/index.js';
import { type Along, axesOf } from './box-shape.js';

export const minus = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint): PlanePoint => [ax - bx, ay - by];
const lengthOf = ([x, y]: PlanePoint): number => Math.hypot(x, y);

/** Which surface of a bent panel is hollow; both where it turns one way and then the other. */
export type Hollow = 'inner' | 'outer' | 'both';

/** The axes of a face, across and up, as a builder looks at it. */
const axesOfFace = (face: Face): readonly [number, number] =>
  (
    [
      [2, 1],
      [0, 2],
      [0, 1],
    ] as const
  )[faces.indexOf(face) >> 1]!;

/** A rectangle between two places along a side, and between two along the axis. */
const rectangle = ([left, right]: Span, [low, high]: Span): Outline => [
  [left, low],
  [right, low],
  [right, high],
  [left, high],
];

export type Span = readonly [from: number, to: number];
export const longOf = ([from, to]: Span): number => to - from;
const around = (...spans: readonly Span[]): Span => [
  Math.min(...spans.map(([from]) => from)),
  Math.max(...spans.map(([, to]) => to)),
];

/** A panel along a side: its surfaces along the section, counted from where the outer one begins, and what is at its edges. */
export interface AtEdges<T> {
  readonly start: T;
  readonly end: T;
  readonly low: T;
  readonly high: T;
}
export interface Strip {
  readonly face: Face | undefined;
  readonly points: readonly PlanePoint[];
  readonly outer: Span;
  readonly inner: Span;
  /** The least span of board that holds both. */
  readonly blank: Span;
  /** Between which places it stands on the axis. */
  readonly axis: Span;
  readonly angles: AtEdges<number>;
  readonly meets: AtEdges<number>;
}

/** The surfaces of a panel along a side, as its face is seen; elsewhere along the section and along the axis. */
export function surfacesOf({ face, points, outer, inner, blank, axis, angles, meets }: Strip, along: Along) {
  const far: Span = [0, longOf(axis)];
  const onFour = <T>({ start, end, low, high }: AtEdges<T>, isAcross: boolean, isTurned: boolean): readonly T[] => {
    const [near, beyond] = isTurned ? [end, start] : [start, end];
    return isAcross ? [near, high, beyond, low] : [low, beyond, high, near];
  };
  if (face === undefined) {
    return {
      outline: rectangle(outer, far),
      inner: rectangle(inner, far),
      blank: [longOf(blank), far[1]] as const,
      angles: onFour(angles, false, false),
      meets: onFour(meets, false, false),
    };
  }
  const [first, last] = [points[0]!, points.at(-1)!];
  const k = Math.abs(first[0] - last[0]) < NANOMETRE ? 1 : 0;
  const least = Math.min(first[k], last[k]);
  const isTurned = first[k] > last[k];
  const seen = ([from, to]: Span): Span => (isTurned ? [outer[1] - to, outer[1] - from] : [from, to]);
  const isAcross = axesOfFace(face)[0] === axesOf[along][2];
  const surface = (span: Span) => (isAcross ? rectangle(far, seen(span)) : rectangle(seen(span), far));
  const wide = longOf(blank);
  return {
    outline: surface(outer),
    inner: surface(inner),
    blank: isAcross ? ([far[1], wide] as const) : ([wide, far[1]] as const),
    angles: onFour(angles, isAcross, isTurned),
    meets: onFour(meets, isAcross, isTurned),
    from: isAcross ? ([axis[0], least] as const) : ([least, axis[0]] as const),
  };
}

/** How far a point lies along a direction. */
const lengthAlong = ([x, y]: PlanePoint, [dx, dy]: PlanePoint): number => (x * dx + y * dy) / lengthOf([dx, dy]);

/** The steps along a line of points. */
export const stepsOf = (points: readonly PlanePoint[]): readonly PlanePoint[] =>
  points.slice(1).map((point, i) => minus(point, points[i]!));

const turnBetween = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint): number =>
  Math.atan2(ax * by - ay * bx, ax * bx + ay * by);

const turned = ([x, y]: PlanePoint, by: number): PlanePoint => [
  x * Math.cos(by) - y * Math.sin(by),
  x * Math.sin(by) + y * Math.cos(by),
];

/**
 * The direction in which an arc begins: half a step before its first side. Where the corner at its end was moved, as onto a wall, the side after that
 * tells it better.
 */
function beginOf([first, second, third]: readonly PlanePoint[]): PlanePoint {
  if (second === undefined) return first!;
  const turn = turnBetween(first!, second);
  const next = third === undefined ? turn : turnBetween(second, third);
  return Math.abs(turn - next) < ALIKE * Math.abs(next) ? turned(second, -1.5 * next) : turned(first!, -turn / 2);
}
/** Turns of one arc differ by no more than this share. */
const ALIKE = 0.3;

/** The directions of a panel where it begins and ends. */
export function endsOf(steps: readonly PlanePoint[]): readonly [start: PlanePoint, end: PlanePoint] {
  const back = steps.toReversed().map(([x, y]): PlanePoint => [-x, -y]);
  const [x, y] = beginOf(back);
  return [beginOf(steps), [-x, -y]];
}

/** How far a run of sides turns in all, from the direction where it begins to that where it ends. */
export function turnOf(steps: readonly PlanePoint[]): number {
  const [start, end] = endsOf(steps);
  const way = [start, ...steps, end];
  return way.slice(1).reduce((sum, step, i) => sum + Math.abs(turnBetween(way[i]!, step)), 0);
}

/** Both surfaces of a panel along the section, the outer one from zero on, and the board that holds them, laid flat. */
export function spansOf(points: readonly PlanePoint[], within: readonly PlanePoint[], hollow: Hollow | undefined) {
  const wide = (line: readonly PlanePoint[]) => stepsOf(line).reduce((sum, step) => sum + lengthOf(step), 0);
  const outer: Span = [0, wide(points)];
  const [start, end] = endsOf(stepsOf(points));
  /** How far the inner surface begins and ends after the outer one. */
  const begins = lengthAlong(minus(within[0]!, points[0]!), start);
  const ends = lengthAlong(minus(within.at(-1)!, points.at(-1)!), end);
  if (hollow === undefined) {
    const inner: Span = [begins, outer[1] + ends];
    return { outer, inner, blank: around(outer, inner) };
  }
  const longWithin = wide(within);
  const inner: Span = [(outer[1] - longWithin) / 2, (outer[1] + longWithin) / 2];
  // The full surface keeps its length. At an end the hollow one may reach past it, along the board there.
  const held = [
    ...(hollow === 'outer' ? [] : [outer[1] + Math.max(0, -begins) + Math.max(0, ends)]),
    ...(hollow === 'inner' ? [] : [longWithin + Math.max(0, begins) + Math.max(0, -ends)]),
  ];
  return { outer, inner, blank: [0, Math.max(...held)] as const };
}

/** Which surface of a run of sides is hollow. */
export function hollowOf(steps: readonly PlanePoint[]): Hollow {
  const turns = steps.slice(1).map((step, i) => turnBetween(steps[i]!, step));
  const isLeft = turns.some((turn) => turn > 0);
  const isRight = turns.some((turn) => turn < 0);
  if (isLeft && isRight) return 'both';
  return isRight ? 'outer' : 'inner';
}
