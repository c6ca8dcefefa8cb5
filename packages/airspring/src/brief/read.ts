import { air } from '@airspring/core/air';
import { type Fault, type FaultCode, InputError } from '@airspring/core/fault';
import * as v from 'valibot';
import { faultsAcross } from './across.js';
import { faultlessOf } from './faultless.js';
import { type Job, jobOf } from './job.js';
import { gather, offersOf } from './offers.js';
import { type Brief, briefSchema, type ReadBrief } from './schema.js';

type Path = readonly PropertyKey[];

/** One path as people write it: `drivers[0].Qts`. */
const pathText = (path: Path): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '') || 'brief';

const pathOf = (issue: v.BaseIssue<unknown>): Path => (issue.path ?? []).map(({ key }) => key as PropertyKey);

/** What would do where a value is of the wrong type, in words. */
const TYPES: Readonly<Record<string, string>> = {
  Object: 'a record, in braces',
  Array: 'a list, in square brackets',
  string: 'a text, in quotes',
  number: 'a number, without quotes',
  boolean: 'true or false, without quotes',
};

/** What the schema library found, as a fault of ours. */
function faultOf(issue: v.BaseIssue<unknown>): Fault {
  const at = { path: pathText(pathOf(issue)), got: issue.input };
  const [code, expected, remedy] = issue.message.split('\n');
  if (expected !== undefined && remedy !== undefined) return { ...at, code: code as FaultCode, expected, remedy };
  if (issue.received === 'undefined') {
    const remedy = 'Add the field; the JSON Schema says what it holds.';
    return { ...at, code: 'empty', got: undefined, expected: 'a value', remedy };
  }
  const wanted = issue.expected ?? 'another value';
  // Choices come as ("a" | "b").
  const meant = TYPES[wanted] ?? wanted.replace(/^\((.*)\)$/, 'one of $1').replaceAll(' | ', ', ');
  return { ...at, code: 'unit', expected: meant, remedy: 'Correct the value.' };
}

/** Every field that was not read. The schema library names one a record; what it read has none of them. */
function unknownFields(given: unknown, read: unknown, path: Path = []): Fault[] {
  if (given === read || typeof given !== 'object' || typeof read !== 'object' || !given || !read) return [];
  return Object.entries(given).flatMap(([name, value]): Fault[] => {
    const at = [...path, Array.isArray(given) ? Number(name) : name];
    if (Object.hasOwn(read, name)) return unknownFields(value, (read as Record<string, unknown>)[name], at);
    const remedy = 'Correct the name or remove it.';
    return [{ code: 'unknown-field', path: pathText(at), got: name, expected: 'a field of the brief', remedy }];
  });
}

/**
 * Reads a brief: every quantity to SI units, every default filled in, every driver completed. Fields that are right alone are
 * held against each other even where others have faults, so that nobody has to correct a brief in stages.
 *
 * @throws InputError with every fault at its path
 * @example readBrief(JSON.parse(text)).wanted.lowest // 30
 */
export function readBrief(brief: unknown): Job {
  const { output, issues = [] } = v.safeParse(briefSchema, brief);
  const wrong = issues.filter(({ expected }) => expected !== 'never');
  const faultless = faultlessOf(output as ReadBrief, wrong.map(pathOf));
  const across = faultsAcross(brief as Brief, faultless);
  const medium = gather(across, () => air(faultless.air ?? {}));
  const offers = offersOf(across, output as ReadBrief, faultless);
  const alone = [...wrong.map(faultOf), ...unknownFields(brief, output)];
  // What is wrong alone cannot be held against another field as well.
  const faults = [...alone, ...across.filter(({ path }) => alone.every((fault) => fault.path !== path))];
  if (faults.length > 0 || medium === undefined) throw new InputError(faults);
  return jobOf(brief as Brief, output as ReadBrief, medium, offers);
}
