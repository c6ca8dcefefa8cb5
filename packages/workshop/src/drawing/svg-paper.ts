import type { LengthUnit } from '../words/told.js';

/** Heights of letters, mm. */
export const letters = { title: 4.4, large: 3.6, normal: 3, small: 2.6, tiny: 1.9 } as const;
/** Mean width of a letter over its height in the widest of the usual fonts; titles are bold. */
const [LETTER, BOLD] = [0.6, 0.6];

export const n = (value: number): string => String(Number(value.toFixed(2)));

export const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (one) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[one] as string);

/** Paper: mm to the right and down. What is put on it widens its bounds. */
export interface Paper {
  readonly scale: number;
  readonly unit: LengthUnit;
  readonly x: (metres: number) => number;
  readonly y: (metres: number) => number;
  readonly put: (markup: string, ...corners: readonly (readonly [number, number])[]) => void;
  /** Rectangles in which words stand that others keep away from. */
  readonly taken: { readonly middle: readonly [number, number]; readonly half: readonly [number, number] }[];
}

export const textSize = (text: string, size: keyof typeof letters): number =>
  text.length * letters[size] * (size === 'title' ? BOLD : LETTER);

/** A text whose middle, start or end is at a place; upright texts are read from the right. */
export function put(
  paper: Paper,
  text: string,
  [x, y]: readonly [number, number],
  size: keyof typeof letters,
  anchor: 'start' | 'middle' | 'end',
  upright = false,
  clear = false,
): void {
  const height = letters[size];
  const long = textSize(text, size);
  const from = anchor === 'start' ? 0 : anchor === 'middle' ? -long / 2 : -long;
  const turn = upright ? ` transform="rotate(-90 ${n(x)} ${n(y)})"` : '';
  const halo = clear ? ' paint-order="stroke" stroke="var(--paper, Canvas)" stroke-width="0.9"' : ' stroke="none"';
  const bold = size === 'title' ? ' font-weight="600"' : '';
  const corners: (readonly [number, number])[] = upright
    ? [
        [x - height / 2, y - from],
        [x + height / 2, y - from - long],
      ]
    : [
        [x + from, y - height / 2],
        [x + from + long, y + height / 2],
      ];
  paper.put(
    `<text fill="currentColor" x="${n(x)}" y="${n(y + height * 0.35)}" font-size="${height}" text-anchor="${anchor}"${turn}${bold}${halo}>${escaped(text)}</text>`,
    ...corners,
  );
}

/** A text in lines that are no wider than the paper, mm, unless a single word is wider. No-break spaces break no line. */
export function linesOf(text: string, size: keyof typeof letters, room: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && textSize(longer, size) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
