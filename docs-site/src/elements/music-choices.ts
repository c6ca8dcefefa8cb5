import { titleOf } from '../brief-text.js';
import { keptText, type Opened, opened } from './kept-brief.js';
import type { Box, Sound } from './music-worker.js';

/** Pages on which a reader may have left a brief. */
const DESKS = ['quiet-vent', 'it-chuffs', 'no-sheet'].map((page) => `/worked-examples/${page}/`);
const recordings = /\.(wav|wave|flac|mp3|ogg|oga)$/i;
const NAMES = ['sound', 'a', 'b'] as const;
type Name = (typeof NAMES)[number];

/** What is chosen on the page: what is played, its name in a sentence, and the boxes. */
export interface Chosen {
  readonly sound: Sound;
  readonly name: string;
  readonly boxes: readonly Box[];
  readonly ids: Readonly<Record<Name, string>>;
}

/** The choices of music and boxes, to which files and briefs of the reader are added. */
export class MusicChoices {
  readonly #page: HTMLElement;
  readonly #briefs = new Map<string, Box>();
  #file: File | undefined;

  constructor(page: HTMLElement) {
    this.#page = page;
    for (const desk of DESKS) {
      const text = keptText(desk);
      if (text !== undefined) this.#offerBrief(text, `brief of ${desk}`);
    }
  }

  #choice(name: Name): HTMLSelectElement {
    return this.#page.querySelector(`[data-choice=${name}]`) as HTMLSelectElement;
  }

  #offer(name: Name, id: string, words: string): void {
    const known = [...this.#choice(name).options].find(({ value }) => value === id);
    const option = known ?? new Option('', id);
    option.textContent = words;
    if (!known) this.#choice(name).append(option);
  }

  #offerBrief(text: string, id: string): void {
    const title = titleOf(text) || 'without a title';
    this.#briefs.set(id, { title, brief: text });
    for (const name of ['a', 'b'] as const) this.#offer(name, id, `your brief “${title}”`);
  }

  /** Takes a file: a brief becomes box A, all else is music. */
  async open(file: File): Promise<Opened | undefined> {
    if (/\.json$/i.test(file.name) || (file.type === 'application/json' && !recordings.test(file.name))) {
      const brief = await opened(file);
      if (!brief.ok) return brief;
      this.#offerBrief(brief.text, 'brief of a file');
      this.#choice('a').value = 'brief of a file';
    } else {
      this.#file = file;
      this.#offer('sound', 'file', file.name);
      this.#choice('sound').value = 'file';
    }
    return undefined;
  }

  now(): Chosen {
    const { value, selectedOptions } = this.#choice('sound');
    const file = value === 'file' ? this.#file : undefined;
    const ids = { sound: value, a: this.#choice('a').value, b: this.#choice('b').value };
    return {
      sound: file ? { file } : { piece: value },
      name: file ? `“${file.name}”` : (selectedOptions[0]?.textContent ?? ''),
      boxes: [ids.a, ids.b].map((id): Box => this.#briefs.get(id) ?? { id }),
      ids,
    };
  }

  /** Goes back to what was chosen before. */
  restore({ sound, ids }: Chosen): void {
    if ('file' in sound) {
      this.#file = sound.file;
      this.#offer('sound', 'file', sound.file.name);
    }
    for (const name of NAMES) this.#choice(name).value = ids[name];
  }
}
