import type { BuildAsked, BuildTold } from './build-worker.js';

/** Shows how far the files are. */
type Say = (words: string, link?: HTMLAnchorElement) => void;

/** Makes everything that a box is built from, in a worker that starts with the first request, and saves it. */
export class BoxFiles {
  readonly #say: Say;
  #worker: Worker | undefined;
  #address = '';

  constructor(say: Say) {
    this.#say = say;
  }

  make(asked: BuildAsked): void {
    this.stop();
    const worker = new Worker(new URL('./build-worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    this.#say(`Making the files …`);
    worker.onerror = ({ message }) => this.#failed(message ?? 'a part of this page is missing');
    worker.onmessage = ({ data }: MessageEvent<BuildTold>) => {
      if (data.type === 'step') this.#say(`Making the files: ${data.what} …`);
      else if (data.type === 'failed') this.#failed(data.because);
      else this.#save(data);
    };
    worker.postMessage(asked);
  }

  /** Gives up what is being made: its box is not the one on the page any more. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #failed(because: string): void {
    this.stop();
    this.#say(`The files could not be made: ${because}`);
  }

  #save({ name, archive, files, first, notes }: BuildTold & { readonly type: 'done' }): void {
    this.stop();
    if (this.#address !== '') URL.revokeObjectURL(this.#address);
    this.#address = URL.createObjectURL(new Blob([archive as BlobPart], { type: 'application/zip' }));
    const link = document.createElement('a');
    [link.href, link.download, link.textContent] = [this.#address, `${name}.zip`, `${name}.zip`];
    this.#say(
      `${files} files, ${(archive.length / 1e6).toFixed(1)}\u00a0MB: open ${first} first. ${notes.join(' ')} Saved as `,
      link,
    );
    link.click();
  }
}
