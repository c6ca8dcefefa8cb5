/** Work shared among workers: the same to the last bit as in place, ended when it is cancelled, refused as in place. */
import { MessageChannel, Worker } from 'node:worker_threads';
import { isInputError } from '@airspring/core/fault';
import {
  type Brief,
  design,
  scattered,
  serve,
  standard,
  type Thread,
  tradeOffs,
  type Workers,
  workers,
} from 'airspring';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { smallest } from '../../../packages/airspring/src/workers/smallest.js';
import { demo } from '../../arbitrary/brief.js';
import { feltBox } from '../../packages/stranger-kind/felt-box.js';
import { bundled } from './workers/bundled.js';

// They search, and workers take a while to start.
vi.setConfig({ testTimeout: 120_000 });

/** Two edges are exact, so that its search is short. */
const space = { ...demo.space, width: '300 mm', exactly: ['width', 'height'] };
const closed = { ...demo, space, wanted: { ...demo.wanted, lowest: '45 Hz' }, box: { kinds: ['closed'] } } as Brief;
const few = { lowest: ['40 Hz', '45 Hz', '50 Hz'], levels: ['86 dB', '92 dB'] } as const;

/** Workers that have started and not yet ended. */
const alive = new Set<Worker>();
const started = (text: string, workerData?: 'felt') => {
  const worker = new Worker(text, { eval: true, workerData });
  alive.add(worker);
  worker.on('exit', () => alive.delete(worker));
  return worker;
};
const file = await bundled('worker.ts');
const start = () => started(file);
const all: Workers[] = [];
const hired = (count: number, by: () => Worker = start) => {
  all.push(workers({ count, start: by }));
  return all.at(-1)!;
};
afterAll(() => Promise.all(all.map((one) => one.end())));

/** What a refusal of a promise says. */
async function thrown(work: Promise<unknown>): Promise<Error & { faults?: readonly { readonly path: string }[] }> {
  try {
    await work;
  } catch (error) {
    return error as Error;
  }
  throw new Error('nothing was thrown');
}

describe('the same with any number of workers', async () => {
  const [front, builds] = [
    await tradeOffs(closed, few),
    await scattered(closed, { builds: 2500, seed: 5, prices: true }),
  ];
  const one = hired(1);

  test.each([1, 2, 3])('%i', async (count) => {
    const own = count === 1 ? one : hired(count);
    expect(JSON.stringify(await tradeOffs(closed, { ...few, workers: own }))).toBe(JSON.stringify(front));
    const shared = await scattered(closed, { builds: 2500, seed: 5, prices: true, workers: own });
    expect(JSON.stringify(shared)).toBe(JSON.stringify(builds));
  });

  test('builds and prices are those of the answer without workers, and builds depend on the seed', async () => {
    const few = await scattered(closed, { builds: 500, prices: true, workers: one });
    expect(few.ok && few.designs[0]!.prices!.length).toBeGreaterThan(0);
    expect(few).toEqual(design(closed, { scatter: true, prices: true }));
    expect(await scattered(closed, { builds: 500, seed: 2, prices: true })).not.toEqual(few);
    const worked: string[] = [];
    await scattered(closed, { builds: 500, prices: true, workers: one, progress: ({ what }) => worked.push(what) });
    expect(worked).toContain('wish that gives way');
  });

  test('progress counts each part once, to the end', async () => {
    for (const own of [undefined, one]) {
      const counts: number[] = [];
      const progress = ({ count, of }: { readonly count: number; readonly of: number }) => counts.push(count / of);
      await tradeOffs(closed, { ...few, progress, ...(own && { workers: own }) });
      expect(counts).toEqual([1 / 3, 2 / 3, 1]);
    }
  });

  test('the nearest brief of one that cannot be met has its builds as well', async () => {
    const loud = { ...closed, wanted: { ...closed.wanted, level: '110 dB' } } as Brief;
    const [there, here] = [
      await scattered(loud, { builds: 1500, prices: true, workers: one }),
      await scattered(loud, { builds: 1500, prices: true }),
    ];
    if (there.ok) throw new Error('met');
    expect(there.nearest?.answer.designs[0]?.scatter?.builds).toBe(1500);
    expect(there).toEqual(here);
  });
});

