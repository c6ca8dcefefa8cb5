import type { Fault } from '@airspring/core/fault';

/** A brief can hold at most this many items in a list and fields in a record. */
export const MOST = 256;
/** Deeper than any field of a brief. Whatever lies deeper belongs to an unknown field. */
const DEEPEST = 8;

/** Finds lists and records that are too large for a brief, without reading their contents. */
export function faultsOfSize(value: unknown, path: string, depth = 0): Fault[] {
  if (typeof value !== 'object' || value === null || depth > DEEPEST) return [];
  const list = Array.isArray(value);
  const names = list ? undefined : Object.keys(value);
  const count = names?.length ?? (value as readonly unknown[]).length;
  if (count > MOST) {
    const got = list ? value : `a record of ${count} fields`;
    const expected = `a ${list ? 'list of' : 'record of'} at most ${MOST} ${list ? 'items' : 'fields'}`;
    return [{ code: 'out-of-range', path: path || 'brief', got, expected, remedy: 'Leave out what is not needed.' }];
  }
  const parts = list ? value.map((item, i) => [`${path}[${i}]`, item] as const) : namedParts(value, path);
  return parts.flatMap(([at, part]) => faultsOfSize(part, at, depth + 1));
}

const namedParts = (record: object, path: string) =>
  Object.entries(record).map(([name, part]) => [path === '' ? name : `${path}.${name}`, part] as const);
