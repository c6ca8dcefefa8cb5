import type { Criteria } from '../search/points.js';

const NAMED: readonly (readonly [number, string])[] = [
  [1 / 4, 'a quarter of'],
  [1 / 3, 'a third of'],
  [1 / 2, 'half'],
  [2 / 3, 'two thirds of'],
  [2, 'twice'],
];

/** How the work on the parts of a box, such as vents, a capacitor or the boards of a line, compares with that of another box. */
function effortWords(mine: number, other: number): string | undefined {
  if (mine === other) return undefined;
  if (mine === 0) return 'no parts to make';
  if (other === 0) return 'parts to make';
  const ratio = mine / other;
  if (Math.abs(ratio - 1) < 0.03) return undefined;
  const named = NAMED.find(([value]) => Math.abs(Math.log(ratio / value)) < 0.04);
  if (named !== undefined) return `${named[1]} the work on its parts`;
  return `${Math.abs((ratio - 1) * 100).toFixed(0)} % ${ratio < 1 ? 'less' : 'more'} work on its parts`;
}

/** How far two numbers are apart as they are printed beside this, with one decimal. */
const apart = (mine: number, other: number): number => Number(mine.toFixed(1)) - Number(other.toFixed(1));

/** What a design gains and loses against another. Each word follows from its number and changes with its sign. */
export function comparison(mine: Criteria, other: Criteria): string[] {
  const words: string[] = [];
  const hertz = apart(mine.depth, other.depth);
  if (Math.abs(hertz) > 0.05) words.push(`${Math.abs(hertz).toFixed(1)} Hz ${hertz < 0 ? 'deeper' : 'less deep'}`);
  const level = apart(mine.level, other.level);
  if (Math.abs(level) > 0.05) words.push(`${Math.abs(level).toFixed(1)} dB ${level > 0 ? 'louder' : 'less loud'}`);
  const volume = mine.volume / other.volume - 1;
  if (Math.abs(volume) >= 0.01)
    words.push(`${Math.abs(volume * 100).toFixed(0)} % ${volume < 0 ? 'smaller' : 'larger'}`);
  const effort = effortWords(mine.effort, other.effort);
  if (effort !== undefined) words.push(effort);
  return words;
}
