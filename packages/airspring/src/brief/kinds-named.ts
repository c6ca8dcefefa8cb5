import type { Fault } from '@airspring/core/fault';
import type { Written } from '../job/job.js';
import type { BriefPart } from './fields.js';
import { fieldsIn } from './kind-sections.js';

/** Whether a kind of box is tried: where `box.kinds` names it, or by default unless it must be named. */
export const isTried = ({ name, byName }: BriefPart, named: readonly (string | undefined)[] | undefined): boolean =>
  named?.includes(name) ?? !byName;

const listed = (parts: readonly BriefPart[]): string => parts.map(({ name }) => `"${name}"`).join(' or ');

/** Fields that ask for something of the box, unless they say no: where no kind that is tried has it, the wish would be ignored in silence. */
const PINNED = ['box.tuning', 'vent.waves'];

/** Faults of a brief with which no kind of box would be tried, or whose fields serve only kinds that must be named and are not. */
export function faultsOfKinds(
  written: Written,
  named: readonly (string | undefined)[] | undefined,
  kinds: readonly BriefPart[],
): Fault[] {
  if (kinds.length === 0) {
    return [
      {
        code: 'empty',
        path: 'kinds',
        got: kinds,
        expected: 'at least one kind of box',
        remedy: 'Pass at least one kind.',
      },
    ];
  }
  const box = written.box as { readonly kinds?: unknown } | undefined;
  // A misspelt name has a fault of its own.
  if (box?.kinds !== undefined && (named === undefined || named.includes(undefined))) return [];
  if (named === undefined && !kinds.some((kind) => isTried(kind, named))) {
    const expected = `at least one of ${listed(kinds)}: each of these kinds is tried only where it is named`;
    const remedy = 'Name the kinds of box to try.';
    return [{ code: 'empty', path: 'box.kinds', got: undefined, expected, remedy }];
  }
  return Object.entries(written).flatMap(([section, value]): Fault[] => {
    const owners = kinds.filter(({ fields }) => Object.hasOwn(fields, section));
    // Every brief has a record `box`: only its fields belong to kinds.
    if (section !== 'box' && idle(owners, named)) return [unused(section, value, owners)];
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value).flatMap(([field, part]): Fault[] => {
      const users = owners.filter((owner) => Object.hasOwn(fieldsIn(owner, section), field));
      const asks = PINNED.includes(`${section}.${field}`) && part !== false;
      const pinned = asks && users.every((user) => !isTried(user, named));
      return idle(users, named) || (pinned && users.length > 0) ? [unused(`${section}.${field}`, part, users)] : [];
    });
  });
}

/** Whether all that own a field must be named, and none is. */
const idle = (owners: readonly BriefPart[], named: readonly (string | undefined)[] | undefined): boolean =>
  owners.length > 0 && owners.every((owner) => owner.byName && !isTried(owner, named));

const unused = (path: string, got: unknown, owners: readonly BriefPart[]): Fault => ({
  code: 'inconsistent',
  path,
  got,
  expected: `${listed(owners)} in box.kinds, since no other kind of box uses this field`,
  remedy: 'Name it there, or remove the field.',
});
