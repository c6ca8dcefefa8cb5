import type { Fault } from '@airspring/core/fault';
import { type Field, type LengthInput, readInto } from '@airspring/core/quantity';
import { faultOf, told } from '../words/told.js';
import { distance, sidesOf } from './measures.js';
import { areaOf, type Outline, type PlanePoint } from './outline.js';

/** A corner of a figure, as people write it: how far across, and how far up. */
export type PointInput = readonly [across: LengthInput, up: LengthInput];

/** A figure as people write it: its corners in either direction, the last joined to the first. */
export type OutlineInput = readonly PointInput[];

/** A figure of more corners than this is no drawing of a box. */
const MOST = 1000;
/** Corners nearer to each other than this are one, m. */
const LEAST_SIDE = 1e-5;
/** Shares of a figure that are no more than rounding. */
const ROUNDING = 1e-9;

const turn = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint, [cx, cy]: PlanePoint): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

const between = (a: PlanePoint, b: PlanePoint, c: PlanePoint): boolean =>
  Math.min(a[0], b[0]) <= c[0] &&
  c[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= c[1] &&
  c[1] <= Math.max(a[1], b[1]);

/** Whether two sides have a point in common. */
function meet([a, b]: readonly [PlanePoint, PlanePoint], [c, d]: readonly [PlanePoint, PlanePoint]): boolean {
  const [one, two, three, four] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (((one > 0 && two < 0) || (one < 0 && two > 0)) && ((three > 0 && four < 0) || (three < 0 && four > 0)))
    return true;
  return (
    (one === 0 && between(a, b, c)) ||
    (two === 0 && between(a, b, d)) ||
    (three === 0 && between(c, d, a)) ||
    (four === 0 && between(c, d, b))
  );
}

/** The first two sides that cross or touch, or that turn back on each other; `undefined` where none do. */
export function crossingOf(outline: Outline): readonly [side: number, other: number] | undefined {
  const sides = sidesOf(outline);
  const count = sides.length;
  for (let i = 0; i < count; i++) {
    const [a, b] = sides[i]!;
    const [, c] = sides[(i + 1) % count]!;
    const back = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;
    if (back && Math.abs(turn(a, b, c)) <= ROUNDING * distance(a, b) * distance(b, c)) return [i, (i + 1) % count];
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (meet(sides[i]!, sides[j]!)) return [i, j];
    }
  }
  return undefined;
}

/** Reads the corners of a figure, and turns them counter-clockwise. */
export const outlineField: Field<Outline> = {
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value)) {
      const remedy = "Give corners such as ['0 mm', '300 mm'].";
      faults.push({ code: 'empty', path, got: value, expected: 'a list of corners', remedy });
      return undefined;
    }
    if (value.length < 3 || value.length > MOST) {
      const expected = `3 to ${MOST} corners`;
      const code = value.length === 0 ? 'empty' : 'out-of-range';
      faults.push({ code, path, got: value.length, expected, remedy: 'Give each corner once.' });
      return undefined;
    }
    const before = faults.length;
    const outline = value.map((corner, i): PlanePoint => {
      const at = `${path}[${i}]`;
      if (!Array.isArray(corner) || corner.length !== 2) {
        const remedy = "Write a corner as ['0 mm', '300 mm'].";
        faults.push({ code: 'inconsistent', path: at, got: corner, expected: 'two lengths, across and up', remedy });
        return [0, 0];
      }
      const part = (k: 0 | 1) => readInto(faults, 'length', corner[k], `${at}[${k}]`, 'any') ?? 0;
      return [part(0), part(1)];
    });
    if (faults.length > before) return undefined;
    faults.push(...judgeOutline(outline, path));
    if (faults.length > before) return undefined;
    return areaOf(outline) < 0 ? outline.toReversed() : outline;
  },
};

function judgeOutline(outline: Outline, path: string): Fault[] {
  const short = sidesOf(outline).flatMap(([from, to], i): Fault[] => {
    if (distance(from, to) > LEAST_SIDE) return [];
    const at = `${path}[${(i + 1) % outline.length}]`;
    const expected = `a corner apart from ${i === outline.length - 1 ? 'the last one' : 'the one before it'}`;
    return [
      faultOf({
        code: 'inconsistent',
        path: at,
        got: told`${to[0]} | ${to[1]}`,
        expected,
        remedy: 'Leave one of the two out.',
      }),
    ];
  });
  if (short.length > 0) return short;
  const crossing = crossingOf(outline);
  if (crossing === undefined) return [];
  const [one, other] = crossing;
  const named = (side: number) => `the side from corner ${side} to corner ${(side + 1) % outline.length}`;
  const expected = `sides that do not cross or touch; ${named(one)} meets ${named(other)}`;
  const [x, y] = outline[other]!;
  const got = told`${x} | ${y}`;
  return [
    faultOf({ code: 'inconsistent', path: `${path}[${other}]`, got, expected, remedy: 'Move or reorder the corners.' }),
  ];
}
