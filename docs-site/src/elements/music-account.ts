import type { widths } from '../example/figure-markup.js';
import { timelineCsv } from '../music/csv.js';
import type { Heard } from '../music/heard.js';
import { musicTold } from '../music/told.js';
import { capital, soundSentence } from '../music/words.js';
import './scrub-number.js';
import type { Scrubbed, ScrubNumber } from './scrub-number.js';

/** After the last change, before tables and the other picture follow, ms. */
const REST = 400;
/** As in the style sheet: which of the two pictures is seen. */
const telephone = matchMedia('(max-width: 700px)');
const seen = () => (telephone.matches ? 'narrow' : 'wide');
const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** What the page tells of music that was heard, at a drive: the simulation is linear, so the drive only scales it. */
export class MusicAccount {
  readonly #page: HTMLElement;
  #heard: Heard | undefined;
  #drive = 0;
  /** Of the amplifier of box A. */
  #voltage = 0;
  /** Of the loudest slice of box A, dB. */
  #levelAtVolt = Number.NaN;
  #asking = 0;
  #timer = 0;

  constructor(page: HTMLElement) {
    this.#page = page;
  }

  /** Reads the drive that stands on the page. */
  begin(): void {
    this.#drive = this.#voltage = Number(this.#scrub('drive').getAttribute('value'));
  }

  get isEmpty(): boolean {
    return this.#heard === undefined;
  }

  /** Takes the result of a piece of this name, and settles when the page shows it. The number that the hand moves may have waited for it. */
  async took(heard: Heard, name: string, waited: Scrubbed | undefined): Promise<void> {
    clearTimeout(this.#timer);
    this.#heard = heard;
    // A box with another amplifier is given what that amplifier gives.
    const { voltage } = heard.boxes[0] as Heard['boxes'][number];
    if (voltage !== this.#voltage) this.#drive = this.#voltage = voltage;
    const told = musicTold(heard, this.#drive);
    this.#levelAtVolt = (told.accounts[0]?.level ?? Number.NaN) - 20 * Math.log10(this.#drive);
    this.#put('piece', capital(name));
    this.#put('a', heard.boxes[0]?.called ?? '');
    this.#put('sound', soundSentence(heard, capital(name)));
    this.#part('[data-csv]').hidden = false;
    const drive = this.#drive;
    if (waited) this.turn(waited);
    // Each in a task of its own, since the lines of a long piece are long.
    for (const part of [() => this.#tell(told), () => this.#draw(seen(), told.picture), () => this.#rest()]) {
      await nextTask();
      // Another piece came, or the hand turned the drive, which has all of this done anew.
      if (this.#heard !== heard || this.#drive !== drive) return;
      part();
    }
  }

  /** The hand turns the drive, or the level that follows from it. */
  turn({ name, value }: Scrubbed): void {
    if (name === 'drive') this.#drive = value;
    else if (Number.isFinite(this.#levelAtVolt)) this.#drive = 10 ** ((value - this.#levelAtVolt) / 20);
    if (this.#asking === 0) this.#asking = requestAnimationFrame(() => this.#show(name));
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#rest(), REST);
  }

  /** The timeline as a table of numbers; `undefined` where nothing was heard. */
  get csv(): string | undefined {
    return this.#heard && timelineCsv(this.#heard, musicTold(this.#heard, this.#drive).accounts, this.#drive);
  }

  #part<E extends HTMLElement = HTMLElement>(selector: string): E {
    return this.#page.querySelector(selector) as E;
  }
  #put(name: string, text: string): void {
    const part = this.#part(`[data-told=${name}]`);
    if (part.textContent !== text) part.textContent = text;
  }
  #scrub(name: string): ScrubNumber {
    return this.#part<ScrubNumber>(`scrub-number[name=${name}]`);
  }

  /** The picture in a task of its own; what the hand turned meanwhile comes next. */
  #show(moved: string): void {
    const [heard, drive] = [this.#heard, this.#drive];
    this.#asking = 0;
    if (!heard) return;
    const told = musicTold(heard, drive);
    this.#tell(told, moved);
    this.#asking = window.setTimeout(() => {
      this.#draw(seen(), told.picture);
      const isLast = this.#heard === heard && this.#drive === drive;
      this.#asking = isLast ? 0 : requestAnimationFrame(() => this.#show(moved));
    });
  }

  /** Texts and numbers; the number that the hand is on stays as it is. */
  #tell(told: ReturnType<typeof musicTold>, moved?: string): void {
    this.#part('[data-loud]').hidden = told.silent;
    this.#put('first', told.first);
    this.#put('second', told.second);
    this.#put('label', told.label);
    if (moved !== 'drive') this.#scrub('drive').follow(this.#drive);
    const level = told.accounts[0]?.level ?? 0;
    if (moved !== 'level' && Number.isFinite(level)) this.#scrub('level').follow(level);
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
    const fill = (name: string, markup: string) => {
      this.#part(`[data-told=${name}]`).innerHTML = markup;
    };
    const work = [
      () => fill('limits', limits()),
      () => fill('notes', notes()),
      () => this.#draw(telephone.matches ? 'wide' : 'narrow', picture),
    ];
    const next = () => {
      work.shift()?.();
      if (work.length > 0) this.#timer = window.setTimeout(next);
    };
    next();
  }
}
