import { existsSync, mkdirSync, readdirSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { whyUnwritten } from './page-file.js';

/** A file of a folder: its path inside it, with `/` between folders. */
export interface BuiltFile {
  readonly path: string;
  readonly contents: string | Uint8Array;
}

/**
 * Writes a folder whole or not at all: into a folder beside it, which then takes its name. A folder that holds anything stays as it
 * is. `undefined`, or why it cannot be written.
 */
export function writeFolder(path: string, files: readonly BuiltFile[]): string | undefined {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    if (existsSync(path)) {
      if (!statSync(path).isDirectory()) return 'this is a file, not a folder';
      if (readdirSync(path).length > 0) return 'this folder is not empty; name a new one';
    }
    mkdirSync(beside);
    for (const { path: inside, contents } of files) {
      mkdirSync(join(beside, dirname(inside)), { recursive: true });
      writeFileSync(join(beside, inside), contents);
    }
    if (existsSync(path)) rmdirSync(path);
    renameSync(beside, path);
    return undefined;
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    return whyUnwritten(error);
  }
}
