import { type Fault, type FaultCode, InputError } from '@airspring/core/fault';
import * as v from 'valibot';
import { type Job, jobOf } from './job.js';
import { type Brief, briefSchema } from './schema.js';

/** One path as people write it: `drivers[0].Qts`. */
const pathOf = (issue: v.BaseIssue<unknown>): string =>
  (issue.path ?? []).reduce((path, { key }) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    return path === '' ? String(key) : `${path}.${String(key)}`;
  }, '') || 'brief';

/** What the schema library found, as a fault of ours. */
function faultOf(issue: v.BaseIssue<unknown>): Fault {
  const at = { path: pathOf(issue), got: issue.input };
  const [code, expected, remedy] = issue.message.split('\n');
  if (expected !== undefined && remedy !== undefined) return { ...at, code: code as FaultCode, expected, remedy };
  if (issue.expected === 'never') {
    const key = issue.path?.at(-1)?.key;
    return {
      ...at,
      code: 'unknown-field',
      got: key,
      expected: 'a field of the brief',
      remedy: 'Correct the name or remove it.',
    };
  }
  if (issue.received === 'undefined') {
    return { ...at, code: 'empty', got: undefined, expected: 'a value', remedy: 'Add the field.' };
  }
  return { ...at, code: 'unit', expected: issue.expected ?? 'another value', remedy: 'Correct the value.' };
}

/**
 * Reads a brief: every quantity to SI units, every default filled in, every driver completed.
 *
 * @throws InputError with every fault at its path
 * @example readBrief(JSON.parse(text)).wanted.lowest // 30
 */
export function readBrief(brief: unknown): Job {
  const result = v.safeParse(briefSchema, brief);
  if (!result.success) throw new InputError(result.issues.map(faultOf));
  return jobOf(brief as Brief, result.output);
}
