import { InputError, refuse } from '@airspring/core/fault';
import type { BriefOptions } from '../kind/brief-options.js';
import type { Progress } from '../search/search.js';
import type { Chunk } from './chunk.js';
import { named } from './named.js';
import { listen, type Told, type WorkerThread } from './threads.js';

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

/** Lets the program do other things, such as to cancel. */
const turn = () => new Promise<void>((resolve) => setTimeout(resolve));

/** Does the work in the program itself. */
export const inPlace: Workers = {
  run: async (chunk, inputs, { progress, signal, ...options }) => {
    const results = [];
    for (const input of inputs) {
      await turn();
      signal?.throwIfAborted();
      results.push(chunk.work(input, options));
      progress?.({ what: chunk.name, count: results.length, of: inputs.length });
    }
    return results;
  },
  end: async () => {},
};

/** A worker that is asked one thing at a time. */
interface Hired {
  /** The names of everything that a brief may name there. */
  readonly knows: () => unknown;
  readonly ask: (chunk: string, input: unknown) => Promise<unknown>;
  readonly rest: (resting: boolean) => void;
  readonly end: () => Promise<unknown>;
  ended: boolean;
}

function resultOf(told: Told): unknown {
  if (told.type === 'refused') throw new InputError(told.faults);
  if (told.type === 'failed') throw new Error(told.message);
  return told.type === 'done' ? told.result : told.named;
}

/** Starts a worker and waits until it is ready. */
async function hire(start: () => WorkerThread, took: (one: Hired) => void): Promise<Hired> {
  const thread = start();
  let settle: { resolve: (told: Told) => void; reject: (error: unknown) => void } | undefined;
  const heard = () =>
    new Promise<Told>((resolve, reject) => {
      settle = { resolve, reject };
    });
  const first = heard();
  let knows: unknown;
  const one: Hired = {
    knows: () => knows,
    ask: async (chunk, input) => {
      const answer = heard();
      thread.postMessage({ chunk, input });
      return resultOf(await answer);
    },
    rest: (resting) => (resting ? thread.unref?.() : thread.ref?.()),
    end: async () => {
      one.ended = true;
      await thread.terminate();
    },
    ended: false,
  };
  took(one);
  const failed = (error: unknown) => {
    one.ended = true;
    const { message = 'ended before its work was done' } = error as { readonly message?: string };
    settle?.reject(new Error(`a worker failed: ${message}`));
  };
  listen(thread, 'message', (told) => settle?.resolve(told as Told));
  listen(thread, 'error', failed);
  listen(thread, 'exit', failed);
  knows = resultOf(await first);
  return one;
}

/** Refuses a worker in which briefs may name other things than here. */
function judge(one: Hired, options: BriefOptions): void {
  const [knows, expected] = [one.knows(), named(options)];
  if (knows === expected) return;
  const remedy = 'Pass the same kinds, coils, suspensions and alignments to serve() in the file of the worker.';
  refuse([{ code: 'inconsistent', path: 'workers', got: knows, expected: `a worker that knows ${expected}`, remedy }]);
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
  let idle: Hired[] = [];
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
    const busy = new Set<Hired>();
    const results: Result[] = new Array(inputs.length);
    let [next, done] = [0, 0];
    const free = async (): Promise<Hired> => {
      const waiting = idle.pop();
      if (waiting?.ended) return free();
      if (waiting) {
        busy.add(waiting);
        waiting.rest(false);
        return waiting;
      }
      return hire(start, (hired) => busy.add(hired));
    };
    const work = async () => {
      const one = await free();
      // One that waits was started for other work, in which briefs may have named other things.
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
