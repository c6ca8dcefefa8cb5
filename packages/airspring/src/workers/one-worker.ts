import { InputError, refuse } from '@airspring/core/fault';
import type { BriefOptions } from '../kind/brief-options.js';
import { named } from './named.js';
import { listen, type Told, type WorkerThread } from './threads.js';

/** A worker that is asked one thing at a time. */
export interface OneWorker {
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

/** Starts a worker and waits until it is ready. `started` is told of it at once, so that it can be ended before. */
export async function startOne(start: () => WorkerThread, started: (one: OneWorker) => void): Promise<OneWorker> {
  const thread = start();
  let settle: { resolve: (told: Told) => void; reject: (error: unknown) => void } | undefined;
  const heard = () =>
    new Promise<Told>((resolve, reject) => {
      settle = { resolve, reject };
    });
  const first = heard();
  let knows: unknown;
  const one: OneWorker = {
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
  started(one);
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
export function judge(one: OneWorker, options: BriefOptions): void {
  const [knows, expected] = [one.knows(), named(options)];
  if (knows === expected) return;
  const remedy = 'Pass the same kinds, coils, suspensions and alignments to serve() in the file of the worker.';
  refuse([{ code: 'inconsistent', path: 'workers', got: knows, expected: `a worker that knows ${expected}`, remedy }]);
}
