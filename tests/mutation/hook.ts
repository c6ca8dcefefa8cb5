/**
 * The place where a mutant lives: the exported functions of the audited floors are called through {@link call}, which
 * multiplies what one chosen formula returns. Changed are numbers, the numbers in returned records and lists, columns
 * that a function or a returned kernel fills, and what returned functions return; not texts, truths and whole-number lists.
 * A leaf is a place in a result, `network.elements[].value`: all of a list are one. With one chosen, it alone is changed.
 */
type Callable = (...args: never[]) => unknown;

let chosen = '';
let factor = 1;
let leaf: string | undefined;
/** Where leaves are being listed. */
let leaves: Set<string> | undefined;

/** Runs with what the formula returns multiplied, or one leaf of it. */
export function underMutant<T>(formula: string, by: number, run: () => T, only?: string): T {
  [chosen, factor, leaf] = [formula, by, only];
  try {
    return run();
  } finally {
    [chosen, factor, leaf] = ['', 1, undefined];
  }
}

/** The leaves of what a formula returns and fills in a run. */
export function leavesOf(formula: string, run: () => unknown): readonly string[] {
  const found = new Set<string>();
  leaves = found;
  try {
    underMutant(formula, 1, run);
  } finally {
    leaves = undefined;
  }
  return [...found];
}

/** A number at a place, as the mutant makes it. */
function changed(value: number, path: string): number {
  leaves?.add(path);
  return leaf === undefined || leaf === path ? value * factor : value;
}

/** Milliseconds from which a result is kept. */
const SLOW = 50;
const kept = new Map<string, unknown>();
let calls = 0;

/** Whether text can stand for it alone: no function, no column that a call may fill, no number that JSON does not know. */
const isData = (value: unknown): boolean => {
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0);
  if (typeof value !== 'object' || value === null) return typeof value === 'string' || typeof value === 'boolean';
  return (Array.isArray(value) || isRecord(value)) && Object.values(value).every(isData);
};

/** What the formula itself gives. Formulas are pure, and a check asks the same of each mutant: what takes long is computed once. */
function computed(formula: string, f: Callable, args: readonly unknown[], path: string): unknown {
  // A returned function knows more than its arguments tell.
  const asText = () => (path === '' && isData(args) ? JSON.stringify([formula, args]) : undefined);
  const asked = asText();
  if (asked !== undefined && kept.has(asked)) return kept.get(asked);
  const [from, before] = [performance.now(), ++calls];
  const result = f(...(args as never[]));
  const isSlow = performance.now() - from > SLOW;
  // What a call writes into its arguments it must write each time; one that calls itself was multiplied within.
  if (asked !== undefined && isSlow && calls === before && asText() === asked) kept.set(asked, result);
  return result;
}

/** Calls on behalf of a formula. */
export function call(formula: string, f: Callable, args: readonly unknown[], path = ''): unknown {
  if (formula !== chosen) {
    // A kernel compiled now may run under a mutant later.
    const result = f(...(args as never[]));
    return typeof result === 'function' ? watch(formula, result as Callable, '()') : result;
  }
  const before = args.map(numbersIn);
  const result = computed(formula, f, args, path);
  args.forEach((arg, i) => {
    multiplyChanged(arg, before[i], `${path}(${i})`);
  });
  return multiplied(formula, result, path);
}

/** The function, and what it carries, with its calls on behalf of a formula. */
export const watch = (formula: string, f: Callable, path = ''): Callable =>
  Object.defineProperties((...args: unknown[]) => call(formula, f, args, path), Object.getOwnPropertyDescriptors(f));

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && [Object.prototype, null].includes(Object.getPrototypeOf(value));

function multiplied(formula: string, value: unknown, path: string): unknown {
  if (typeof value === 'number') return changed(value, path);
  const each = `${path}[]`;
  if (value instanceof Float64Array) return value.map((x) => changed(x, each));
  if (Array.isArray(value)) return value.map((one) => multiplied(formula, one, each));
  if (typeof value === 'function') return watch(formula, value as Callable, `${path}()`);
  if (!isRecord(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [name, multiplied(formula, one, below(path, name))]),
  );
}

const below = (path: string, name: string) => (path === '' ? name : `${path}.${name}`);

/** A copy of the numbers in an argument, to see later which of them the call wrote. */
function numbersIn(value: unknown): unknown {
  if (typeof value === 'number') return value;
  if (value instanceof Float64Array) return value.slice();
  if (Array.isArray(value)) return value.map(numbersIn);
  if (!isRecord(value)) return undefined;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, numbersIn(one)]));
}

function multiplyChanged(value: unknown, before: unknown, path: string): void {
  const isList = value instanceof Float64Array || Array.isArray(value);
  if (!isList && !isRecord(value)) return;
  const now = value as Record<string, unknown>;
  const old = before as Record<string, unknown>;
  const each = `${path}[]`;
  for (const key of Object.keys(now)) {
    const one = now[key];
    const at = isList ? each : below(path, key);
    if (typeof one !== 'number') multiplyChanged(one, old[key], at);
    else if (!Object.is(one, old[key])) now[key] = changed(one, at);
  }
}
