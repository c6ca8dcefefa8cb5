import { polynomialValue } from './polynomial.js';

/** Numerators and denominators for |u − ½| ≤ 0.425, for the tails, and for the far tails, in ascending powers. */
const MIDDLE = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
] as const;
const TAIL = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
] as const;
const FAR = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 0.000018463183175100548,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
] as const;

const quotient = ([above, below]: readonly [readonly number[], readonly number[]], x: number): number =>
  polynomialValue(above, x) / polynomialValue(below, x);

/**
 * The value below which a standard normal variable lies with a given probability, by rational approximations.
 *
 * $$ \frac{1}{\sqrt{2\pi}} \int_{-\infty}^{z} e^{-t^2/2}\,dt = u $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $u$ | argument | 1 | probability, above 0 and below 1 |
 *
 * @validity 10⁻³⁰⁰ to 1 − 10⁻¹⁶; relative error near 10⁻¹⁶
 * @neglects nothing; a kernel that checks nothing
 * @returns z
 * @source wichura1988 algorithm AS 241, routine PPND16
 * @example normalQuantile(0.975) // 1.95996
 */
export function normalQuantile(u: number): number {
  const centred = u - 0.5;
  if (Math.abs(centred) <= 0.425) return centred * quotient(MIDDLE, 0.180625 - centred * centred);
  const depth = Math.sqrt(-Math.log(Math.min(u, 1 - u)));
  const size = depth <= 5 ? quotient(TAIL, depth - 1.6) : quotient(FAR, depth - 5);
  return Math.sign(centred) * size;
}
