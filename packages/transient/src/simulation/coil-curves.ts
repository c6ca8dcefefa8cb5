import type { CoilCurve } from './curve.js';
import { fillPolynomial, type PolynomialInput, readPolynomial } from './polynomial-curve.js';

const curve = (name: string, what: string, input: PolynomialInput): CoilCurve => {
  const polynomial = readPolynomial(name, what, input);
  const { reach } = polynomial;
  return { name, sources: ['klippel2006'], reach, at: (x, out) => fillPolynomial(polynomial, x, out) };
};

/**
 * The force factor over displacement, over its value at rest:
 *
 * $$ \frac{Bl(x)}{Bl(0)} = 1 + \sum_k b_k \left(\frac{x}{x_r}\right)^k $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x_r$ | `reach` | m | up to where it was measured; beyond, the value stays as it is there |
 * | $b_k$ | `coefficients` | 1 | of the first, second … power; odd ones make it unequal out and in |
 *
 * @validity up to the reach
 * @neglects that the field changes with the current
 * @returns a {@link CoilCurve}
 * @throws InputError `not-positive` where it falls to zero within the reach, and those of the fields
 * @source klippel2006 power series of the force factor
 * @example forceFactorCurve({ reach: '10 mm', coefficients: [0.02, -0.35] }) // 33 % to 37 % less at the ends
 */
export const forceFactorCurve = (input: PolynomialInput): CoilCurve => curve('forceFactor', 'a force factor', input);

/**
 * The inductance of the coil over displacement, over its value at rest. It is greater where the coil is farther in the iron:
 *
 * $$ \frac{L_e(x)}{L_e(0)} = 1 + \sum_k l_k \left(\frac{x}{x_r}\right)^k $$
 *
 * @validity up to the reach; beyond, the value stays as it is there
 * @neglects that it falls with frequency and current
 * @returns a {@link CoilCurve}
 * @throws InputError `not-positive` where it falls to zero within the reach, and those of the fields
 * @source klippel2006 power series of the inductance
 * @example inductanceCurve({ reach: '10 mm', coefficients: [-0.3] }) // 30 % more with the coil all the way in
 */
export const inductanceCurve = (input: PolynomialInput): CoilCurve => curve('inductance', 'an inductance', input);
