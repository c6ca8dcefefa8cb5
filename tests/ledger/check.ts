/**
 * A check against a published or otherwise known value: one test, one row of the ledger.
 *
 * ```ts
 * check('sound-speed.table', {
 *   formula: 'air/soundSpeed',
 *   source: { key: 'dlmf', locator: 'table 3, column 2' },
 *   status: 'seen',
 *   kind: 'table',
 *   given: { temperature: { value: [0, 20, 30], unit: '°C' }, humidity: { value: 50, unit: '%' } },
 *   got: ({ temperature, humidity }) => soundSpeed({ temperature: temperature + 273.15, humidity: humidity / 100 }),
 *   expected: [331.6, 343.9, 350.3],
 *   unit: 'm/s',
 *   tolerance: { absolute: 0.1, why: 'printed to one decimal; half a digit, and 0.05 for the humidity model' },
 * });
 * ```
 *
 * `got` is called once for each element of the lists in `given` (all of one length; single values repeat), with one
 * value for each name. Without lists it is called once, and may return a list itself when `expected` is one. An
 * element that is NaN or infinite fails the row, as does a relative tolerance on an expected zero.
 *
 * A value that was read in print is given by its digits, `printed: ['331.6', '343.9']` in the place of `expected`. Each
 * element must then be met within half a unit of its own last digit. A wider tolerance is given with the reason for it, and
 * refused where no element needs it; a '1' or '0' that is exact needs a narrower one.
 */
import { expect, test } from 'vitest';
import { halfUnit, missesPrint, type Printed, printTolerance, saysLittle, shareOfPrint } from './print.js';
import references from './references.json';
import {
  type Given,
  type GivenValue,
  type Kind,
  type LedgerRow,
  type Source,
  type Status,
  type Tolerance,
  toleranceSize,
} from './row.js';

declare module 'vitest' {
  interface TaskMeta {
    ledger?: LedgerRow[];
  }
}

/** One element of a given value, literal types widened. */
type Element<V extends GivenValue> = V extends string ? string : number;

/** What is expected: numbers with a tolerance, or digits in print, which carry their own. */
type Expectation =
  | { readonly expected: number | readonly number[]; readonly tolerance: Tolerance; readonly printed?: never }
  | { readonly printed: Printed | readonly Printed[]; readonly tolerance?: Tolerance; readonly expected?: never };

export type Check<G extends Readonly<Record<string, Given>>> = CheckOf<G> & Expectation;

interface CheckOf<G extends Readonly<Record<string, Given>>> {
  readonly formula: `${string}/${string}`;
  readonly source: Source;
  readonly status: Status;
  readonly kind: Kind;
  /** What of the result was read in print, where that is a part of it, such as a constant or a limit. */
  readonly part?: string;
  readonly given: G;
  /** The air in which it is computed, where that is not the standard one. */
  readonly air?: LedgerRow['air'];
  readonly got: (given: { readonly [K in keyof G]: Element<G[K]['value']> }) => number | ArrayLike<number>;
  readonly unit: string;
}

/** Registers the check as a test named by its id. */
export function check<const G extends Readonly<Record<string, Given>>>(id: string, spec: Check<G>): void {
  test(`${id}: ${spec.formula} by ${spec.source.key}`, ({ task }) => {
    const row = evaluate(id, spec);
    task.meta.ledger = [row];
    const off = `${row.formula}: got ${row.got}, expected ${row.printed ?? row.expected} ${row.unit}; deviation ${row.deviation} > ${toleranceSize(row)}`;
    expect(row.passed, off).toBe(true);
  });
}

/** The same for a file whose checks are computed in one air. */
export const checkIn =
  (air: NonNullable<LedgerRow['air']>) =>
  <const G extends Readonly<Record<string, Given>>>(id: string, spec: Check<G>): void =>
    check(id, { air, ...spec });

