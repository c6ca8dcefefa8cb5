/** Workers and ports of Node and of a browser both fit. */
import type { MessagePort, Worker as NodeWorker } from 'node:worker_threads';
import { serve, type WorkerThread, workers } from 'airspring';
import { expectTypeOf, test } from 'vitest';

test('workers', () => {
  expectTypeOf<NodeWorker>().toExtend<WorkerThread>();
  expectTypeOf<Worker>().toExtend<WorkerThread>();
  expectTypeOf(serve).toBeCallableWith({} as MessagePort | null);
  expectTypeOf(serve).toBeCallableWith({} as Window & typeof globalThis);
  // @ts-expect-error: what cannot be ended is no worker
  workers({ count: 1, start: () => ({ postMessage: () => {} }) });
});
