import { refuse } from '@airspring/core/fault';
import type { BriefOptions } from '../kind/brief-options.js';
import type { Progress } from '../search/search.js';
import type { Chunk } from './chunk.js';
import { judge, type OneWorker, startOne } from './one-worker.js';
import type { WorkerThread } from './threads.js';

/** How work is watched. */
export interface Watched extends BriefOptions {
  /** Called each time that a part of the work is done. */
  readonly progress?: Progress | undefined;
  /** Ends the work early: the promise is then rejected with the reason of the signal. */
  readonly signal?: AbortSignal | undefined;
}

/** Does pieces of work; the results are in the order of the inputs, and the same wherever they were worked out. */
export interface Workers {
  readonly run: <Input, Result>(
    chunk: Chunk<Input, Result>,
    inputs: readonly Input[],
    watched: Watched,
  ) => Promise<readonly Result[]>;
  /** Ends the workers that wait for work. */
  readonly end: () => Promise<void>;
}

/** How workers are started. */
export interface WorkersOptions {
  /** How many work at the same time; the work of several calls is not shared among them. */
  readonly count: number;
  /** Starts one that calls `serve`: `() => new Worker(new URL('./worker.js', import.meta.url), { type: 'module' })`. */
  readonly start: () => WorkerThread;
}

/**
 * Workers for `tradeOffs` and `scattered`, of Node or of a browser. They start at their first work, and then wait for more of it. In
 * Node they do not hold up the end of the program while they wait. Work that is cancelled or fails ends them; the next work starts
 * others.
 *
 * @example const two = workers({ count: 2, start: () => new Worker(new URL('./worker.js', import.meta.url)) })
 */
export function workers({ count, start }: WorkersOptions): Workers {
  const expected = 'a whole number from 1 to 64';
  const remedy = 'Take as many as the machine has processors.';
  if (!(Number.isInteger(count) && count >= 1 && count <= 64)) {
    refuse([{ code: 'out-of-range', path: 'workers.count', got: count, expected, remedy }]);
  }
  let idle: OneWorker[] = [];
  const end = async () => {
    const all = idle;
    idle = [];
    await Promise.all(all.map((one) => one.end()));
  };
  const run: Workers['run'] = async <Input, Result>(
    chunk: Chunk<Input, Result>,
    inputs: readonly Input[],
    { progress, signal, ...options }: Watched,
  ) => {
    signal?.throwIfAborted();
    const busy = new Set<OneWorker>();
    const results: Result[] = new Array(inputs.length);
    let [next, done] = [0, 0];
    const free = async (): Promise<OneWorker> => {
      const waiting = idle.pop();
      if (waiting?.ended) return free();
      if (waiting) {
        busy.add(waiting);
        waiting.rest(false);
        return waiting;
      }
      return startOne(start, (one) => busy.add(one));
    };
    const work = async () => {
      const one = await free();
      // A worker that waits was started for other work, whose briefs may have named other kinds.
      judge(one, options);
      while (next < inputs.length) {
        const i = next++;
        results[i] = (await one.ask(chunk.name, inputs[i])) as Result;
        progress?.({ what: chunk.name, count: ++done, of: inputs.length });
      }
      one.rest(true);
      busy.delete(one);
      idle.push(one);
    };
    let cancel = () => {};
    const cancelled = new Promise<never>((_, reject) => {
      cancel = () => reject(signal?.reason);
    });
    signal?.addEventListener('abort', cancel);
    try {
      await Promise.race([Promise.all(Array.from({ length: Math.min(count, inputs.length) }, work)), cancelled]);
      return results;
    } catch (error) {
      await Promise.all([end(), ...[...busy].map((one) => one.end())]);
      throw error;
    } finally {
      signal?.removeEventListener('abort', cancel);
    }
  };
  return { run, end };
}
