import type { AnyValues } from '../example/input.js';
import type { SlowPart } from '../example/worked.js';
import type { PageAsked, PageTold } from './page-worker.js';

type Wanted = Omit<PageAsked, 'id' | 'page'>;

/** Hands what takes longer than a frame to a worker, one thing after the other. It begins with the first change. */
export class PageWork {
  readonly #page: string;
  #worker: Worker | undefined;
  readonly #waiting = new Map<number, (told: PageTold) => void>();
  #count = 0;
  /** The next question. While the worker works, only the last change is kept. */
  #next: { readonly values: AnyValues; readonly told: (slow: SlowPart) => void } | undefined;
  #isBusy = false;

  constructor(page: string) {
    this.#page = page;
  }

  /** Answers and drawings for some values, unless others come first. */
  slow(values: AnyValues, told: (slow: SlowPart) => void): void {
    this.#next = { values, told };
    if (!this.#isBusy) void this.#ask();
  }

  async #ask(): Promise<void> {
    this.#isBusy = true;
    while (this.#next) {
      const { values, told } = this.#next;
      this.#next = undefined;
      const answer = await this.#send({ values });
      if ('slow' in answer) told(answer.slow);
    }
    this.#isBusy = false;
  }

  /** A file for some values, or why there is none. */
  async file(file: string, values: AnyValues): Promise<Blob | string> {
    const told = await this.#send({ values, file });
    if ('body' in told) return new Blob([told.body as BlobPart], { type: told.type });
    return 'because' in told ? told.because : `there is no ${file}`;
  }

  #send(wanted: Wanted): Promise<PageTold> {
    this.#worker ??= this.#begun();
    const id = ++this.#count;
    return new Promise((resolve) => {
      this.#waiting.set(id, resolve);
      this.#worker?.postMessage({ id, page: this.#page, ...wanted } satisfies PageAsked);
    });
  }

  #begun(): Worker {
    const worker = new Worker(new URL('./page-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<PageTold>) => {
      this.#waiting.get(data.id)?.(data);
      this.#waiting.delete(data.id);
    };
    worker.onerror = ({ message }) => {
      for (const [id, tell] of this.#waiting) tell({ id, because: message ?? 'a part of this page is missing' });
      this.#waiting.clear();
    };
    return worker;
  }
}
