/** Transients and ringing of textbooks: exponentials and roots of their equations. */
import { matrixExponential, polynomialRoots } from '@airspring/core/numeric';
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

/** The root of m s² + r s + k above the real axis. */
function ringing({ m, r, k }: { m: number; r: number; k: number }) {
  const { re, im } = polynomialRoots([k, r, m]);
  const at = im.findIndex((y) => y > 0);
  return { decay: re[at]!, omega: im[at]! };
}
read('polynomialRoots', 'period', (of) => (2 * Math.PI) / ringing(of).omega);
read('polynomialRoots', 'decay', (of) => ringing(of).decay);
read('polynomialRoots', 'ringing', (of) => ringing(of).omega);
read('polynomialRoots', 'free frequency', (of) => ringing(of).omega / (2 * Math.PI));
