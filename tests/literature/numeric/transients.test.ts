/** Transients and ringing of textbooks: exponentials and roots of their equations. */
import { bracketedRoot, matrixExponential, polynomialRoots } from '@airspring/core/numeric';
import { printedChecks } from '../printed.js';
import print from './printed-transients.json' with { type: 'json' };

const read = printedChecks('numeric', print);
for (const name of [
  'transient charge',
  'transient current',
  'transient micro',
  'transient voltage',
  'time constant',
] as const) {
  read('matrixExponential', name, ({ rate, time, from, end }) => {
    // A second state that nothing drives makes a matrix of it.
    const [decay = Number.NaN] = matrixExponential(2, Float64Array.of(rate, 0, 1, 0), time);
    return end + from * decay;
  });
}

/** When what decays is left of it. */
function timeUntil({ rate, from, until }: { rate: number; from: number; until: number }): number {
  const left = (time: number) => from * matrixExponential(1, Float64Array.of(rate), time)[0]! - until;
  const found = bracketedRoot(left, 0, -10 / rate);
  return found.ok ? found.x : Number.NaN;
}
read('matrixExponential', 'transient time', (of) => 1000 * timeUntil(of));
read('matrixExponential', 'transient time of a coil', timeUntil);
read('matrixExponential', 'transient time of a current', timeUntil);

/** From 10 % to 90 % of the step of 1/(s² + 2ζs + 1), which is at rest before. */
read('matrixExponential', 'rise time', ({ damping }) => {
  // The third state holds the step.
  const system = Float64Array.of(0, 1, 0, -1, -2 * damping, 1, 0, 0, 0);
  const peak = Math.PI / Math.sqrt(1 - damping ** 2);
  const reaches = (share: number) => {
    const found = bracketedRoot((time) => matrixExponential(3, system, time)[2]! - share, 0, peak);
    return found.ok ? found.x : Number.NaN;
  };
  return reaches(0.9) - reaches(0.1);
});

/** The root of m s² + r s + k above the real axis. */
function ringing({ m, r, k }: { m: number; r: number; k: number }) {
  const { re, im } = polynomialRoots([k, r, m]);
  const at = im.findIndex((y) => y > 0);
  return { decay: re[at]!, omega: im[at]! };
}
read('polynomialRoots', 'period', (of) => (2 * Math.PI) / ringing(of).omega);
read('polynomialRoots', 'half time', (of) => Math.LN2 / -ringing(of).decay);
read('polynomialRoots', 'decay', (of) => ringing(of).decay);
read('polynomialRoots', 'ringing', (of) => ringing(of).omega);
read('polynomialRoots', 'free frequency', (of) => ringing(of).omega / (2 * Math.PI));
