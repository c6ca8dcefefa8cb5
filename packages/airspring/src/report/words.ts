import type { Criteria } from '../search/wishes.js';

/** A ratio below one as people say it, with 'as …'. */
function part(ratio: number): string {
  const named: readonly (readonly [number, string])[] = [
    [1 / 4, 'a quarter as'],
    [1 / 3, 'a third as'],
    [1 / 2, 'half as'],
    [2 / 3, 'two thirds as'],
  ];
  const near = named.find(([value]) => Math.abs(Math.log(ratio / value)) < 0.04);
  return near === undefined ? '' : near[1];
}

/** How one vent's length compares with another's. */
function ventWords(mine: number, other: number): string | undefined {
  if (mine === 0 && other === 0) return undefined;
  if (mine === 0) return 'no vent to print';
  if (other === 0) return 'a vent to print';
  const ratio = mine / other;
  if (Math.abs(ratio - 1) < 0.03) return undefined;
  const inverse = part(1 / ratio);
  if (ratio < 1)
    return part(ratio) ? `a vent ${part(ratio)} long` : `a vent ${((1 - ratio) * 100).toFixed(0)} % shorter`;
  if (inverse === 'half as') return 'a vent twice as long';
  return `a vent ${((ratio - 1) * 100).toFixed(0)} % longer`;
}

/** What a design gains and loses against another: each word holds by its number, and flips with it. */
export function comparison(mine: Criteria, other: Criteria): string[] {
  const words: string[] = [];
  const hertz = mine.cutoff - other.cutoff;
  if (Math.abs(hertz) >= 0.1)
    words.push(`plays ${hertz < 0 ? 'deeper' : 'less deep'} by ${Math.abs(hertz).toFixed(1)} Hz`);
  const level = mine.level - other.level;
  if (Math.abs(level) >= 0.1) words.push(`${level > 0 ? 'louder' : 'less loud'} by ${Math.abs(level).toFixed(1)} dB`);
  const volume = mine.volume / other.volume - 1;
  if (Math.abs(volume) >= 0.01)
    words.push(`${volume < 0 ? 'smaller' : 'larger'} by ${Math.abs(volume * 100).toFixed(0)} %`);
  const vent = ventWords(mine.ventLength, other.ventLength);
  if (vent !== undefined) words.push(vent);
  return words;
}
