import { colourOf } from '../../../packages/airspring/src/page/limit-colours.js';
import { between } from './third-octaves.js';

/** Stretches of one binding limit over a whole curve; they meet, so that the line has no gaps. */
function bindingStretches(frequencies: ArrayLike<number>, binding: readonly string[]) {
  const found: { from: number; to: number; binding: string }[] = [];
  binding.forEach((name, i) => {
    const f = frequencies[i]!;
    const last = found.at(-1);
    if (last) last.to = f;
    if (last?.binding !== name) found.push({ from: f, to: f, binding: name });
  });
  return found;
}

/** Those stretches in their colours. */
export const inColours = (frequencies: ArrayLike<number>, binding: readonly string[]) =>
  bindingStretches(frequencies, binding).map(({ from, to, binding: what }) => ({ from, to, colour: colourOf(what) }));

/** The word of each stretch that has room for it, at its middle on the curve. */
export function bindingWords(frequencies: readonly number[], values: readonly number[], binding: readonly string[]) {
  return bindingStretches(frequencies, binding).flatMap(({ from, to, binding: text }) => {
    const f = Math.sqrt(from * to);
    const y = between(frequencies, values, f);
    return to / from < 1.25 || y === undefined ? [] : [{ f, y, text, colour: colourOf(text) }];
  });
}
