/**
 * The mutation gate: what a formula returns × (1 + 10 · tolerance), × 2 and × −1 must each turn one of the outside checks
 * of that very formula red, by a value off or by a fault thrown. The tolerance is the check's own, relative to the
 * expected value of largest size where it is absolute.
 *
 * Each leaf of a record that a formula returns is multiplied alone as well, by 2 and by −1: `leaves.json` holds those that
 * nothing outside can contradict, as patterns with reasons.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { auditedExports, auditedSources, formulasToCheck } from '../../.config/ledger-gate.js';
import { isOutside } from '../ledger/row.js';
import { type Collected, collected } from './collect.js';
import { leavesOf, underMutant } from './hook.js';
import reasons from './leaves.json' with { type: 'json' };
import { brokenGroups } from './silent.js';

const root = new URL('../../', import.meta.url);
const files = import.meta.glob(['../literature/**/*.test.ts', '../circuit/**/*.test.ts']);
const loaded = await Promise.allSettled(Object.values(files).map((load) => load()));
const broken = await brokenGroups();

const mutants = { 'ten tolerances': beyondTolerance, twice: () => 2, sign: () => -1 };
const exceptions: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(fileURLToPath(new URL('tests/ledger/exceptions.json', root)), 'utf8'),
);
const formulas = formulasToCheck(auditedExports(...auditedSources(fileURLToPath(root))), exceptions);
const outside = collected.filter(({ spec }) => isOutside(spec));
const used = new Set<string>();
/** Whether a leaf is one of `leaves.json`. */
function excepted(leaf: string): boolean {
  const found = Object.keys(reasons).find((pattern) => new RegExp(pattern).test(leaf));
  if (found !== undefined) used.add(found);
  return found !== undefined;
}

test('every file of checks is read', () => {
  const unread = loaded.flatMap((one) => (one.status === 'rejected' ? [String(one.reason)] : []));
  expect([...unread, ...broken]).toEqual([]);
});

test.each(formulas)(
  '%s',
  (formula) => {
    const checks = outside.filter(({ spec }) => spec.formula === formula);
    // A copy with nothing multiplied changes nothing: what turns red below is red by the factor. Its run tells which leaves there are.
    const seen = new Map<string, Collected[]>();
    const isRedUnchanged = (one: Collected) => {
      let red = false;
      for (const leaf of leavesOf(formula, () => (red = isRed(one))))
        if (leaf !== '') seen.set(leaf, [...(seen.get(leaf) ?? []), one]);
      return red;
    };
    // The quickest first: most mutants fall to the first check that is asked.
    const took = new Map(checks.map((one) => [one, secondsOf(() => isRed(one))]));
    checks.sort((a, b) => took.get(a)! - took.get(b)!);
    expect(checks.filter(isRedUnchanged).map(({ id }) => id)).toEqual([]);
    const survivors = Object.entries(mutants)
      .filter(([, factor]) => !checks.some((one) => underMutant(formula, factor(one), () => isRed(one))))
      .map(([name]) => name);
    expect(survivors, `${checks.length} checks`).toEqual([]);
    // Only a check in which a leaf is seen can feel it.
    const unfelt = [...seen]
      .filter(([leaf]) => !excepted(`${formula} ${leaf}`))
      .filter(([leaf, by]) => ![2, -1].every((f) => by.some((one) => underMutant(formula, f, () => isRed(one), leaf))));
    expect(
      unfelt.map(([leaf]) => leaf),
      'leaves that no check feels',
    ).toEqual([]);
  },
  // The slowest takes half a minute alone, and may have to leave the processor to others.
  300_000,
);

test('every exception is of a leaf that there is', () => {
  expect(Object.keys(reasons).filter((pattern) => !used.has(pattern))).toEqual([]);
  expect(Object.values(reasons).filter((reason) => reason.trim() === '')).toEqual([]);
});

afterAll(() => {
  console.log(`mutants: ${formulas.length} formulas × 3, ${outside.length} outside checks`);
});

function beyondTolerance({ spec: { tolerance, expected } }: Collected): number {
  const largest = Math.max(...(typeof expected === 'number' ? [expected] : expected).map(Math.abs));
  const size = tolerance.relative ?? tolerance.absolute / (largest || 1);
  return 1 + 10 * Math.max(size, Number.EPSILON);
}

function secondsOf(work: () => void): number {
  const from = performance.now();
  work();
  return (performance.now() - from) / 1000;
}

function isRed({ evaluate }: Collected): boolean {
  try {
    return !evaluate().passed;
  } catch {
    return true;
  }
}