describe('cancelled', () => {
  test('work in workers ends at once, and no worker is left', async () => {
    const two = hired(2);
    const before = alive.size;
    const cancel = new AbortController();
    let from = 0;
    const progress = ({ what }: { readonly what: string }) => {
      if (what !== 'builds' || from > 0) return;
      from = performance.now();
      expect(alive.size).toBe(before + 2);
      cancel.abort(new Error('enough'));
    };
    const work = scattered(closed, { builds: 1e6, workers: two, progress, signal: cancel.signal });
    expect((await thrown(work)).message).toBe('enough');
    // All of it would take half a minute.
    expect(performance.now() - from).toBeLessThan(2000);
    expect(alive.size).toBe(before);
    expect((await tradeOffs(closed, { ...few, workers: two })).boxes.length).toBeGreaterThan(0);
  });

  test('while workers start, it ends them', async () => {
    const before = alive.size;
    const work = thrown(tradeOffs(closed, { ...few, workers: hired(2), signal: AbortSignal.timeout(1) }));
    expect((await work).name).toBe('TimeoutError');
    expect(alive.size).toBe(before);
  });

  test('before it starts, nothing is done, and in place it ends after the part in hand', async () => {
    const aborted = AbortSignal.abort(new Error('never'));
    const none = workers({ count: 1, start: () => expect.unreachable() as never });
    expect((await thrown(tradeOffs(closed, { workers: none, signal: aborted }))).message).toBe('never');
    const cancel = new AbortController();
    const progress = vi.fn(() => cancel.abort(new Error('enough')));
    expect((await thrown(tradeOffs(closed, { ...few, progress, signal: cancel.signal }))).message).toBe('enough');
    expect(progress).toHaveBeenCalledTimes(1);
  });
});

describe('what goes wrong in a worker', () => {
  test('a refusal arrives with its faults', async () => {
    const wrong = { ...closed, drivers: [], extra: 1 };
    const error = await thrown(hired(1).run(smallest, [{ brief: wrong, lowest: 40, levels: [90] }], {}));
    expect(isInputError(error)).toBe(true);
    expect(error.faults!.map(({ path }) => path)).toEqual(['extra', 'drivers']);
  });

  test('what it cannot do is an error with its words', async () => {
    const unknown = { ...smallest, name: 'dance' };
    const error = await thrown(hired(1).run(unknown, [{ brief: closed, lowest: 40, levels: [90] }], {}));
    expect([isInputError(error), error.message]).toEqual([false, expect.stringContaining('cannot do "dance"')]);
  });

  test.each([
    ['throws', 'throw new Error("broken file")', 'a worker failed: broken file'],
    ['ends', 'process.exit(3)', 'a worker failed: ended before its work was done'],
  ])('a file that %s is told', async (_, text, message) => {
    const broken = hired(2, () => started(text));
    expect((await thrown(tradeOffs(closed, { ...few, workers: broken }))).message).toBe(message);
  });

  test.each([0, 1.5, 65, Number.NaN])('%s workers are refused', (count) => {
    expect(() => workers({ count, start })).toThrowError(/workers.count/);
  });
});

describe('kinds of a stranger', () => {
  const felt = { ...closed, box: { kinds: ['felt'] } } as Brief;
  const kinds = [...standard, feltBox];
  const one = { lowest: ['50 Hz'], levels: ['88 dB'] } as const;

  test('are known where the file of the worker passes them', async () => {
    const own = hired(2, () => started(file, 'felt'));
    const [there, here] = [
      { ...one, kinds, workers: own },
      { ...one, kinds },
    ];
    expect(await tradeOffs(felt, there)).toEqual(await tradeOffs(felt, here));
  });

  test('a worker that does not know them is refused', async () => {
    const error = await thrown(tradeOffs(felt, { ...few, kinds, workers: hired(1) }));
    expect(error.faults!.map(({ path }) => path)).toEqual(['workers']);
  });

  test('one that worked for another brief is refused as well: its variants are others', async () => {
    const own = hired(1);
    await tradeOffs(closed, { ...one, workers: own });
    const error = await thrown(scattered(closed, { builds: 10, kinds: standard.toReversed(), workers: own }));
    expect(error.faults?.map(({ path }) => path)).toEqual(['workers']);
  });
});

test('workers of a browser, which tell events, do the same', async () => {
  const ports: { close(): void }[] = [];
  const browser = workers({
    count: 2,
    start: () => {
      const { port1, port2 } = new MessageChannel();
      ports.push(port1);
      // Only what a browser has too.
      const [outside, inside] = [port1, port2].map((port): Thread => {
        port.start();
        return {
          postMessage: (message, transfer) => port.postMessage(message, transfer),
          addEventListener: (name, heard) => port.addEventListener(name as 'message', heard),
        };
      });
      serve(inside!);
      return { ...outside!, terminate: () => port1.close() };
    },
  });
  expect(await tradeOffs(closed, { ...few, workers: browser })).toEqual(await tradeOffs(closed, few));
  await browser.end();
  expect(ports.length).toBe(2);
});

test('a program that calls serve is told that it is no worker', () => {
  expect(() => serve(null)).toThrowError('this is the program itself');
});
