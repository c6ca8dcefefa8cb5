import type { Editor } from './editor.js';
import { listPlaces, type Place } from './place.js';
import { LIMIT } from './run-limit.js';
import type { Told } from './run-worker.js';

/** Code that never checks the time limit is ended from outside, this much later, ms. */
const GRACE = 300;
const PAUSE = 300;

/** A file of code on the page: run it, edit it, run that. What it printed last stays, dimmed, while it is not what the text says. */
class RunnableExample extends HTMLElement {
  #editor: Editor | undefined;
  #worker: Worker | undefined;
  #limit = 0;
  #pause = 0;
  #author = '';

  connectedCallback(): void {
    this.#author = this.querySelector('pre code')?.textContent ?? '';
    this.#part('.run-bar').hidden = false;
    this.addEventListener('click', ({ target }) => {
      const what = (target as Element).closest<HTMLElement>('[data-do]')?.dataset.do;
      if (what === 'run') this.#run();
      if (what === 'edit') void this.#edit();
      if (what === 'reset') this.#editor?.setText(this.#author);
      if (what === 'copy') void this.#copy();
    });
  }

  #part(selector: string): HTMLElement {
    return this.querySelector(selector) as HTMLElement;
  }
  get #text(): string {
    return this.#editor?.text() ?? this.#author;
  }
  #say(words: string): void {
    this.#part('.status').textContent = words;
  }

  async #copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.#text);
      this.#say('Copied.');
    } catch {
      this.#say('The browser does not let this page copy. Select the text instead.');
    }
  }

  async #edit(): Promise<void> {
    if (this.#editor) {
      this.#editor.focus();
      return;
    }
    const { editor } = await import('./editor.js');
    const holder = this.#part('[data-code]');
    holder.replaceChildren();
    this.#editor = editor(holder, {
      text: this.#author,
      label: `Code of ${this.dataset.file}.ts`,
      run: () => this.#run(),
      changed: () => {
        this.#stale(true);
        clearTimeout(this.#pause);
        this.#pause = window.setTimeout(() => this.#run(), PAUSE);
      },
    });
    this.#part('[data-do=reset]').hidden = false;
    this.#part('[data-do=edit]').hidden = true;
    this.#say('Types are stripped here, not checked.');
    this.#editor.focus();
  }

  #stale(stale: boolean): void {
    this.#part('[data-printed]').classList.toggle('stale', stale);
    this.#part('[data-head]').textContent = stale ? 'printed by the last code that ran' : 'prints';
  }

  #run(): void {
    this.#stop();
    clearTimeout(this.#pause);
    const code = this.#text;
    const started = performance.now();
    const worker = new Worker(new URL('./run-worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    this.#say('Running …');
    worker.onmessage = ({ data }: MessageEvent<Told>) => {
      if (data.type === 'ready') {
        worker.postMessage(code);
        this.#limit = window.setTimeout(() => {
          this.#failed([{ message: `stopped after ${LIMIT / 1000} s. Is there a loop that never ends?` }]);
        }, LIMIT + GRACE);
        return;
      }
      if (data.type === 'failed') {
        this.#failed(data.places, data.threw);
        return;
      }
      this.#stop();
      this.#part('[data-printed]').textContent = data.printed;
      this.#stale(false);
      this.#faults([]);
      this.#say(`Ran in ${Math.round(performance.now() - started)} ms.`);
    };
    worker.onerror = ({ message }) => this.#failed([{ message: message ?? 'the code could not be started.' }]);
  }

  #stop(): void {
    clearTimeout(this.#limit);
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #failed(places: readonly Place[], threw = false): void {
    this.#stop();
    this.#stale(true);
    this.#faults(places);
    const what = threw ? 'It ran until an error was thrown' : 'It did not run';
    this.#say(places.length === 1 ? `${what}.` : `${what}: ${places.length} faults.`);
  }

  #faults(places: readonly Place[]): void {
    this.#editor?.setFaults(places);
    listPlaces(this.#part('[data-faults]'), places);
  }
}

customElements.define('runnable-example', RunnableExample);
