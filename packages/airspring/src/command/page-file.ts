import { renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  ENOTDIR: 'there is no such folder',
  EACCES: 'you have no permission to write there',
  EPERM: 'you have no permission to write there',
  EROFS: 'you have no permission to write there',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'the name is too long for a file',
};

/** Why a file or a folder cannot be written, in words; any other error is thrown on. */
export function whyUnwritten(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  if (code === undefined) throw error;
  return WHY[code] ?? `the file system refuses it (${code})`;
}

/** Takes away what was begun. Where nothing can stand, nothing was begun, and the first error tells why. */
export function discard(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true });
  } catch {
    // A file in place of a folder: `force` does not forgive that.
  }
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;

/**
 * Writes a page whole or not at all: into a file beside it, which then takes its name. An older page is replaced. `undefined`, or
 * why it cannot be written.
 */
export function writePage(path: string, text: string): string | undefined {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    if (isFolder(path)) return 'this is a folder, not a file';
    writeFileSync(beside, text);
    renameSync(beside, path);
    return undefined;
  } catch (error) {
    discard(beside);
    return whyUnwritten(error);
  }
}
