import { readFileSync } from 'node:fs';
import { jsonFault } from './json-fault.js';

/** What stands in a file, or one line about why it cannot be read. */
export type BriefFile = { readonly ok: true; readonly brief: unknown } | { readonly ok: false; readonly line: string };

/** Faults of the file, not of this program: their code is a system's word like ENOENT. */
const isSystemFault = (error: unknown): error is Error & { code: string } =>
  error instanceof Error && 'syscall' in error && 'code' in error;

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'that is a folder',
  EACCES: 'that file may not be read',
};

/** Reads a brief; `shown` is the path as the reader wrote it. */
export function readBriefFile(path: string, shown: string): BriefFile {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    if (!isSystemFault(error)) throw error;
    return { ok: false, line: `${shown}: ${WHY[error.code] ?? error.message}` };
  }
  // The decoder takes a byte order mark away.
  const text = new TextDecoder('utf-8').decode(bytes);
  if (text.includes('\uFFFD')) return { ok: false, line: `${shown}: that is not a text in UTF-8; save it as UTF-8` };
  if (text.trim() === '') return { ok: false, line: `${shown}: that file is empty` };
  const fault = jsonFault(text);
  if (fault === undefined) return { ok: true, brief: JSON.parse(text) };
  return {
    ok: false,
    line: `${shown}:${fault.line}:${fault.column}: this is not JSON here; expected ${fault.expected}`,
  };
}
