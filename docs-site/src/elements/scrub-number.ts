import { type Kind, read } from '@airspring/core/quantity';
import { type Input, textOf } from '../example/input.js';

/** Pixels of a drag for one step. */
const PIXELS = 5;
const PAGE = 10;

/** What the number tells the page, on `input` while it moves and on `change` when it rests. SI units. */
export interface Scrubbed {
  readonly name: string;
  readonly value: number;
}

/**
 * A number in the text that can be dragged, stepped by keys, or typed with its unit.
 * Without this script it is the author's number.
 */
export class ScrubNumber extends HTMLElement {
  #value = 0;
  #moving = false;
  /** The value when the reader came to it: the first Escape goes back there, the next to the author's. */
  #came = 0;

  connectedCallback(): void {
    this.#value = this.#author;
    this.role = 'spinbutton';
    this.tabIndex = 0;
    this.ariaLabel = this.getAttribute('label');
    this.ariaValueMin = this.getAttribute('least');
    this.ariaValueMax = this.getAttribute('greatest');
    this.dataset.tip = `${this.#text(this.#number('least'))} to ${this.#text(this.#number('greatest'))}; here ${this.#text(this.#author)}, ${this.getAttribute('from')}. Drag, arrow keys, or Enter to type; Escape goes back, and once more to the author’s number.`;
    this.setAttribute('aria-description', this.dataset.tip);
    this.#show();
    this.#came = this.#value;
    this.addEventListener('focus', () => {
      this.#came = this.#value;
    });
    this.addEventListener('keydown', (event) => this.#key(event));
    this.addEventListener('pointerdown', (event) => this.#drag(event));
    this.addEventListener('dblclick', () => this.#type());
  }

  #number(attribute: string): number {
    return Number(this.getAttribute(attribute));
  }
  get #author(): number {
    return this.#number('value');
  }
  get #kind(): Kind {
    return this.getAttribute('kind') as Kind;
  }
  get #unit(): string {
    return this.getAttribute('unit') as string;
  }
  #si(value: number): number {
    return read(this.#kind, `${value} ${this.#unit}`, 'value', 'any');
  }
  #text(value: number): string {
    return textOf({ kind: this.#kind, value: `0 ${this.#unit}` } as Input, this.#si(value));
  }

  /** Some steps away from a value; factors where the number steps by ratio. */
  #stepped(from: number, steps: number): number {
    if (this.hasAttribute('factor')) return from * this.#number('factor') ** steps;
    const step = this.#number('step');
    return Math.round(from / step + steps) * step;
  }

  #show(): void {
    const text = this.#text(this.#value);
    this.textContent = text;
    this.ariaValueNow = String(this.#value);
    this.ariaValueText = text;
    this.toggleAttribute('changed', this.#value !== this.#author);
  }

  /** Takes a value that follows from another number of the page, in SI units; tells nobody. */
  follow(value: number): void {
    this.#value = Number((value / this.#si(1)).toPrecision(9));
    this.#show();
  }

  #change(to: number): void {
    const held = Math.min(this.#number('greatest'), Math.max(this.#number('least'), to));
    const value = Number(held.toPrecision(9));
    if (value === this.#value) return;
    this.#value = value;
    this.#show();
    this.#tell('input');
  }

  #tell(type: 'input' | 'change'): void {
    const detail: Scrubbed = { name: this.getAttribute('name') as string, value: this.#si(this.#value) };
    this.dispatchEvent(new CustomEvent(`scrub-${type}`, { bubbles: true, detail }));
  }

  #key(event: KeyboardEvent): void {
    if (event.key === 'Enter') {
      event.preventDefault();
      this.#type();
      return;
    }
    const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: PAGE, PageDown: -PAGE }[event.key];
    const to = {
      Home: this.#number('least'),
      End: this.#number('greatest'),
      Escape: this.#value === this.#came ? this.#author : this.#came,
    }[event.key];
    if (by === undefined && to === undefined) return;
    event.preventDefault();
    this.#change(to ?? this.#stepped(this.#value, by ?? 0));
    this.#tell('change');
  }

  #drag(down: PointerEvent): void {
    if (down.button !== 0) return;
    const from = this.#value;
    this.setPointerCapture(down.pointerId);
    const move = (event: PointerEvent) => {
      const steps = Math.round((event.clientX - down.clientX) / PIXELS);
      this.#moving ||= steps !== 0;
      if (this.#moving) this.#change(this.#stepped(from, steps));
    };
    const up = () => {
      this.removeEventListener('pointermove', move);
      if (this.#moving) this.#tell('change');
      this.#moving = false;
    };
    this.addEventListener('pointermove', move);
    this.addEventListener('lostpointercapture', up, { once: true });
  }

  /** A field in place of the number; the library's own parser reads it. */
  #type(): void {
    const field = document.createElement('input');
    const fault = document.createElement('span');
    field.value = this.#text(this.#value).replace('\u00a0', ' ').replace('−', '-');
    field.size = Math.max(8, field.value.length + 2);
    field.className = 'scrub-field';
    field.ariaLabel = `${this.getAttribute('label')}, with its unit`;
    fault.className = 'scrub-fault';
    fault.role = 'alert';
    this.hidden = true;
    this.after(field, fault);
    field.focus();
    field.select();
    let open = true;
    const close = (back: boolean) => {
      if (!open) return; // a field that is removed loses the focus on its way out
      open = false;
      field.remove();
      fault.remove();
      this.hidden = false;
      if (back) this.focus();
    };
    /** Takes what was typed; what cannot be taken stays, with its reason, until the reader mends it or gives it up by Escape. */
    const take = (back: boolean) => {
      const typed = field.value.trim();
      try {
        const text = /^[-+\d.e]+$/i.test(typed) ? `${typed} ${this.#unit}` : typed;
        const value = read(this.#kind, text, this.getAttribute('label') as string);
        // To nine digits, as all values are held: '140 mm' read from a text may lie a rounding outside.
        const number = Number((value / this.#si(1)).toPrecision(9));
        const [least, greatest] = [this.#number('least'), this.#number('greatest')];
        if (number < least || number > greatest)
          throw new Error(
            `${typed} is outside what this page computes: ${this.#text(least)} to ${this.#text(greatest)}.`,
          );
        close(back);
        this.#change(number);
        this.#tell('change');
      } catch (error) {
        fault.textContent = ` ${(error as Error).message}`;
        field.ariaInvalid = 'true';
      }
    };
    const first = field.value;
    field.addEventListener('keydown', (event) => {
      event.stopPropagation();
      if (event.key === 'Escape') close(true);
      if (event.key !== 'Enter') return;
      event.preventDefault();
      take(true);
    });
    field.addEventListener('blur', () => {
      if (open && field.value === first) close(false);
      else if (open) take(false);
    });
  }
}

customElements.define('scrub-number', ScrubNumber);
