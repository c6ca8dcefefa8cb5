import { compilePolynomials, type Law, type Nodes } from '../network/index.js';
import { column, type Pairs, sloped } from './pairs.js';
import type { SuspensionFormula, SuspensionModel } from './suspension.js';

/**
 * The spring of a suspension as an element over frequency: force over velocity, 1/(jω Cms c). Far above resonance it has
 * no influence, so the reference level leaves it out.
 */
function suspensionLaw({ parameters: own, compliance, slopes }: SuspensionFormula, name: string, nodes: Nodes): Law {
  const parameters = ['Cms', ...Object.keys(own)];
  const count = parameters.length;
  const c = new Float64Array(2);
  const changes = new Float64Array(2 * count);
  /** Fills the pair at `place` with the quotient of a complex number and jω Cms c. */
  const put = (out: Float64Array, place: number, re: number, im: number, wC: number) => {
    // (re + j im) · (−c″ − j c′)/(ω Cms |c|²)
    const size = wC * (c[0]! * c[0]! + c[1]! * c[1]!);
    out[2 * place] = (im * c[0]! - re * c[1]!) / size;
    out[2 * place + 1] = (-re * c[0]! - im * c[1]!) / size;
  };
  const fill: Pairs = (values, w, out) => {
    compliance(values.subarray(1), w, c);
    put(out, 0, 1, 0, w * values[0]!);
  };
  /** Of Y = 1/(jω Cms c): −Y (1 + c′/c) by ln ω, −Y/Cms by Cms, −Y ċ/c by a parameter. */
  const slope: Pairs = (values, w, out) => {
    const rest = values.subarray(1);
    compliance(rest, w, c);
    slopes?.(rest, w, changes);
    const size = c[0]! * c[0]! + c[1]! * c[1]!;
    const relative = (place: number) => {
      const [a, b] = [changes[2 * place]!, changes[2 * place + 1]!];
      return [(a * c[0]! + b * c[1]!) / size, (b * c[0]! - a * c[1]!) / size] as const;
    };
    const wC = w * values[0]!;
    const [a, b] = relative(0);
    put(out, 0, -1 - a, -b, wC);
    put(out, 1, -1 / values[0]!, 0, wC);
    for (let k = 1; k < count; k++) {
      const [x, y] = relative(k);
      put(out, k + 1, -x, -y, wC);
    }
  };
  return {
    kind: 'law',
    name,
    nodes,
    stands: 'admittance',
    inReference: false,
    parameters,
    fill: column(count, fill, 0),
    ...(slopes && sloped(count, slope)),
    like: ['spring', 'damper'],
    compile: compilePolynomials,
  };
}

/**
 * A suspension model of a formula: a compliance over frequency, which stands in networks and in gradients by Cms and by each of
 * its parameters.
 *
 * $$ Z_m = R_{ms} + \frac{1}{j\omega C_{ms}\,c(\omega)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $c$ | `compliance` | 1 | compliance over Cms |
 *
 * @validity a formula that obeys `suspensionLaws`
 * @neglects nothing
 * @returns the model; exp(+jωt)
 * @source small1972direct circuit of the driver: the compliance beside mass and resistance
 * @example
 * const rubber = (loss: number): SuspensionModel => suspensionOverFrequency({
 *   name: 'rubber', parameters: { loss }, sources: ['my measurement'],
 *   compliance: (values, _, out) => { out[0] = 1; out[1] = -values[0]!; },
 *   scaled: () => rubber(loss),
 * });
 */
export const suspensionOverFrequency = (formula: SuspensionFormula): SuspensionModel => ({
  ...formula,
  element: (name, nodes) => suspensionLaw(formula, name, nodes),
});
