import { fileName } from '../brief-text.js';
import { clock } from '../music/clock.js';
import type { Heard } from '../music/heard.js';
import { MusicAccount } from './music-account.js';
import { MusicChoices } from './music-choices.js';
import { MusicJob } from './music-job.js';
import { MusicStage } from './music-stage.js';
import type { MusicTold } from './music-worker.js';
import type { Scrubbed } from './scrub-number.js';

/** Music in two boxes: what is chosen is played in a worker, told at a drive, and heard. */
class OwnMusic extends HTMLElement {
  readonly #choices = new MusicChoices(this);
  readonly #account = new MusicAccount(this);
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
  /** What was asked for last. */
  #asked = this.#choices.now();
  /** What the page shows. */
  #of = this.#asked;
  #begun = 0;
  #pending: Scrubbed | undefined;

  connectedCallback(): void {
    for (const part of this.querySelectorAll<HTMLElement>('[data-scripted]')) part.hidden = false;
    this.#account.begin();
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

  /** Says why nothing was played, and puts the choices back to what was played last. */
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
    else if (told.type === 'heard') void this.#took(told.heard);
    else {
      this.#say('');
      this.#stage.play(told.excerpt);
    }
  }

  async #took(heard: Heard): Promise<void> {
    this.#of = this.#asked;
    this.#stage.duration = heard.duration;
    const waited = this.#pending;
    this.#pending = undefined;
    await this.#account.took(heard, this.#of.name, waited);
    if (this.#job.isBusy) return;
    this.#say(`Played ${clock(heard.duration, 0)} in ${((performance.now() - this.#begun) / 1000).toFixed(1)} s.`);
  }

  #scrubbed(scrubbed: Scrubbed): void {
    if (!this.#account.isEmpty) {
      this.#account.turn(scrubbed);
      return;
    }
    // Nothing was played yet: the worker plays what is chosen, and the number waits for it.
    this.#pending = scrubbed;
    if (!this.#job.isBusy) this.#play();
  }

  #save(): void {
    const { csv } = this.#account;
    if (csv === undefined) return;
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([csv], { type: 'text/csv' }));
    link.download = fileName(this.#of?.name ?? '', '-timeline.csv');
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }
}

customElements.define('own-music', OwnMusic);
