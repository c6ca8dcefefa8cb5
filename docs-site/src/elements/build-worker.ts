/** Everything that a box is built from, away from the page: by the same function as the command. */

import { filesToBuild } from '../../../packages/airspring/src/command/build.js';
import { asksForFlare, installedFlares } from '../../../packages/airspring/src/command/flares.js';
import { plainJson } from '../../../packages/airspring/src/command/json-fault.js';
import { asksForShape, installedShapes } from '../../../packages/airspring/src/command/shapes.js';
import { fileName } from '../brief-text.js';

export interface BuildAsked {
  /** The brief as its reader wrote it. */
  readonly text: string;
  /** Of which box or change, as the command names it. */
  readonly only: string;
}

export type BuildTold =
  | { readonly type: 'step'; readonly what: string }
  | { readonly type: 'failed'; readonly because: string }
  | {
      readonly type: 'done';
      /** Of the folder in the archive, and of the archive. */
      readonly name: string;
      readonly archive: Uint8Array;
      readonly files: number;
      readonly first: string;
      readonly notes: readonly string[];
    };

const tell = (told: BuildTold) => self.postMessage(told);

async function made({ text, only }: BuildAsked): Promise<BuildTold> {
  const plain = plainJson(text);
  if (!plain.ok) return { type: 'failed', because: plain.fault.says };
  const brief: unknown = JSON.parse(plain.text);
  const shapes = asksForShape(brief) ? ((await installedShapes()) ?? []) : [];
  const step = (what: string) => tell({ type: 'step', what });
  const flares = asksForFlare(brief) ? await installedFlares() : undefined;
  const built = await filesToBuild(brief, { only, shapes, flares: flares === 'missing' ? undefined : flares, step });
  if (!built.ok) return { type: 'failed', because: built.line };
  step('the archive');
  const { archiveOf } = await import('@airspring/workshop/dossier');
  const name = fileName(built.title, `-${fileName(built.name, '')}`);
  const { files, notes } = built;
  const archive = await archiveOf(files, name);
  return { type: 'done', name, archive, files: files.length, first: files[0]!.path, notes };
}

self.onmessage = async ({ data }: MessageEvent<BuildAsked>) => {
  try {
    tell(await made(data));
  } catch (error) {
    tell({ type: 'failed', because: (error as Error).message });
  }
};
