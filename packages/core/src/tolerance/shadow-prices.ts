import { type Fault, refuse, type Warning } from '../fault/index.js';
import { factorMatrix, nonNegativeLeastSquares } from '../numeric/index.js';

/** Slopes of one number by each input. All inputs are changed by the same measure, such as one per cent of each. */
export type Slopes = Readonly<Record<string, number>>;

/** What each limit costs at an optimum. */
export interface ShadowPrices {
  /** How far the least value of the objective falls for each unit by which a limit is eased; 0 for a limit that costs nothing. */
  readonly byLimit: Readonly<Record<string, number>>;
  /** The share of the objective's slope that no limit holds: 0 at an optimum, 1 where every limit could be kept and more be gained. */
  readonly left: number;
  readonly warnings: readonly Warning[];
}

/** Above this share it is no optimum. */
const LEFT = 0.01;
/** Two limits that differ by less in direction are one limit. */
const SINGULAR = 1e-9;

const lengthOf = (numbers: Float64Array): number => Math.hypot(...numbers);

function noRecord(path: string, got: unknown, of: string): Fault[] {
  if (typeof got === 'object' && got !== null && !Array.isArray(got)) return [];
  return [{ code: 'inconsistent', path, got, expected: `a record of ${of}`, remedy: 'Give them by name.' }];
}

function faultsOf(name: string, slopes: Slopes): Fault[] {
  const none = noRecord(name, slopes, 'slopes');
  if (none.length > 0) return none;
  return Object.entries(slopes).flatMap(([input, got]): Fault[] => {
    if (Number.isFinite(got)) return [];
    const [path, expected] = [`${name}.${input}`, 'a finite slope'];
    return [{ code: 'not-finite', path, got, expected, remedy: 'Leave out inputs that nothing depends on.' }];
  });
}

/** Limits that do not change with any input, or that change all alike: no price can be told of one of them alone. */
function judgeDirections(names: readonly string[], directions: readonly Float64Array[]): Fault[] {
  const still = names.flatMap((name, i): Fault[] => {
    if (lengthOf(directions[i]!) > 0) return [];
    const expected = 'a limit that changes with some input';
    return [{ code: 'inconsistent', path: `limits.${name}`, got: 0, expected, remedy: 'Leave it out.' }];
  });
  if (still.length > 0) return still;
  const n = names.length;
  const unit = directions.map((one) => one.map((slope) => slope / lengthOf(one)));
  const gram = new Float64Array(n * n);
  unit.forEach((one, i) => {
    unit.forEach((other, j) => {
      gram[i * n + j] = one.reduce((sum, slope, k) => sum + slope * other[k]!, 0);
    });
  });
  if (n === 0 || factorMatrix(n, gram, new Int32Array(n)) > SINGULAR) return [];
  const expected = 'limits of which none follows from the others';
  const remedy = 'Leave out one that adds nothing, or give more inputs.';
  return [{ code: 'inconsistent', path: 'limits', got: names.join(', '), expected, remedy }];
}

/**
 * Shadow prices of the limits at which an optimum stands: what one unit more of each would gain. At the least value of $r$ under
 * the limits $g_i(x) \le b_i$, the slope of $r$ is held by the slopes of the limits that bind,
 *
 * $$ \nabla r + \sum_i \lambda_i \nabla g_i = 0, \quad \lambda_i \ge 0, \quad \frac{\partial r^\ast}{\partial b_i} = -\lambda_i $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\nabla r$ | `objective` | any | slopes of the result that is least at the optimum; of one that is greatest, with their signs turned |
 * | $\nabla g_i$ | `limits` | any | slopes of each limited number that is at its limit; of one that must be at least so much, with their signs turned |
 * | $\lambda_i$ | `byLimit` | any | price: units of $r$ for each unit of $g_i$ |
 *
 * The slopes by one per cent of each input, as `sensitivity` gives them, make inputs of different units comparable. An input that is
 * missing from a list has a slope of 0 there.
 *
 * @validity limits of which none follows from the others; smooth results, and a change so small that the same limits still bind
 * @neglects what a greater change does: another limit may bind then. Choices that are not continuous, such as whole millimetres, need a difference over a step
 * @returns prices, and how far this is from an optimum; a warning where it is none
 * @throws InputError `not-finite`, `inconsistent`
 * @source kuhn1951 §3 (conditions of an optimum)
 * @source boyd2004 §5.6.3 (prices as slopes of the optimum)
 * @example shadowPrices({ V: -0.4, fb: 0.1 }, { volume: { V: 0.2 }, travel: { V: 0.1, fb: -0.05 } }).byLimit // { volume: 1, travel: 2 }
 */
export function shadowPrices(objective: Slopes, limits: Readonly<Record<string, Slopes>>): ShadowPrices {
  refuse(noRecord('limits', limits, 'limits'));
  refuse([
    ...faultsOf('objective', objective),
    ...Object.entries(limits).flatMap(([name, slopes]) => faultsOf(`limits.${name}`, slopes)),
  ]);
  const names = Object.keys(limits);
  const inputs = [...new Set([objective, ...Object.values(limits)].flatMap((slopes) => Object.keys(slopes)))];
  const slopesOf = (slopes: Slopes) =>
    Float64Array.from(inputs, (input) => (Object.hasOwn(slopes, input) ? slopes[input]! : 0));
  const directions = Object.values(limits).map(slopesOf);
  refuse(judgeDirections(names, directions));
  const wanted = slopesOf(objective);
  const rows = Float64Array.from(inputs.flatMap((_, k) => directions.map((one) => one[k]!)));
  const prices = nonNegativeLeastSquares(
    names.length,
    rows,
    wanted.map((slope) => -slope),
  );
  const rest = wanted.map((slope, k) => directions.reduce((sum, one, i) => sum + prices[i]! * one[k]!, slope));
  const left = lengthOf(rest) / (lengthOf(wanted) || 1);
  const expected = `a share of at most ${LEFT} of the slope that no limit holds: an optimum`;
  return {
    byLimit: Object.fromEntries(names.map((name, i) => [name, prices[i]!])),
    left,
    warnings: left > LEFT ? [{ code: 'outside-validity', path: 'left', got: left, expected }] : [],
  };
}
