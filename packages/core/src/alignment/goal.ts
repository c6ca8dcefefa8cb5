import type { Air } from '../air/index.js';
import { type DrivenSpec, type Family, systemOf } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { simplexMinimum } from '../numeric/index.js';
import { decimalText } from '../quantity/index.js';
import type { Goal } from './alignment.js';
import { canBeBuilt, fill, type Sought, trialOf } from './unknowns.js';

/** The numbers that are sought stay within this factor of their first start. */
const FARTHEST = Math.log(30);
/** How closely they are found, as a fraction of that range. */
const TOLERANCE = 1e-6;

/** A number nearer to its bound than this share of the range is held back by the bound alone. */
const AT_BOUND = 1e-4;

/** Where a number is tried to see whether it changes a goal: these parts of the range, about its start. */
const ELSEWHERE = [-0.5, -0.2, 0.2, 0.5] as const;
/** Values that are nearer to each other than this share differ by rounding. */
const SAME = 1e-10;

/** The box for which a goal is least, with what it then is; or why there is none. */
export function boxOfGoal<Spec extends DrivenSpec>(
  name: string,
  { least }: Goal,
  family: Family<Spec, never>,
  spec: Spec,
  sought: readonly Sought<Spec>[],
  air: Air,
): { readonly ok: true; readonly spec: Spec; readonly least: number } | Impossible {
  if (sought.length === 0) {
    const text = `${name} needs a number that it may choose; this box leaves none.`;
    return impossible('other-unknowns', text);
  }
  const specAt = (x: readonly number[]): Spec => fill(sought, trialOf(spec), (i) => Math.exp(x[i]!));
  const start = sought.map(({ starts }) => Math.log(starts[0]!));
  const valueAt = (x: readonly number[]): number => {
    const one = specAt(x);
    return canBeBuilt(sought, one) ? least(systemOf(family, one as never, air)) : Infinity;
  };
  const { x, value } = simplexMinimum(
    valueAt,
    start,
    start.map((middle) => middle - FARTHEST),
    start.map((middle) => middle + FARTHEST),
    { tolerance: TOLERANCE },
  );
  if (!Number.isFinite(value)) {
    return impossible('no-goal', `No box was found in which ${name} has a finite value.`);
  }
  const idle = sought.filter((_, i) => {
    const moved = ELSEWHERE.map((part) => valueAt(x.map((one, k) => (k === i ? start[i]! + part * FARTHEST : one))));
    // A box that cannot be built tells nothing of the goal.
    const told = moved.filter(Number.isFinite);
    return told.length > 0 && told.every((one) => Math.abs(one - value) <= SAME * Math.abs(value));
  });
  if (idle.length > 0) return unchanged(name, value, idle, sought);
  const atBound = sought.find((_, i) => Math.abs(x[i]! - start[i]!) > FARTHEST * (1 - AT_BOUND));
  if (atBound === undefined) return { ok: true, spec: specAt(x), least: value };
  const text = `${name} has no least value: it still falls where ${atBound.name} is 30 times as large or as small as is usual.`;
  return impossible('no-least', text);
}

/** A goal that some number does not change has no box of its own: this number could be anything. */
function unchanged(
  name: string,
  value: number,
  idle: readonly { readonly name: string }[],
  sought: readonly { readonly name: string }[],
): Impossible {
  const names = idle.map((one) => one.name).join(' and ');
  const text =
    idle.length === sought.length
      ? `${name} is ${decimalText(value, 4)} in every box that was tried: no ${names} changes it.`
      : `${name} is the same with every ${names} that was tried. Give ${names}; then the rest is sought.`;
  return impossible('no-change', text);
}
