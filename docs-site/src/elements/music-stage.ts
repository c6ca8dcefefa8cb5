import { clock } from '../music/clock.js';
import type { Excerpt } from '../music/listening.js';
import { MusicPlayer } from './music-player.js';

/** Seconds of a stretch to hear. */
const STRETCH = 30;

/** The part of the page that is heard: three buttons, a place to begin, and a level. */
export class MusicStage {
  readonly #page: HTMLElement;
  readonly #ask: (from: number) => void;
  readonly #player = new MusicPlayer();
  /** Which track is heard when an excerpt is there. */
  #track = 0;
  #duration = 0;

  /** `ask` has a stretch made, which comes back by `play`. */
  constructor(page: HTMLElement, ask: (from: number) => void) {
    this.#page = page;
    this.#ask = ask;
    page.addEventListener('click', ({ target }) => {
      const { do: does, hear } = (target as Element).closest<HTMLElement>('[data-do], [data-hear]')?.dataset ?? {};
      if (does === 'silence') this.stop();
      if (hear !== undefined) this.#hear(Number(hear));
    });
    page.addEventListener('input', ({ target }) => {
      if (target === this.#volume) this.#setVolume();
      if (target === this.#from) this.#tellStretch();
    });
    page.addEventListener('change', ({ target }) => {
      if (target !== this.#from || !this.#player.isPlaying) return;
      this.stop();
      this.#hear(this.#track);
    });
    this.#setVolume();
  }

  get #volume(): HTMLInputElement {
    return this.#page.querySelector('[data-volume]') as HTMLInputElement;
  }
  get #from(): HTMLInputElement {
    return this.#page.querySelector('[data-from]') as HTMLInputElement;
  }

  play(excerpt: Excerpt): void {
    this.#player.play(excerpt, this.#track, () => this.#press(-1));
    this.#press(this.#track);
  }

  stop(): void {
    this.#player.stop();
  }

  /** Another piece, s. */
  set duration(duration: number) {
    this.#duration = duration;
    this.#from.max = String(Math.max(0, Math.floor(duration - STRETCH)));
    this.#from.value = '0';
    this.#tellStretch();
  }

  #hear(track: number): void {
    this.#track = track;
    if (this.#player.isPlaying) {
      this.#player.hear(track);
      this.#press(track);
    } else this.#ask(Number(this.#from.value));
  }

  #press(track: number): void {
    for (const button of this.#page.querySelectorAll<HTMLElement>('[data-hear]'))
      button.ariaPressed = String(Number(button.dataset.hear) === track);
    (this.#page.querySelector('[data-do=silence]') as HTMLButtonElement).disabled = track < 0;
  }

  #setVolume(): void {
    this.#volume.setAttribute('aria-valuetext', `${this.#volume.value.replace('-', '−')} dB`);
    this.#player.level = 10 ** (Number(this.#volume.value) / 20);
  }

  #tellStretch(): void {
    const from = Number(this.#from.value);
    const words = `${clock(from, 0)} to ${clock(Math.min(this.#duration, from + STRETCH), 0)}`;
    (this.#page.querySelector('[data-told=stretch]') as HTMLElement).textContent = words;
    this.#from.setAttribute('aria-valuetext', words);
  }
}
