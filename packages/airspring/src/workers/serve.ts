import { isInputError } from '@airspring/core/fault';
import type { BriefOptions } from '../kind/brief-options.js';
import { builds } from './builds.js';
import type { Chunk } from './chunk.js';
import { easedWish } from './eased.js';
import { named } from './named.js';
import { smallest } from './smallest.js';
import { listen, type Thread, type Told } from './threads.js';

/** Everything that may be done in a worker. */
const chunks: readonly Chunk<never, unknown>[] = [builds, easedWish, smallest];

function answer({ chunk, input }: { readonly chunk: string; readonly input: never }, options: BriefOptions) {
  const found = chunks.find(({ name }) => name === chunk);
  try {
    if (found === undefined) throw new Error(`this worker cannot do "${chunk}": it is of another version`);
    const result = found.work(input, options);
    return { told: { type: 'done', result } as Told, columns: found.columns?.(result as never) ?? [] };
  } catch (error) {
    const told: Told = isInputError(error)
      ? { type: 'refused', faults: error.faults as readonly never[] }
      : { type: 'failed', message: String(error) };
    return { told, columns: [] };
  }
}

/**
 * What a worker does: it takes work from the program that started it. It is the one call of a file of yours, which also says what
 * its briefs may name, since functions cannot be sent to a worker. `port` is `parentPort` of `node:worker_threads`, or `self` in a
 * browser.
 *
 * @example serve(parentPort, { kinds: [...standard, mine] })
 */
export function serve(port: Thread | null, options: BriefOptions = {}): void {
  if (port === null) throw new Error('serve() is for a worker; this is the program itself');
  listen(port, 'message', (message) => {
    const { told, columns } = answer(message as never, options);
    port.postMessage(told, columns.map(({ buffer }) => buffer) as never);
  });
  port.postMessage({ type: 'ready', named: named(options) } satisfies Told);
}
