import type { Fault } from '@airspring/core/fault';
import type * as v from 'valibot';
import { likeliest } from './likeness.js';
import { fieldsAt, type Path, pathText, schemaAt, valueAt } from './path.js';
import { unpacked } from './quantity-text.js';

/** What is expected in place of a value of the wrong type, in words. */
const TYPES: Readonly<Record<string, string>> = {
  Object: 'a record, in braces',
  Array: 'a list, in square brackets',
  string: 'a text, in quotes',
  number: 'a number, without quotes',
  boolean: 'true or false, without quotes',
};

const ownPath = (issue: v.BaseIssue<unknown>): Path => (issue.path ?? []).map(({ key }) => key as PropertyKey);

/** Puts an expected type into words. The schema library writes choices as ("a" | "b"). */
function inWords(expects: string): string {
  const choices = /^\((.*)\)$/.exec(expects)?.[1]?.split(' | ');
  if (choices === undefined) return TYPES[expects] ?? expects;
  const isType = choices.some((one) => one in TYPES);
  return isType ? choices.map((one) => TYPES[one] ?? one).join(', or ') : `one of ${choices.join(', ')}`;
}

/** A fault, and its place in the brief. */
interface Found {
  readonly path: Path;
  readonly fault: Fault;
}

const UNKNOWN = 'a known field';

/** The issues of the one choice of a union that goes deepest into the value; otherwise the issue itself. */
export function issuesOf(issue: v.BaseIssue<unknown>): readonly v.BaseIssue<unknown>[] {
  const within = (issue.type === 'union' ? (issue.issues ?? []) : []).flatMap((one): v.BaseIssue<unknown>[] =>
    one.path === undefined
      ? []
      : [
          {
            ...one,
            path: [...(issue.path ?? []), ...one.path] as typeof one.path,
            // Nothing is read of a union with a field too many, so that `unknownFields` cannot tell it.
            ...(one.expected === 'never' && { expected: UNKNOWN }),
          },
        ],
  );
  return within.length > 0 ? within : [issue];
}

/** What the schema library found, as a fault of ours at its place. */
export function faultOf(issue: v.BaseIssue<unknown>, schema: v.GenericSchema): Found {
  const path = ownPath(issue);
  // The schema library takes a list for a record whose fields are missing.
  const list = issue.path?.findIndex((step) => step.type === 'object' && Array.isArray(step.input)) ?? -1;
  if (list >= 0) {
    const around = path.slice(0, list);
    const fault = wrongType(around, issue.path?.[list]?.input, 'Object');
    return { path: around, fault };
  }
  if (issue.expected === UNKNOWN) {
    return { path, fault: unknownField(String(path.at(-1)), path, fieldsAt(schema, path.slice(0, -1))) };
  }
  const said = unpacked(issue.message);
  if (said !== undefined) return { path, fault: { ...said, path: pathText(path), got: issue.input } };
  if (issue.received === 'undefined') return { path, fault: missing(path, schema) };
  return { path, fault: wrongType(path, issue.input, issue.expected ?? 'another value') };
}

const wrongType = (path: Path, got: unknown, expects: string): Fault => ({
  code: 'unit',
  path: pathText(path),
  got,
  expected: path.length === 0 ? 'a brief: a record, in braces' : inWords(expects),
  remedy: 'Correct the value.',
});

function missing(path: Path, schema: v.GenericSchema): Fault {
  const { expects = 'a value', message } = (schemaAt(schema, path) ?? {}) as { expects?: string; message?: unknown };
  const expected = (typeof message === 'string' && unpacked(message)?.expected) || inWords(expects);
  return { code: 'empty', path: pathText(path), got: undefined, expected, remedy: 'Add the field.' };
}

/** Every field that was not read. The schema library reports only one for each record, but it reads none of them. */
export function unknownFields(given: unknown, read: unknown, schema: v.GenericSchema, path: Path = []): Fault[] {
  if (given === read || typeof given !== 'object' || typeof read !== 'object' || !given || !read) return [];
  const list = Array.isArray(given);
  // Where every field may be left out, the schema library takes a list for an empty record.
  if (list && !Array.isArray(read)) return [wrongType(path, given, 'Object')];
  return Object.entries(given).flatMap(([name, value]): Fault[] => {
    const at = [...path, list ? Number(name) : name];
    if (Object.hasOwn(read, name)) return unknownFields(value, valueAt(read, [name]), schema, at);
    return [unknownField(name, at, fieldsAt(schema, path))];
  });
}

function unknownField(name: string, path: Path, fields: readonly string[]): Fault {
  const meant = likeliest(name, fields);
  return {
    code: 'unknown-field',
    path: pathText(path),
    got: name,
    expected: fields.length > 0 ? `one of the fields ${fields.join(', ')}` : 'no field of this name',
    remedy: meant === undefined ? 'Correct the name, or remove the field.' : `Did you mean ${meant}?`,
  };
}
