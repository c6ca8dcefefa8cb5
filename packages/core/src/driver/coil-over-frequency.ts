import { compilePolynomials, type Law, type Nodes } from '../network/index.js';
import type { CoilFormula, CoilModel } from './coil.js';
import { column, sloped } from './pairs.js';

/** What a coil has besides Re, as an element over frequency. The reference level leaves it out. */
function coilLaw({ parameters: named, impedance, slopes }: CoilFormula, name: string, nodes: Nodes): Law {
  const parameters = Object.keys(named);
  return {
    kind: 'law',
    name,
    nodes,
    stands: 'impedance',
    inReference: false,
    parameters,
    fill: column(parameters.length, impedance, 0),
    ...(slopes && sloped(parameters.length, slopes)),
    like: ['inductor', 'resistor'],
    compile: compilePolynomials,
  };
}

/**
 * A coil model of a formula: an impedance over frequency besides Re, which stands in networks, in the reference level as a
 * short, and in gradients by each of its parameters.
 *
 * $$ Z_E = R_e + Z(\omega) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Z$ | `impedance` | Ω | what the coil has besides Re |
 *
 * @validity a formula that obeys `coilLaws`
 * @neglects nothing
 * @returns the model; exp(+jωt)
 * @source small1972direct circuit of the driver: the impedance of the coil in series with Re
 * @example
 * const eddy = (K: number): CoilModel => coilOverFrequency({
 *   name: 'eddy currents', parameters: { K }, sources: ['vanderkooy1989'],
 *   impedance: (values, w, out) => { out[0] = out[1] = values[0]! * Math.sqrt(w / 2); },
 *   scaled: (impedance, time) => eddy(K * impedance * Math.sqrt(time)),
 * });
 */
export const coilOverFrequency = (formula: CoilFormula): CoilModel => ({
  ...formula,
  element: (name, nodes) => coilLaw(formula, name, nodes),
});
