import { fileName, titleOf } from '../brief-text.js';
import type { widths } from '../example/figure-markup.js';
import { clock } from '../music/clock.js';
import { timelineCsv } from '../music/csv.js';
import type { Heard } from '../music/heard.js';
import { musicTold } from '../music/told.js';
import { capital, soundSentence } from '../music/words.js';
import { keptText, opened } from './kept-brief.js';
import { MusicPlayer } from './music-player.js';
import type { Box, MusicAsked, MusicTold, Sound } from './music-worker.js';
import './scrub-number.js';
import type { Scrubbed, ScrubNumber } from './scrub-number.js';

/** Pages on which a reader may have left a brief of his own. */
const DESKS = ['quiet-vent', 'it-chuffs', 'no-sheet'].map((page) => `/worked-examples/${page}/`);
/** After the last change, before tables and the other picture follow, ms. */
const REST = 400;
/** As in the style sheet: which of the two pictures is seen. */
const telephone = matchMedia('(max-width: 700px)');
/** Seconds of a stretch to hear. */
const STRETCH = 30;

const recordings = /\.(wav|wave|flac|mp3|ogg|oga)$/i;

/** Music in two boxes: it is played in a worker; the drive then only scales what was heard, since the simulation is linear. */
class OwnMusic extends HTMLElement {
  readonly #player = new MusicPlayer();
  readonly #briefs = new Map<string, Box>();
  #worker: Worker | undefined;
  #ready = false;
  #asked: MusicAsked | undefined;
  #begun = 0;
  #file: File | undefined;
  /** What was heard, of which sound in which boxes. */
  #heard: Heard | undefined;
  #of: ReturnType<OwnMusic['chosen']> | undefined;
  #drive = 0;
  /** Of the amplifier of box A. */
  #voltage = 0;
  /** Of the loudest slice of box A, dB. */
  #levelAtVolt = Number.NaN;
  #pending: Scrubbed | undefined;
  #asking = 0;
  #timer = 0;
  /** Which track is heard when an excerpt is there. */
  #track = 0;

