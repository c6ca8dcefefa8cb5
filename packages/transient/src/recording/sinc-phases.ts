import { kaiserWindow } from '../signal/kaiser-window.js';

/** Samples of the lower rate on each side. With this and the shape of the window, 98 dB are reached between 0.45 and 0.55. */
export const REACH = 32;
const SHAPE = 10.06;
/** Terms of all phases together at most: 2 MB. */
const mostTerms = 2 ** 18;
/** Phases from which others are drawn straight lines, for each sample of the lower rate. */
const PHASES = 1024;

/** Phases between two samples, and how many of them one output is after the other: whole, where the ratio is a fraction of small numbers. */
export function phaseGrid(from: number, to: number, terms: number, slowing: number) {
  if (Number.isInteger(from) && Number.isInteger(to)) {
    const divisor = greatestDivisor(from, to);
    if ((to / divisor) * terms <= mostTerms) return { phases: to / divisor, step: from / divisor };
  }
  const phases = Math.ceil(PHASES / slowing);
  return { phases, step: (phases * from) / to };
}

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** For each phase and for the first of the next sample, the weights of `half` samples on both sides. */
export function phaseWeights(phases: number, half: number, slowing: number): readonly Float64Array[] {
  const window = kaiserWindow(SHAPE);
  const response = (t: number) => {
    const x = (Math.PI * t) / slowing;
    return ((x === 0 ? 1 : Math.sin(x) / x) * window(t / (REACH * slowing))) / slowing;
  };
  return Array.from({ length: phases + 1 }, (_, phase) =>
    Float64Array.from({ length: 2 * half }, (_, i) => response(phase / phases + half - 1 - i)),
  );
}
