import { type Brief, scattered, tradeOffs, workers } from 'airspring';

/** Does the work in place and in workers of the page, and cancels some. */
async function tried(brief: Brief) {
  const start = () => new Worker(new URL('/worker.js', location.href), { type: 'module' });
  const two = workers({ count: 2, start });
  const some = { lowest: ['40 Hz', '46 Hz', '52 Hz'], levels: ['88 dB'] } as const;
  const [alone, shared] = [await tradeOffs(brief, some), await tradeOffs(brief, { ...some, workers: two })];
  const cancel = new AbortController();
  const progress = ({ what }: { readonly what: string }) => what === 'builds' && cancel.abort(new Error('enough'));
  const many = scattered(brief, { builds: 1e6, workers: two, progress, signal: cancel.signal });
  const cancelled = await many.then(
    () => 'done',
    (error: Error) => error.message,
  );
  const faults = await tradeOffs({ ...brief, title: 3 }, { workers: two }).catch((error) => error.faults);
  await two.end();
  return { alone, shared, cancelled, faults };
}
export type Tried = Awaited<ReturnType<typeof tried>>;

Object.assign(globalThis, { tried });
