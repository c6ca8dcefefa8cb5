import { basename, resolve } from 'node:path';
import { isInputError, visible } from '@airspring/core/fault';
import type { ShapeChoice } from '@airspring/core/space';
import type { Progress } from '../search/search.js';
import { toBuild } from '../to-build.js';
import { writeFolder } from './build-folder.js';

/** What the command loads where it builds. */
const workshop = () => import('@airspring/workshop/dossier');
export type Workshop = typeof workshop;

const INSTALL = 'npm install @airspring/workshop';

/** What was written, or why nothing was: one line, and whose fault it is. */
export type Built =
  | { readonly ok: true; readonly lines: readonly string[]; readonly met: boolean }
  | { readonly ok: false; readonly not: 'installed' | 'accepted' | 'written' | 'met'; readonly line: string };

/** The package for it, or `undefined` where it is not installed. */
async function loaded(load: Workshop): Promise<Awaited<ReturnType<Workshop>> | undefined> {
  try {
    return await load();
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ERR_MODULE_NOT_FOUND' && message.includes('@airspring/workshop')) return undefined;
    throw error;
  }
}

/** Writes the folder to build from: one box of a brief, or a change of a box that stands. */
export async function build(
  brief: unknown,
  {
    only,
    into,
    standing,
    progress,
    load = workshop,
    shapes = [],
  }: {
    readonly only?: string | undefined;
    readonly into: string;
    readonly standing: string;
    readonly progress: Progress;
    readonly load?: Workshop | undefined;
    readonly shapes?: readonly ShapeChoice[];
  },
): Promise<Built> {
  const library = await loaded(load);
  if (library === undefined)
    return { ok: false, not: 'installed', line: `what to build from is made by another package: ${INSTALL}` };
  try {
    const built = toBuild(brief, { only, progress, shapes });
    if (!built.ok) return built;
    const made = await library.filesToBuildFrom(built.work);
    const why = writeFolder(resolve(standing, into), made.files);
    if (why !== undefined)
      return { ok: false, not: 'written', line: `${visible(into)}: the folder cannot be written: ${why}` };
    const lines = [
      `${built.name} of "${built.title}": ${made.files.length} files in ${visible(basename(into))}.`,
      `Open ${made.files[0]!.path} first.`,
      ...made.notes,
    ];
    return { ok: true, met: built.met, lines };
  } catch (error) {
    if (!isInputError(error)) throw error;
    return { ok: false, not: 'accepted', line: error.message };
  }
}
