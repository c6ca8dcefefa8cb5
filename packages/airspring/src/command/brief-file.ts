import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { jsonFault } from './json-fault.js';

/** What stands in a file, or one line about why it cannot be read, or about what is wrong with its text. */
export type BriefFile =
  | { readonly ok: true; readonly brief: unknown }
  | { readonly ok: false; readonly unreadable: boolean; readonly line: string };

/** Faults of the file, not of this program: their code is a system's word like ENOENT. */
const isSystemFault = (error: unknown): error is Error & { code: string } =>
  error instanceof Error && 'syscall' in error && 'code' in error;

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'that is a folder',
  EACCES: 'that file may not be read',
  EPERM: 'that file may not be read',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'that name is too long for a file',
};

/** A brief is a few thousand bytes; what is larger than this is something else, or has no end. */
const LARGEST = 16 * 2 ** 20;

/** Every byte of a file, or why not. Read from one descriptor, so that it is one file even where its name moves. */
function bytesOf(path: string): Buffer | string {
  const file = openSync(path, 'r');
  try {
    const before = fstatSync(file);
    if (before.isDirectory()) return WHY.EISDIR as string;
    const parts: Buffer[] = [];
    for (let size = 0; ; ) {
      const part = Buffer.alloc(2 ** 16);
      const count = readSync(file, part, 0, part.length, null);
      if (count === 0) break;
      size += count;
      if (size > LARGEST) return 'that is larger than 16 MiB, and no brief is';
      parts.push(part.subarray(0, count));
    }
    const after = fstatSync(file);
    if (before.isFile() && (before.size !== after.size || before.mtimeMs !== after.mtimeMs)) {
      return 'that file changed while it was read; try again';
    }
    return Buffer.concat(parts);
  } finally {
    closeSync(file);
  }
}

/** Reads a brief; `shown` is the path as the reader wrote it. */
export function readBriefFile(path: string, shown: string): BriefFile {
  const unreadable = (why: string): BriefFile => ({ ok: false, unreadable: true, line: `${shown}: ${why}` });
  const refused = (line: string): BriefFile => ({ ok: false, unreadable: false, line: `${shown}${line}` });
  let bytes: Buffer | string;
  try {
    bytes = bytesOf(path);
  } catch (error) {
    if (!isSystemFault(error)) throw error;
    return unreadable(WHY[error.code] ?? `that cannot be read (${error.code})`);
  }
  if (typeof bytes === 'string') return unreadable(bytes);
  // The decoder takes a byte order mark away.
  const text = new TextDecoder('utf-8').decode(bytes);
  if (text.includes('\uFFFD')) return refused(': that is not a text in UTF-8; save it as UTF-8');
  if (text.trim() === '') return refused(': that file is empty');
  const fault = jsonFault(text);
  if (fault === undefined) return { ok: true, brief: JSON.parse(text) };
  return refused(`:${fault.line}:${fault.column}: ${fault.says}`);
}