/** The row that a check gives; throws on a check that is not well formed. */
export function evaluate<const G extends Readonly<Record<string, Given>>>(id: string, spec: Check<G>): LedgerRow {
  const { formula, status, kind, part, given, air, unit, printed } = spec;
  if (/\s/.test(id)) throw new Error(`'${id}' has a blank, and no address can name it`);
  if (status === 'seen' && printed === undefined) throw new Error(`${id}: what was read is given by its digits`);
  const source = sourceOf(id, spec);
  const digits = printed === undefined ? [] : [printed].flat();
  const little = spec.tolerance ? undefined : digits.find(saysLittle);
  if (little !== undefined) throw new Error(`${id}: half a unit of '${little}' is too much; give a tolerance`);

  const { expected } = expectationOf(spec);
  const got = results(id, spec);
  const wanted = typeof expected === 'number' ? [expected] : expected;
  const found = typeof got === 'number' ? [got] : got;
  if (typeof got !== typeof expected || found.length !== wanted.length || found.length === 0) {
    throw new Error(`${id}: ${found.length} results against ${wanted.length} expected values`);
  }
  for (const [i, want] of wanted.entries())
    if (!Number.isFinite(found[i]) || !Number.isFinite(want))
      throw new Error(`${id}[${i}]: got ${found[i]}, expected ${want}`);
  const shares = digits.map((text, i) => shareOfPrint(found[i]!, text));
  const strained = spec.tolerance ? -1 : shares.indexOf(Math.max(...shares));
  const tolerance = spec.tolerance ?? printTolerance(digits[strained]!);
  const size = tolerance.relative ?? tolerance.absolute;
  if (!(size >= 0 && Number.isFinite(size))) throw new Error(`${id}: the tolerance ${size} is not a size`);
  if (tolerance.why.trim() === '') throw new Error(`${id}: the tolerance needs its reason`);
  const deviations = wanted.map((want, i) => {
    if (tolerance.relative === undefined) return Math.abs(found[i]! - want);
    if (want === 0) throw new Error(`${id}[${i}]: nothing is relative to an expected zero; use an absolute tolerance`);
    return Math.abs((found[i]! - want) / want);
  });
  const missed = digits.filter((text, i) => missesPrint(found[i]!, text));
  const isWider = (text: Printed) => size * (tolerance.relative ? Math.abs(Number(text)) : 1) > halfUnit(text);
  if (spec.tolerance && missed.length === 0 && digits.some(isWider)) {
    throw new Error(`${id}: the print is met, and needs no wider tolerance`);
  }
  const deviation = deviations[strained] ?? Math.max(...deviations);
  const passed = spec.tolerance ? deviation <= size : missed.length === 0;
  const row = {
    id,
    formula,
    source,
    status,
    kind,
    ...(part && { part }),
    ...(air && { air: { density: air.density, speedOfSound: air.speedOfSound } }),
    given,
    expected,
    got,
    unit,
    tolerance,
    deviation,
    passed,
  };
  return printed === undefined ? row : { ...row, printed };
}

/** The numbers that are expected, and how near: of those in print the one that allows the least of itself, if nothing else is said. */
export function expectationOf({ printed, expected, tolerance }: Expectation): {
  readonly expected: number | readonly number[];
  readonly tolerance: Tolerance;
} {
  if (printed === undefined) return { expected, tolerance };
  const digits = [printed].flat();
  const allowed = digits.map((text) => halfUnit(text) / Math.abs(Number(text)));
  return {
    expected: typeof printed === 'string' ? Number(printed) : digits.map(Number),
    tolerance: tolerance ?? printTolerance(digits[allowed.indexOf(Math.min(...allowed))]!),
  };
}

/** Calls `got` over the lists in `given`. */
function results<G extends Readonly<Record<string, Given>>>(id: string, spec: Check<G>): number | readonly number[] {
  const entries = Object.entries(spec.given).map(([name, { value }]) => [name, value] as const);
  const lengths = new Set(entries.flatMap(([, value]) => (typeof value === 'object' ? [value.length] : [])));
  if (lengths.size > 1) throw new Error(`${id}: given lists of lengths ${[...lengths].join(', ')}`);
  const at = (i: number) =>
    spec.got(
      Object.fromEntries(
        entries.map(([name, value]) => [name, typeof value === 'object' ? value[i] : value]),
      ) as Parameters<typeof spec.got>[0],
    );
  const [length] = lengths;
  if (length === undefined) {
    const all = at(0);
    return typeof all === 'number' ? all : Array.from(all);
  }
  return Array.from({ length }, (_, i) => {
    const one = at(i);
    if (typeof one !== 'number') throw new Error(`${id}[${i}]: one number for each element of the given lists`);
    return one;
  });
}

const known = new Map(references.map((reference) => [reference.id, (reference as { readIn?: string }).readIn]));

/** The source, with where it was read if a value of it was; refuses one that the bibliography lacks. */
function sourceOf(id: string, { source, status, kind }: Pick<LedgerRow, 'source' | 'status' | 'kind'>): Source {
  const nobodys = status === 'practice' && source.key === 'common-practice';
  const ours = ['identity', 'own', 'pinned'].includes(kind) && source.key === 'own';
  if (!nobodys && !ours && !known.has(source.key))
    throw new Error(`${id}: source '${source.key}' is not in references.json`);
  if (source.locator.trim() === '') throw new Error(`${id}: where in ${source.key}?`);
  if (status !== 'seen') return source;
  const readIn = source.readIn ?? known.get(source.key);
  if (!readIn)
    throw new Error(`${id}: references.json does not say where ${source.key} was read: 'itself', or what quotes it`);
  return { ...source, readIn };
}
