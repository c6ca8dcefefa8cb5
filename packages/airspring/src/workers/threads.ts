/** A worker as it is seen from outside, or the port as it is seen from inside: of Node's `worker_threads` or of a browser. */
export interface Thread {
  postMessage(message: unknown, transfer?: never): void;
  /** Node tells messages to `on`, a browser tells events to `addEventListener`. */
  on?(name: string, heard: (told: unknown) => void): unknown;
  addEventListener?(name: string, heard: (event: unknown) => void): void;
}

/** A worker that can be ended. One of Node's holds its process up until it is let go. */
export interface WorkerThread extends Thread {
  terminate(): unknown;
  ref?(): void;
  unref?(): void;
}

/** Hears what a thread tells: messages as they were sent, and errors. */
export function listen(thread: Thread, name: 'message' | 'error' | 'exit', heard: (told: unknown) => void): void {
  if (thread.on) thread.on(name, heard);
  else thread.addEventListener?.(name, (event) => heard((event as { readonly data?: unknown }).data ?? event));
}

/** What a worker tells. */
export type Told =
  /** It has started, and briefs may name this there. */
  | { readonly type: 'ready'; readonly named: string }
  | { readonly type: 'done'; readonly result: unknown }
  | { readonly type: 'refused'; readonly faults: readonly never[] }
  | { readonly type: 'failed'; readonly message: string };
