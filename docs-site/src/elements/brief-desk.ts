import { partAt } from '../brief-changes.js';
import { fileName, titleOf } from '../brief-text.js';
import { type FileName, files, type SavedFile, type Told } from '../job/told.js';
import { pair } from '../json-listing.js';
import { BoxFiles } from './box-files.js';
import type { Editor } from './editor.js';
import { anchorHeadings } from './heading-anchors.js';
import type { JobTold } from './job-worker.js';
import { keep, keptText, type Opened, opened, packed, unpacked } from './kept-brief.js';
import { putMarked } from './mark-changes.js';
import { listPlaces, type Place } from './place.js';

/** Pause after the last key before the brief is read, ms. */
const PAUSE = 400;
/** The longest time for an answer, ms. A brief that cannot be met runs the job several times. */
const LIMIT = 60_000;

/** A brief as text, and the whole job of it in a worker. The last good answer stays, dimmed, while it is not the one of the text. */
class BriefDesk extends HTMLElement {
  #editor: Editor | undefined;
  #worker: Worker | undefined;
  /** What the worker is asked for; it begins when it is ready. */
  #asked: { readonly text: string; readonly at: number } | undefined;
  #ready = false;
  #timer = 0;
  #limit = 0;
  #author = '';
  /** The brief whose answer is on the page. */
  #answered = '';
  #nearest = '';
  readonly #boxFiles = new BoxFiles((words, link) => {
    this.querySelector('[data-building]')?.replaceChildren(words, ...(link ? [link, '.'] : []));
  });

  connectedCallback(): void {
    this.#author = this.#answered = this.querySelector('[data-code] code')?.textContent ?? '';
    this.#scripted();
    const does: Readonly<Record<string, (word: HTMLElement) => unknown>> = {
      edit: () => this.#edit(this.#author).then((editor) => editor.focus()),
      run: () => this.#run(),
      reset: () => this.#editor?.setText(this.#author),
      open: () => this.#part<HTMLInputElement>('[data-open]').click(),
      link: () => this.#link(),
      nearest: () => this.#take({ ok: true, text: this.#nearest }),
      build: ({ dataset: { only } }) => this.#boxFiles.make({ text: this.#answered, only: only ?? '' }),
      print: () => window.print(),
    };
    this.addEventListener('click', ({ target }) => {
      const word = (target as Element).closest<HTMLElement>('[data-do]');
      if (word) does[word.dataset.do ?? '']?.(word);
    });
    this.#part('[data-open]').addEventListener('change', (event) => {
      const field = event.target as HTMLInputElement;
      void this.#open(field.files?.[0]);
      field.value = '';
    });
    const desk = this.#part('.desk');
    desk.addEventListener('dragover', (event) => event.preventDefault());
    desk.addEventListener(
      'drop',
      (event) => {
        const file = event.dataTransfer?.files[0];
        if (!file) return;
        event.preventDefault();
        event.stopPropagation();
        void this.#open(file);
      },
      true,
    );
    addEventListener('hashchange', () => void this.#restore());
    void this.#restore();
  }

  #part<E extends HTMLElement = HTMLElement>(selector: string): E {
    return this.querySelector(selector) as E;
  }
  #scripted(): void {
    for (const part of this.querySelectorAll<HTMLElement>('[data-scripted]')) part.hidden = false;
  }
  get #text(): string {
    return this.#editor?.text() ?? this.#author;
  }
  #say(words: string): void {
    this.#part('.verdict').hidden = false;
    this.#part('.status').textContent = words;
  }

  /** The brief of the address, or the one that was left here. */
  async #restore(): Promise<void> {
    const linked = await unpacked(location.hash);
    if (linked) return this.#take(linked);
    const kept = keptText();
    if (kept !== undefined && kept !== this.#text) await this.#take({ ok: true, text: kept });
  }

  async #open(file: File | undefined): Promise<void> {
    if (file) await this.#take(await opened(file));
  }

  async #take(brief: Opened): Promise<void> {
    if (!brief.ok) {
      this.#say(brief.because);
      return;
    }
    const editor = this.#editor ?? (await this.#edit(brief.text));
    editor.setText(brief.text);
    this.#changed();
    this.#run();
  }

  async #edit(text: string): Promise<Editor> {
    const { editor } = await import('./editor.js');
    const holder = this.#part('[data-code]');
    holder.replaceChildren();
    const made = editor(holder, {
      text,
      label: 'The brief',
      whole: pair,
      run: () => this.#run(),
      caret: (offset) => this.#light(partAt(this.#text, offset)),
      changed: () => {
        this.#changed();
        this.#timer = window.setTimeout(() => this.#run(), PAUSE);
      },
    });
    this.#editor = made;
    this.#part('[data-do=edit]').hidden = true;
    this.#part('[data-do=reset]').hidden = false;
    for (const part of ['.verdict', '[data-drawing]']) this.#part(part).hidden = false;
    this.#part('.bench').classList.add('wide-bench');
    this.#draw();
    this.#begin();
    return made;
  }

  #changed(): void {
    clearTimeout(this.#timer);
    const text = this.#text;
    this.#stale(true);
    this.#save('brief', { text, type: 'application/json' }, titleOf(text), '.json');
    keep(text === this.#author ? undefined : text);
    if (location.hash.startsWith('#brief=')) history.replaceState(null, '', location.pathname);
  }

  async #link(): Promise<void> {
    history.replaceState(null, '', await packed(this.#text));
    const copied = await navigator.clipboard?.writeText(location.href).then(
      () => true,
      () => false,
    );
    this.#say(
      copied ? 'The link is copied; the address of this page is the same.' : 'The address of this page is the link.',
    );
  }

  /** Puts a drawing beside the brief: its own, or else a copy of that of the answer. */
  #draw(own?: string): void {
    const beside = this.#part('[data-drawing]');
    const drawing = this.querySelector('[data-part=answer] .wide > svg');
    if (own !== undefined) beside.innerHTML = own;
    else if (drawing && beside.dataset.drawing !== 'own') beside.replaceChildren(drawing.cloneNode(true));
  }

  #light(part: string | undefined): void {
    const drawing = this.#part('[data-drawing]');
    if (part) drawing.dataset.lit = part;
    else delete drawing.dataset.lit;
  }

  #stale(stale: boolean): void {
    for (const part of this.querySelectorAll('[data-part], [data-drawing], [data-line]'))
      part.classList.toggle('stale', stale);
    for (const note of this.querySelectorAll<HTMLElement>('[data-stale]')) note.hidden = !stale;
  }

  #begin(): void {
    if (this.#worker) return;
    const worker = new Worker(new URL('./job-worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    worker.onerror = ({ message }) => this.#failed([], message ?? 'The job could not be started.');
    worker.onmessage = ({ data }: MessageEvent<JobTold>) => {
      if (data.type === 'ready') {
        this.#ready = true;
        if (this.#asked) worker.postMessage(this.#asked.text);
      } else if (data.type === 'faults') {
        const { length } = data.places;
        this.#failed(
          data.places,
          `${length === 1 ? 'One thing' : `${length} things`} in the brief cannot be read; the answer below is for the previous version.`,
        );
      } else this.#done(data.told);
    };
  }

  #run(): void {
    clearTimeout(this.#timer);
    // The worker may still be computing the answer to an earlier text.
    if (this.#asked) this.#stop();
    this.#asked = { text: this.#text, at: performance.now() };
    this.#say('Designing …');
    this.#limit = window.setTimeout(() => {
      this.#stop();
      this.#failed([], `Stopped after ${LIMIT / 1000} s.`);
    }, LIMIT);
    this.#begin();
    if (this.#ready) this.#worker?.postMessage(this.#asked.text);
  }

  #stop(): void {
    clearTimeout(this.#limit);
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#ready = false;
    this.#asked = undefined;
  }

  #done(told: Told): void {
    clearTimeout(this.#limit);
    const { text, at } = this.#asked ?? { text: this.#text, at: performance.now() };
    this.#asked = undefined;
    this.#answered = text;
    this.#boxFiles.stop();
    const { answer, rest, sheets } = told.parts;
    putMarked(this.#part('[data-line]'), told.line);
    putMarked(this.#part('[data-part=answer]'), answer);
    putMarked(this.#part('[data-part=rest]'), rest);
    anchorHeadings(this.#part('[data-part=rest]'));
    this.#draw(told.drawing);
    this.#part('[data-part=sheets]').innerHTML = sheets;
    this.#scripted();
    this.#nearest = told.nearest ?? '';
    this.#stale(false);
    this.#faults([]);
    for (const name of Object.keys(files) as FileName[]) {
      const file = told.files[name];
      this.#part(`[data-file=${name}]`).hidden = file === undefined;
      if (file) this.#save(name, file, titleOf(text), files[name].ending);
    }
    this.#say(`Designed in ${((performance.now() - at) / 1000).toFixed(1)} s.`);
  }

  #failed(places: readonly Place[], words: string): void {
    clearTimeout(this.#limit);
    this.#asked = undefined;
    this.#stale(true);
    this.#faults(places);
    this.#say(words);
  }

  #faults(places: readonly Place[]): void {
    this.#editor?.setFaults(places);
    listPlaces(this.#part('[data-faults]'), places);
  }

  #save(what: string, { text, type }: SavedFile, title: string, ending: string): void {
    const link = this.#part<HTMLAnchorElement>(`[data-save=${what}]`);
    if (link.href.startsWith('blob:')) URL.revokeObjectURL(link.href);
    link.href = URL.createObjectURL(new Blob([text], { type }));
    link.download = fileName(title, ending);
  }
}

customElements.define('brief-desk', BriefDesk);
