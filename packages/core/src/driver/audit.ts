import type { Air } from '../air/index.js';
import type { Fault, Reason } from '../fault/index.js';
import { contradiction, inUnitOf } from './driver-data.js';
import { close, type Known, type RelatedField, trust, unlocks } from './relations.js';

/** Relative deviations beyond which a redundant field counts as rounded, and beyond which it is refused (common practice). */
export const deviationLimits = { consistent: 0.01, contradictory: 0.1 } as const;

/** A value that was not given, and how it was found. */
export interface Derivation {
  readonly field: RelatedField;
  /** SI. */
  readonly value: number;
  readonly from: readonly RelatedField[];
  readonly by: string;
}

/** A given field that other fields also imply, and how far it deviates from them. */
export interface Deviation {
  readonly field: RelatedField;
  readonly given: number;
  readonly implied: number;
  /** given/implied − 1. */
  readonly relative: number;
  readonly verdict: 'consistent' | 'rounding';
  readonly by: string;
}

/** Everything that follows from the given fields, and how far redundant fields deviate. */
export interface Audit {
  readonly known: Known;
  readonly derived: readonly Derivation[];
  readonly deviations: readonly Deviation[];
}

/**
 * Takes the given fields in the order of trust and derives what follows from each. It compares a field that is already known
 * with the value that the earlier fields imply. `written` holds the fields as the caller wrote them, for the faults.
 */
export function audit(
  faults: Fault[],
  path: string,
  given: Known,
  written: Readonly<Record<string, unknown>>,
  { density, speedOfSound }: Air,
): Audit {
  const known: Known = {};
  const derived: Derivation[] = [];
  const deviations: Deviation[] = [];
  const stiffness = density * speedOfSound ** 2;
  for (const field of trust) {
    const value = given[field];
    if (value === undefined) continue;
    const implied = known[field];
    if (implied === undefined) {
      known[field] = value;
      close(known, stiffness, ({ target, from, by }, found) => {
        if (found > 0 && found < Infinity) derived.push({ field: target, value: found, from, by });
        else faults.push(contradiction(path, field, written[field], `a value for which ${by} is above zero`));
      });
    } else {
      const { by } = derived.find((one) => one.field === field) as Derivation;
      const relative = value / implied - 1;
      if (!(Math.abs(relative) <= deviationLimits.contradictory)) {
        const expected = `about ${inUnitOf(field, written[field], implied)}, from ${by}`;
        faults.push(contradiction(path, field, written[field], expected));
      } else {
        const verdict = Math.abs(relative) <= deviationLimits.consistent ? 'consistent' : 'rounding';
        deviations.push({ field, given: value, implied, relative, verdict, by });
      }
    }
  }
  return { known, derived, deviations };
}

/** Turns the fault of a derived value into a fault of the data that it was derived from. */
export function ofDerived(fault: Fault, path: string, derived: readonly Derivation[]): Fault {
  const found = derived.find(({ field }) => fault.path === `${path}.${field}`);
  if (found === undefined) return fault;
  const { field, value, from, by } = found;
  const got = `${field} of ${inUnitOf(field, undefined, value)}`;
  const expected = `data that lead to ${fault.expected} (${by})`;
  return { ...fault, path, got, expected, remedy: `Check the units and powers of ten of ${from.join(', ')}.` };
}

const listed = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

/** Says which fields cannot be derived, and which of the fields `among` would be enough to derive them. */
export function missing(fields: readonly RelatedField[], known: Known, among: readonly RelatedField[] = trust): Reason {
  const ways = unlocks(fields, Object.keys(known) as RelatedField[], among).slice(0, 6);
  const single = ways.every((way) => way.length === 1);
  const add = ways.length > 1 ? 'Add one of these: ' : 'Add ';
  const sets = ways.map((way) => listed(way, 'and'));
  const text = single ? listed(sets, 'or') : sets.join('; or ');
  return { code: 'missing-data', text: `${listed(fields, 'and')} cannot be derived. ${add}${text}.` };
}
