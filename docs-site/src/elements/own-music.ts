import { fileName } from '../brief-text.js';
import type { widths } from '../example/figure-markup.js';
import { clock } from '../music/clock.js';
import { timelineCsv } from '../music/csv.js';
import type { Heard } from '../music/heard.js';
import { musicTold } from '../music/told.js';
import { capital, soundSentence } from '../music/words.js';
import { MusicChoices } from './music-choices.js';
import { MusicJob } from './music-job.js';
import { MusicStage } from './music-stage.js';
import type { MusicTold } from './music-worker.js';
import './scrub-number.js';
import type { Scrubbed, ScrubNumber } from './scrub-number.js';

/** After the last change, before tables and the other picture follow, ms. */
const REST = 400;
/** As in the style sheet: which of the two pictures is seen. */
const telephone = matchMedia('(max-width: 700px)');

/** Music in two boxes: it is played in a worker; the drive then only scales what was heard, since the simulation is linear. */
class OwnMusic extends HTMLElement {
  readonly #choices = new MusicChoices(this);
  readonly #job = new MusicJob({
    told: (told) => this.#told(told),
    broke: (because) => this.#broke(because),
    busy: (busy) => this.#busy(busy),
  });
  readonly #stage = new MusicStage(this, (from) => {
    if (this.#job.isBusy) this.#choices.restore(this.#of);
    const { sound, boxes } = this.#of;
    this.#job.begin({ type: 'listen', sound, boxes, from });
    this.#say('Preparing half a minute to hear …');
  });
  /** What was asked for last, and what stands on the page. */
  #asked = this.#choices.now();
  #of = this.#asked;
  #begun = 0;
  #heard: Heard | undefined;
  #drive = 0;
  /** Of the amplifier of box A. */
  #voltage = 0;
  /** Of the loudest slice of box A, dB. */
  #levelAtVolt = Number.NaN;
  #pending: Scrubbed | undefined;
  #asking = 0;
  #timer = 0;

  connectedCallback(): void {
    for (const part of this.querySelectorAll<HTMLElement>('[data-scripted]')) part.hidden = false;
    this.#drive = this.#voltage = Number(this.#scrub('drive').getAttribute('value'));
    this.addEventListener('click', ({ target }) => this.#click(target as Element));
    this.addEventListener('change', ({ target }) => this.#change(target as Element));
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
    this.dataset.live = '';
  }

  disconnectedCallback(): void {
    this.#stage.stop();
    this.#job.end();
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
  #say(words: string): void {
    this.#part('.status').textContent = words;
  }

  #click(target: Element): void {
    const { do: does } = target.closest<HTMLElement>('[data-do]')?.dataset ?? {};
    if (does === 'choose') this.#part<HTMLInputElement>('[data-open]').click();
    if (does === 'cancel') {
      this.#job.end();
      this.#broke('Cancelled: what stands here is what was played before.');
    }
    if (does === 'csv') this.#save();
  }

  #change(target: Element): void {
    if (target.matches('[data-open]')) {
      const field = target as HTMLInputElement;
      const file = field.files?.[0];
      if (file) void this.#open(file);
      field.value = '';
    } else if (target.matches('[data-choice]')) this.#play();
  }

  async #open(file: File): Promise<void> {
    const refused = await this.#choices.open(file);
    if (refused && !refused.ok) this.#say(refused.because);
    else this.#play();
  }

  #play(): void {
    this.#stage.stop();
    this.#asked = this.#choices.now();
    const { sound, boxes } = this.#asked;
    this.#begun = performance.now();
    this.#job.begin({ type: 'play', sound, boxes });
    this.#say('Playing …');
  }

  #busy(busy: boolean): void {
    const bar = this.#part<HTMLProgressElement>('progress');
    bar.hidden = !busy;
    if (busy) bar.removeAttribute('value');
    this.#part('[data-do=cancel]').hidden = !busy;
    this.ariaBusy = String(busy);
  }

  /** Choices go back to what was played last. */
  #broke(because: string): void {
    this.#choices.restore(this.#of);
    this.#say(because);
  }

  #told(told: Exclude<MusicTold, { type: 'ready' }>): void {
    if (told.type === 'progress') {
      const { seconds, duration } = told;
      if (duration) this.#part<HTMLProgressElement>('progress').value = Math.min(1, seconds / duration);
      this.#say(`Playing: ${clock(seconds, 0)}${duration ? ` of ${clock(duration, 0)}` : ''} …`);
    } else if (told.type === 'refused') this.#broke(told.because);
    else if (told.type === 'heard') this.#took(told.heard);
    else {
      this.#say('');
      this.#stage.play(told.excerpt);
    }
  }

  #took(heard: Heard): void {
    this.#heard = heard;
    this.#of = this.#asked;
    const { name } = this.#of;
    // A box with another amplifier is given what that amplifier gives.
    const { voltage } = heard.boxes[0] as Heard['boxes'][number];
    if (voltage !== this.#voltage) this.#drive = this.#voltage = voltage;
    this.#say(`Played ${clock(heard.duration, 0)} in ${((performance.now() - this.#begun) / 1000).toFixed(1)} s.`);
    this.#levelAtVolt = musicTold(heard, 1).accounts[0]?.level ?? Number.NaN;
    this.#put('piece', capital(name));
    this.#put('a', heard.boxes[0]?.called ?? '');
    this.#put('sound', soundSentence(heard, capital(name)));
    this.#stage.duration = heard.duration;
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
      if (!this.#job.isBusy) this.#play();
      return;
    }
    if (name === 'drive') this.#drive = value;
    else if (Number.isFinite(this.#levelAtVolt)) this.#drive = 10 ** ((value - this.#levelAtVolt) / 20);
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

  /** What need not follow the hand: tables, and the picture that is not seen. Each in a task of its own. */
  #rest(): void {
    const heard = this.#heard;
    if (!heard) return;
    const { limits, notes, picture } = musicTold(heard, this.#drive);
    const work = [
      () => this.#fill('limits', limits()),
      () => this.#fill('notes', notes()),
      () => this.#draw(telephone.matches ? 'wide' : 'narrow', picture),
    ];
    const next = () => {
      work.shift()?.();
      if (work.length > 0) this.#timer = window.setTimeout(next);
    };
    next();
  }

  #fill(name: string, markup: string): void {
    this.#part(`[data-told=${name}]`).innerHTML = markup;
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
}

customElements.define('own-music', OwnMusic);