  connectedCallback(): void {
    for (const part of this.querySelectorAll<HTMLElement>('[data-scripted]')) part.hidden = false;
    this.#drive = this.#voltage = Number(this.#scrub('drive').getAttribute('value'));
    for (const page of DESKS) this.#offer(keptText(page), `brief of ${page}`);
    this.addEventListener('click', ({ target }) => this.#click(target as Element));
    this.addEventListener('change', ({ target }) => this.#change(target as Element));
    this.addEventListener('input', ({ target }) => {
      if ((target as Element).matches('[data-volume]')) this.#setVolume();
      if ((target as Element).matches('[data-from]')) this.#tellStretch();
    });
    this.addEventListener('scrub-input', (event) => this.#scrubbed((event as CustomEvent<Scrubbed>).detail));
    document.addEventListener('dragover', (event) => {
      event.preventDefault();
      this.classList.add('dropping');
    });
    document.addEventListener('dragleave', ({ relatedTarget }) => {
      if (!relatedTarget) this.classList.remove('dropping');
    });
    document.addEventListener('drop', (event) => {
      this.classList.remove('dropping');
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      event.preventDefault();
      void this.#open(file);
    });
    this.#setVolume();
    this.#of = this.chosen();
    this.dataset.live = '';
  }

  disconnectedCallback(): void {
    this.#player.stop();
    this.#end();
  }

  #part<E extends HTMLElement = HTMLElement>(selector: string): E {
    return this.querySelector(selector) as E;
  }
  #put(name: string, text: string): void {
    const part = this.#part(`[data-told=${name}]`);
    if (part.textContent !== text) part.textContent = text;
  }
  #scrub(name: string): ScrubNumber {
    return this.#part<ScrubNumber>(`scrub-number[name=${name}]`);
  }
  #choice(name: 'sound' | 'a' | 'b'): HTMLSelectElement {
    return this.#part<HTMLSelectElement>(`[data-choice=${name}]`);
  }
  #say(words: string): void {
    this.#part('.status').textContent = words;
  }

  #click(target: Element): void {
    const { do: does, hear } = target.closest<HTMLElement>('[data-do], [data-hear]')?.dataset ?? {};
    if (does === 'choose') this.#part<HTMLInputElement>('[data-open]').click();
    if (does === 'cancel') {
      this.#end();
      this.#restore();
      this.#say('Cancelled: what stands here is what was played before.');
    }
    if (does === 'csv') this.#save();
    if (does === 'silence') this.#player.stop();
    if (hear !== undefined) this.#hear(Number(hear));
  }

  #change(target: Element): void {
    if (target.matches('[data-open]')) {
      const field = target as HTMLInputElement;
      const file = field.files?.[0];
      if (file) void this.#open(file);
      field.value = '';
    } else if (target.matches('[data-choice]')) this.#play();
    else if (target.matches('[data-from]') && this.#player.isPlaying) this.#hear(this.#track, true);
  }

  /** A brief as one more box to choose. */
  #offer(text: string | undefined, id: string): string | undefined {
    if (text === undefined) return undefined;
    const title = titleOf(text) || 'without a title';
    this.#briefs.set(id, { title, brief: text });
    for (const name of ['a', 'b'] as const) {
      const known = [...this.#choice(name).options].find(({ value }) => value === id);
      const option = known ?? new Option('', id);
      option.textContent = `your brief “${title}”`;
      if (!known) this.#choice(name).append(option);
    }
    return id;
  }

  /** A recording or a brief, by its name. */
  async #open(file: File): Promise<void> {
    if (/\.json$/i.test(file.name) || (file.type === 'application/json' && !recordings.test(file.name))) {
      const brief = await opened(file);
      if (!brief.ok) {
        this.#say(brief.because);
        return;
      }
      this.#choice('a').value = this.#offer(brief.text, 'brief of a file') ?? '';
    } else {
      this.#file = file;
      const choice = this.#choice('sound');
      const known = [...choice.options].find(({ value }) => value === 'file');
      const option = known ?? new Option('', 'file');
      option.textContent = file.name;
      if (!known) choice.append(option);
      choice.value = 'file';
    }
    this.#play();
  }

  /** What stands in the choices. */
  private chosen() {
    const { value, selectedOptions } = this.#choice('sound');
    const file = value === 'file' ? this.#file : undefined;
    const sound: Sound = file ? { file } : { piece: value };
    const name = file ? `“${file.name}”` : (selectedOptions[0]?.textContent ?? '');
    const ids = { sound: value, a: this.#choice('a').value, b: this.#choice('b').value };
    const boxes = [ids.a, ids.b].map((id): Box => this.#briefs.get(id) ?? { id });
    return { sound, name, boxes, ids };
  }

  /** Choices go back to what was heard last. */
  #restore(): void {
    if (!this.#of) return;
    const { sound, ids } = this.#of;
    for (const name of ['sound', 'a', 'b'] as const) this.#choice(name).value = ids[name];
    if ('file' in sound) this.#file = sound.file;
  }

  #play(): void {
    this.#player.stop();
    const { sound, boxes } = this.chosen();
    this.#begin({ type: 'play', sound, boxes });
    this.#say('Playing …');
  }

  /** Gives the worker something to do; what it does is given up. */
  #begin(asked: MusicAsked): void {
    if (this.#asked) this.#end();
    this.#asked = asked;
    this.#begun = performance.now();
    this.#busy(true);
    if (!this.#worker) {
      const worker = new Worker(new URL('./music-worker.ts', import.meta.url), { type: 'module' });
      worker.onerror = ({ message }) =>
        this.#failed(`It could not be played: ${message ?? 'the page is not complete'}.`);
      worker.onmessage = ({ data }: MessageEvent<MusicTold>) => this.#hearOf(data);
      this.#worker = worker;
    } else if (this.#ready) this.#worker.postMessage(asked);
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = this.#asked = undefined;
    this.#ready = false;
    this.#busy(false);
  }

  #busy(busy: boolean): void {
    const bar = this.#part<HTMLProgressElement>('progress');
    bar.hidden = !busy;
    if (busy) bar.removeAttribute('value');
    this.#part('[data-do=cancel]').hidden = !busy;
    if (busy) this.setAttribute('aria-busy', 'true');
    else this.removeAttribute('aria-busy');
  }

  #failed(words: string): void {
    this.#asked = undefined;
    this.#busy(false);
    this.#restore();
    this.#say(words);
  }

  #hearOf(told: MusicTold): void {
    if (told.type === 'ready') {
      this.#ready = true;
      if (this.#asked) this.#worker?.postMessage(this.#asked);
    } else if (told.type === 'progress') {
      const { seconds, duration } = told;
      if (duration) this.#part<HTMLProgressElement>('progress').value = Math.min(1, seconds / duration);
      this.#say(`Playing: ${clock(seconds, 0)}${duration ? ` of ${clock(duration, 0)}` : ''} …`);
    } else if (told.type === 'refused') this.#failed(told.because);
    else if (told.type === 'heard') this.#took(told.heard);
    else {
      this.#asked = undefined;
      this.#busy(false);
      this.#say('');
      this.#player.play(told.excerpt, this.#track, () => this.#press(-1));
      this.#press(this.#track);
    }
  }

  #took(heard: Heard): void {
    const chosen = this.chosen();
    const { name } = chosen;
    this.#heard = heard;
    this.#of = chosen;
    // A box with another amplifier is given what that amplifier gives.
    const { voltage } = heard.boxes[0] as Heard['boxes'][number];
    if (voltage !== this.#voltage) this.#drive = this.#voltage = voltage;
    this.#asked = undefined;
    this.#busy(false);
    this.#say(`Played ${clock(heard.duration, 0)} in ${((performance.now() - this.#begun) / 1000).toFixed(1)} s.`);
    this.#levelAtVolt = musicTold(heard, 1).accounts[0]?.level ?? Number.NaN;
    this.#put('piece', capital(name));
    this.#put('a', heard.boxes[0]?.called ?? '');
    this.#put('sound', soundSentence(heard, capital(name)));
    const from = this.#part<HTMLInputElement>('[data-from]');
    from.max = String(Math.max(0, Math.floor(heard.duration - STRETCH)));
    from.value = '0';
    this.#tellStretch();
    this.#part('[data-csv]').hidden = false;
    const pending = this.#pending;
    this.#pending = undefined;
    if (pending) this.#scrubbed(pending);
    this.#show(pending?.name);
    // In a task of its own: a long piece has long lines.
    this.#timer = window.setTimeout(() => this.#rest());
  }

  #scrubbed({ name, value }: Scrubbed): void {
    if (!this.#heard) {
      // Nothing was played yet: the worker plays what stands here, and the number waits.
      this.#pending = { name, value };
      if (!this.#asked) this.#play();
      return;
    }
    if (name === 'drive') this.#drive = value;
    else {
      if (Number.isFinite(this.#levelAtVolt)) this.#drive = 10 ** ((value - this.#levelAtVolt) / 20);
    }
    if (this.#asking === 0) this.#asking = requestAnimationFrame(() => this.#show(name));
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#rest(), REST);
  }

  /** Texts and the picture that is seen; the number that the hand is on stays as it is. */
  #show(moved?: string): void {
    this.#asking = 0;
    const heard = this.#heard;
    if (!heard) return;
    const told = musicTold(heard, this.#drive);
    this.#part('[data-loud]').hidden = told.silent;
    this.#put('first', told.first);
    this.#put('second', told.second);
    this.#put('label', told.label);
    if (moved !== 'drive') this.#scrub('drive').follow(this.#drive);
    const level = told.accounts[0]?.level ?? 0;
    if (moved !== 'level' && Number.isFinite(level)) this.#scrub('level').follow(level);
    this.#draw(telephone.matches ? 'narrow' : 'wide', told.picture);
  }

  #draw(place: keyof typeof widths, picture: ReturnType<typeof musicTold>['picture']): void {
    this.#part(`sweep-figure .${place}`).innerHTML = picture(place);
    this.#part('sweep-figure').dispatchEvent(new Event('redrawn'));
  }

  #rest(): void {
    const heard = this.#heard;
    if (!heard) return;
    const told = musicTold(heard, this.#drive);
    this.#part('[data-told=limits]').innerHTML = told.limits();
    this.#part('[data-told=notes]').innerHTML = told.notes();
    this.#draw(telephone.matches ? 'wide' : 'narrow', told.picture);
  }

  #save(): void {
    const heard = this.#heard;
    if (!heard) return;
    const csv = timelineCsv(heard, musicTold(heard, this.#drive).accounts, this.#drive);
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([csv], { type: 'text/csv' }));
    link.download = fileName(this.#of?.name ?? '', '-timeline.csv');
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }

  /** Source or box; the first time, or from elsewhere, the worker makes the stretch. */
  #hear(track: number, again = false): void {
    this.#track = track;
    if (this.#player.isPlaying && !again) {
      this.#player.hear(track);
      this.#press(track);
      return;
    }
    this.#player.stop();
    const { sound, boxes } = this.#of ?? this.chosen();
    this.#begin({ type: 'listen', sound, boxes, from: Number(this.#part<HTMLInputElement>('[data-from]').value) });
    this.#say('Preparing half a minute to hear …');
  }

  #press(track: number): void {
    for (const button of this.querySelectorAll<HTMLElement>('[data-hear]'))
      button.ariaPressed = String(Number(button.dataset.hear) === track);
    this.#part<HTMLButtonElement>('[data-do=silence]').disabled = track < 0;
  }

  #setVolume(): void {
    const field = this.#part<HTMLInputElement>('[data-volume]');
    field.setAttribute('aria-valuetext', `${field.value.replace('-', '−')} dB`);
    this.#player.level = 10 ** (Number(field.value) / 20);
  }

  #tellStretch(): void {
    const from = Number(this.#part<HTMLInputElement>('[data-from]').value);
    if (this.#heard)
      this.#put('stretch', `${clock(from, 0)} to ${clock(Math.min(this.#heard.duration, from + STRETCH), 0)}`);
  }
}

customElements.define('own-music', OwnMusic);
