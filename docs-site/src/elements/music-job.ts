import type { MusicAsked, MusicTold } from './music-worker.js';

/** What a worker has to say while it works, and in the end. */
interface Hearing {
  readonly told: (told: Exclude<MusicTold, { type: 'ready' }>) => void;
  /** It broke off: why, in a sentence. */
  readonly broke: (because: string) => void;
  readonly busy: (busy: boolean) => void;
}

/** One thing at a time is done in a worker. Another one takes its place, and what was being done is given up. */
export class MusicJob {
  readonly #hearing: Hearing;
  #worker: Worker | undefined;
  #ready = false;
  #asked: MusicAsked | undefined;

  constructor(hearing: Hearing) {
    this.#hearing = hearing;
  }

  get isBusy(): boolean {
    return this.#asked !== undefined;
  }

  begin(asked: MusicAsked): void {
    if (this.#asked) this.end();
    this.#asked = asked;
    this.#hearing.busy(true);
    if (!this.#worker) this.#start();
    else if (this.#ready) this.#worker.postMessage(asked);
  }

  #start(): void {
    const worker = new Worker(new URL('./music-worker.ts', import.meta.url), { type: 'module' });
    worker.onerror = ({ message }) => {
      this.end();
      this.#hearing.broke(`It could not be played: ${message ?? 'a part of this page is missing'}.`);
    };
    worker.onmessage = ({ data }: MessageEvent<MusicTold>) => {
      if (data.type === 'ready') {
        this.#ready = true;
        if (this.#asked) worker.postMessage(this.#asked);
        return;
      }
      if (data.type !== 'progress') {
        this.#asked = undefined;
        this.#hearing.busy(false);
      }
      this.#hearing.told(data);
    };
    this.#worker = worker;
  }

  end(): void {
    this.#worker?.terminate();
    this.#worker = this.#asked = undefined;
    this.#ready = false;
    this.#hearing.busy(false);
  }
}
