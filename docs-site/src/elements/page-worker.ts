/** What takes longer than a frame on a page with numbers to drag, and its files. */
import type { AnyValues } from '../example/input.js';
import type { SlowPart, Worked } from '../example/worked.js';

/** Pages that have such a part, and no other: a worker is a bundle of its own. */
const models = import.meta.glob<Worked>('../worked/{cut-the-box,print-the-vent}.ts', { import: 'default' });

export interface PageAsked {
  readonly id: number;
  readonly page: string;
  readonly values: AnyValues;
  /** Left out: answers and drawings. */
  readonly file?: string;
}

export type PageTold =
  | { readonly id: number; readonly slow: SlowPart }
  | { readonly id: number; readonly body: string | Uint8Array; readonly type: string }
  | { readonly id: number; readonly because: string };

async function made({ id, page, values, file }: PageAsked): Promise<PageTold> {
  const load = models[`../worked/${page}.ts`];
  if (!load) return { id, because: `this worker does not know ${page}` };
  const { slow, files } = await load();
  if (file === undefined) return { id, slow: slow?.(values) ?? { answers: {}, pictures: {} } };
  const { make, type } = files?.[file] ?? {};
  if (!make || type === undefined) return { id, because: `this page has no ${file}` };
  return { id, body: await make(values), type };
}

self.onmessage = async ({ data }: MessageEvent<PageAsked>) => {
  try {
    self.postMessage(await made(data));
  } catch (error) {
    self.postMessage({ id: data.id, because: (error as Error).message } satisfies PageTold);
  }
};
