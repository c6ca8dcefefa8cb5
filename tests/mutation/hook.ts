/**
 * The place where a mutant lives: the exported functions of the audited floors are called through {@link call}, which
 * multiplies what one chosen formula returns. Changed are numbers, the numbers in returned records and lists, columns
 * that a function or a returned kernel fills, and what returned functions return; not texts, truths and whole-number lists.
 */
type Callable = (...args: never[]) => unknown;

let chosen = '';
let factor = 1;

/** Runs with what the formula returns multiplied. */
export function underMutant<T>(formula: string, by: number, run: () => T): T {
  [chosen, factor] = [formula, by];
  try {
    return run();
  } finally {
    [chosen, factor] = ['', 1];
  }
}

/** Calls on behalf of a formula. */
export function call(formula: string, f: Callable, args: readonly unknown[]): unknown {
  if (formula !== chosen) {
    // A kernel compiled now may run under a mutant later.
    const result = f(...(args as never[]));
    return typeof result === 'function' ? watch(formula, result as Callable) : result;
  }
  const before = args.map(numbersIn);
  const result = f(...(args as never[]));
  args.forEach((arg, i) => {
    multiplyChanged(arg, before[i]);
  });
  return multiplied(formula, result);
}

/** The function, and what it carries, with its calls on behalf of a formula. */
export const watch = (formula: string, f: Callable): Callable =>
  Object.defineProperties((...args: unknown[]) => call(formula, f, args), Object.getOwnPropertyDescriptors(f));

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && [Object.prototype, null].includes(Object.getPrototypeOf(value));

function multiplied(formula: string, value: unknown): unknown {
  if (typeof value === 'number') return value * factor;
  if (value instanceof Float64Array) return value.map((x) => x * factor);
  if (Array.isArray(value)) return value.map((one) => multiplied(formula, one));
  if (typeof value === 'function') return watch(formula, value as Callable);
  if (!isRecord(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, multiplied(formula, one)]));
}

/** A copy of the numbers in an argument, to see later which of them the call wrote. */
function numbersIn(value: unknown): unknown {
  if (typeof value === 'number') return value;
  if (value instanceof Float64Array) return value.slice();
  if (Array.isArray(value)) return value.map(numbersIn);
  if (!isRecord(value)) return undefined;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, numbersIn(one)]));
}

function multiplyChanged(value: unknown, before: unknown): void {
  const isList = value instanceof Float64Array || Array.isArray(value);
  if (!isList && !isRecord(value)) return;
  const now = value as Record<string, unknown>;
  const old = before as Record<string, unknown>;
  for (const key of Object.keys(now)) {
    const one = now[key];
    if (typeof one !== 'number') multiplyChanged(one, old[key]);
    else if (!Object.is(one, old[key])) now[key] = one * factor;
  }
}
