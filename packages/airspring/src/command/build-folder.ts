import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmdirSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { visible } from '@airspring/core/fault';
import { type FilesToBuild, filesToBuild } from './build.js';
import { discard, whyUnwritten } from './page-file.js';

/** A file of a folder: its path inside it, with `/` between folders. */
interface BuiltFile {
  readonly path: string;
  readonly contents: string | Uint8Array;
}

/** What keeps a folder from being written, as far as it can be told before its files are made; `undefined` otherwise. */
function hindrance(path: string): string | undefined {
  try {
    accessSync(dirname(path), constants.W_OK);
    if (!existsSync(path)) return undefined;
    if (!statSync(path).isDirectory()) return 'this is a file, not a folder';
    return readdirSync(path).length > 0 ? 'this folder is not empty; name a new one' : undefined;
  } catch (error) {
    return whyUnwritten(error);
  }
}

/**
 * Writes a folder whole or not at all: into a folder beside it, which then takes its name. `undefined`, or why it
 * cannot be written.
 */
function writeFolder(path: string, files: readonly BuiltFile[]): string | undefined {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    mkdirSync(beside);
    for (const { path: inside, contents } of files) {
      mkdirSync(join(beside, dirname(inside)), { recursive: true });
      writeFileSync(join(beside, inside), contents);
    }
    if (existsSync(path)) rmdirSync(path);
    renameSync(beside, path);
    return undefined;
  } catch (error) {
    discard(beside);
    return whyUnwritten(error);
  }
}

/** What was written, or why nothing was: one line, and whose fault it is. */
export type Built =
  | { readonly ok: true; readonly lines: readonly string[]; readonly met: boolean }
  | (FilesToBuild & { readonly ok: false })
  | { readonly ok: false; readonly not: 'written'; readonly line: string };

/** Writes the folder to build from: one box of a brief, or a change of a box that stands. */
export async function build(
  brief: unknown,
  { into, standing, ...how }: { readonly into: string; readonly standing: string } & Parameters<typeof filesToBuild>[1],
): Promise<Built> {
  const path = resolve(standing, into);
  const not = (why: string): Built => ({
    ok: false,
    not: 'written',
    line: `${visible(into)}: the folder cannot be written: ${why}`,
  });
  const before = hindrance(path);
  if (before !== undefined) return not(before);
  const made = await filesToBuild(brief, how);
  if (!made.ok) return made;
  const why = writeFolder(path, made.files);
  if (why !== undefined) return not(why);
  const lines = [
    `${visible(made.name)} of "${visible(made.title)}": ${made.files.length === 1 ? 'one file' : `${made.files.length} files`} in ${visible(basename(into))}.`,
    `Open ${made.files[0]!.path} first.`,
    ...made.notes,
  ];
  return { ok: true, met: made.met, lines };
}
