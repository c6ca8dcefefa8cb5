import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { plainJson } from './json-fault.js';

/** The contents of a file; or one line that says why it cannot be read, or what is wrong with its text. */
export type BriefFile =
  | { readonly ok: true; readonly brief: unknown }
  | { readonly ok: false; readonly unreadable: boolean; readonly line: string };

/** Whether a fault comes from the file system, not from this program: its code is a word such as ENOENT. */
const isSystemFault = (error: unknown): error is Error & { code: string } =>
  error instanceof Error && 'syscall' in error && 'code' in error;

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'this is a folder, not a file',
  EACCES: 'you have no permission to read this file',
  EPERM: 'you have no permission to read this file',
  ELOOP: 'its symbolic links form a loop',
  ENAMETOOLONG: 'the name is too long for a file',
};

/** A brief has a few thousand bytes. A file larger than this is something else, or has no end. */
const LARGEST = 16 * 2 ** 20;

/** Why a file cannot be read, in words; any other error is thrown on. */
export function whyUnreadable(error: unknown): string {
  if (!isSystemFault(error)) throw error;
  return WHY[error.code] ?? `the file cannot be read (${error.code})`;
}

/** Every byte of a file, or why it cannot be read. One descriptor is used, so that renaming cannot mix two files. */
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
      if (size > LARGEST) return 'the file is larger than 16 MiB, the most that a brief may have';
      parts.push(part.subarray(0, count));
    }
    const after = fstatSync(file);
    if (before.isFile() && (before.size !== after.size || before.mtimeMs !== after.mtimeMs)) {
      return 'the file changed while it was being read; try again';
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
    return unreadable(whyUnreadable(error));
  }
  if (typeof bytes === 'string') return unreadable(bytes);
  // The decoder removes a byte order mark.
  const text = new TextDecoder('utf-8').decode(bytes);
  if (text.includes('\uFFFD')) return refused(': the file is not UTF-8 text; save it as UTF-8');
  if (text.trim() === '') return refused(': the file is empty');
  const plain = plainJson(text);
  if (plain.ok) return { ok: true, brief: JSON.parse(plain.text) };
  const { line, column, says } = plain.fault;
  return refused(`:${line}:${column}: ${says}`);
}
