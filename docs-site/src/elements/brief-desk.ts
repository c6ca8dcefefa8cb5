import type { Editor } from './editor.js';
import type { JobTold } from './job-worker.js';
import { type Place, placeText } from './place.js';

/** After the last key, ms; a brief is read while it is written, so not too soon. */
const PAUSE = 700;
/** A brief that cannot be met makes the job run several times. */
const LIMIT = 60_000;

/** A brief as text, and the whole job of it in a worker. The last good answer stays, dimmed, while it is not the one of the text. */
class BriefDesk extends HTMLElement {
  #editor: Editor | undefined;
  #worker: Worker | undefined;
  #timer = 0;
  #limit = 0;
  #author = '';

  connectedCallback(): void {
    this.#author = this.querySelector('[data-code] code')?.textContent ?? '';
    for (const what of ['edit', 'run']) this.#button(what).hidden = false;
    this.#part('[data-scripted]').hidden = false;
    this.addEventListener('click', ({ target }) => {
      const what = (target as Element).closest<HTMLElement>('[data-do]')?.dataset.do;
      if (what === 'edit') void this.#edit();
      if (what === 'run') this.#run();
      if (what === 'reset') this.#editor?.setText(this.#author);
    });
  }

  #part(selector: string): HTMLElement {
    return this.querySelector(selector) as HTMLElement;
  }
  #button(what: string): HTMLElement {
    return this.#part(`[data-do=${what}]`);
  }
  get #text(): string {
    return this.#editor?.text() ?? this.#author;
  }
  #say(words: string): void {
    this.#part('.status').textContent = words;
  }

  async #edit(): Promise<void> {
    const { editor } = await import('./editor.js');
    const holder = this.#part('[data-code]');
    holder.replaceChildren();
    this.#editor = editor(holder, {
      text: this.#author,
      label: 'The brief',
      run: () => this.#run(),
      changed: () => {
        this.#stale(true);
        this.#save('brief', this.#text, 'application/json');
        clearTimeout(this.#timer);
        this.#timer = window.setTimeout(() => this.#run(), PAUSE);
      },
    });
    this.#button('edit').hidden = true;
    this.#button('reset').hidden = false;
    this.#editor.focus();
  }

  #stale(stale: boolean): void {
    for (const part of this.querySelectorAll('[data-part]')) part.classList.toggle('stale', stale);
  }

  #run(): void {
    clearTimeout(this.#timer);
    this.#stop();
    const text = this.#text;
    const started = performance.now();
    const worker = new Worker(new URL('./job-worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    this.#say('Designing …');
    this.#limit = window.setTimeout(() => this.#failed([], `Stopped after ${LIMIT / 1000} s.`), LIMIT);
    worker.onerror = ({ message }) => this.#failed([], message ?? 'The job could not be started.');
    worker.onmessage = ({ data }: MessageEvent<JobTold>) => {
      if (data.type === 'ready') {
        worker.postMessage(text);
        return;
      }
      if (data.type === 'faults') {
        const { length } = data.places;
        this.#failed(
          data.places,
          `${length === 1 ? 'One thing' : `${length} things`} in the brief cannot be read; below stands the answer to the brief before.`,
        );
        return;
      }
      this.#stop();
      this.#part('[data-part=answer]').innerHTML = data.answer;
      this.#part('[data-part=rest]').innerHTML = data.rest;
      this.#stale(false);
      this.#faults([]);
      this.#save('report', data.report, 'text/plain');
      this.#save('curves', data.csv, 'text/csv');
      this.#say(`${data.said.split('. ')[0]}. Designed in ${((performance.now() - started) / 1000).toFixed(1)} s.`);
    };
  }

  #stop(): void {
    clearTimeout(this.#limit);
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #failed(places: readonly Place[], words: string): void {
    this.#stop();
    this.#stale(true);
    this.#faults(places);
    this.#say(words);
  }

  #faults(places: readonly Place[]): void {
    this.#editor?.setFaults(places);
    const list = this.#part('[data-faults]');
    list.hidden = places.length === 0;
    list.replaceChildren(
      ...places.map((place) => {
        const item = document.createElement('li');
        item.textContent = placeText(place);
        return item;
      }),
    );
  }

  #save(what: string, text: string, type: string): void {
    const link = this.#part(`[data-save=${what}]`) as HTMLAnchorElement;
    if (link.href.startsWith('blob:')) URL.revokeObjectURL(link.href);
    link.href = URL.createObjectURL(new Blob([text], { type }));
  }
}

customElements.define('brief-desk', BriefDesk);
