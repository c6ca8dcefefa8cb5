import type { Air } from '../air/index.js';
import { type Family, systemOf } from '../enclosure/index.js';
import { simplexMinimum } from '../numeric/index.js';
import type { Goal } from './alignment.js';
import type { Sought } from './unknowns.js';

/** The numbers that are sought stay within this factor of their first start. */
const FARTHEST = Math.log(30);
/** How closely they are found, as a fraction of that range. */
const TOLERANCE = 1e-6;

/** The box for which a goal is least, or `undefined` if no box that was tried gives it a finite number. */
export function boxOfGoal<Spec>(
  { least }: Goal,
  family: Family<Spec, never>,
  spec: Spec,
  sought: readonly Sought<Spec>[],
  air: Air,
): Spec | undefined {
  const specAt = (x: readonly number[]): Spec => sought.reduce((one, { put }, i) => put(one, Math.exp(x[i]!)), spec);
  const start = sought.map(({ starts }) => Math.log(starts[0] as number));
  const { x, value } = simplexMinimum(
    (trial) => least(systemOf(family, specAt(trial) as never, air)),
    start,
    start.map((middle) => middle - FARTHEST),
    start.map((middle) => middle + FARTHEST),
    { tolerance: TOLERANCE },
  );
  return Number.isFinite(value) ? specAt(x) : undefined;
}
