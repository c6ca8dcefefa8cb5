import { type Fault, refuse } from '../fault/index.js';
import { unlessFinite, unlessFiniteColumn, unlessPositive, unlessRising, unlessWhole } from '../numeric/refusal.js';
import type { Alignment } from './alignment.js';

/** Refuses an order that a shape does not have. */
export const refuseOrder = (order: number, most = 10): void => refuse(unlessWhole('order', order, 2, most));

/** The faults of a target at the ends of its parameter, or at any parameter where it is fixed. */
function judgeTarget({ order, target, free }: Alignment, path: string): Fault[] {
  if (typeof target !== 'function') return [];
  const ends = free === undefined ? [] : [free.from, free.to];
  const faults = [
    ...ends.flatMap((end, i) => unlessFinite(`${path}.free.${i === 0 ? 'from' : 'to'}`, end)),
    ...(free === undefined ? [] : unlessRising(`${path}.free.to`, free.from, free.to)),
  ];
  if (faults.length > 0) return faults;
  return (free === undefined ? [0] : ends).flatMap((parameter): Fault[] => {
    const shape = target(parameter);
    if (shape.length === order + 1 && shape.every((value) => value > 0 && value < Infinity)) return [];
    const expected = `${order + 1} finite coefficients above 0, for order ${order}`;
    const remedy = 'Hold the alignment against alignmentLaws.';
    return [{ code: 'inconsistent', path: `${path}.target`, got: shape.join(', '), expected, remedy }];
  });
}

/** The faults of a value that is no alignment. */
export function judgeAlignment(alignment: Alignment, path = 'alignment'): Fault[] {
  const target: unknown = alignment?.target;
  const isGoal = typeof (target as { least?: unknown } | undefined)?.least === 'function';
  if (isGoal || typeof target === 'function') return judgeTarget(alignment, path);
  const expected = 'an alignment, such as butterworth(4) or quasiThirdOrder';
  const remedy = 'Call the function that makes it, or give a record with a target.';
  return [{ code: 'inconsistent', path, got: alignment, expected, remedy }];
}

/** Refuses quality factors that are not finite numbers above zero, or do not rise. */
export function refuseQualities(path: string, list: ArrayLike<number>): void {
  refuse(unlessFiniteColumn(path, list));
  refuse(
    Array.from(list).flatMap((Q, i): Fault[] => {
      const place = `${path}[${i}]`;
      const own = unlessPositive(place, Q);
      return own.length > 0 || i === 0 ? own : unlessRising(place, list[i - 1]!, Q);
    }),
  );
}
