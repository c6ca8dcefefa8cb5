import type { SuspensionModel } from '../driver/index.js';
import { complexColumn } from '../numeric/index.js';
import { type LawResult, tried } from './law.js';
import { lawElementLaws } from './law-element-laws.js';
import { filledBy, lackingPart, modelLaws, overBand, scaledFault } from './model-laws.js';

/** A factor that no formula has by accident. */
const TIME = 0.37;
/** m/N. */
const Cms = 4e-4;
/** rad/s: 10 to 200 Hz, where drivers have their resonance. */
const [LOWEST, HIGHEST] = [2 * Math.PI * 10, 2 * Math.PI * 200] as const;

/**
 * The laws of every suspension model, ours and a stranger's.
 *
 * A suspension gives no power, so that the imaginary part of its compliance is not positive, with exp(+jωt); it is a spring
 * around the resonances of drivers, of about the compliance Cms that they were measured with; and it does not become softer
 * as frequency rises, since what yields slowly yields more (@source gross1953, retardation). Since c(−ω) is the conjugate of
 * c(ω), only ω above 0 is asked. Its slopes are the derivatives of its compliance. Scaled, it is the same in other units. In a
 * network it stands as 1/(jω Cms c), or, without an element, as a plain spring.
 *
 * @validity parameters for which the model is meant
 * @neglects whether the formula describes a real suspension, which no numbers can show
 * @returns one result for each law
 * @source desoer1969 (positive real functions); gross1953 (retardation)
 * @example suspensionLaws(logarithmicCreep({ lambda: 0.05, at: '27 Hz' })).every(({ holds }) => holds)
 */
export function suspensionLaws(model: SuspensionModel): readonly LawResult[] {
  const { parameters, compliance, scaled, element } = model;
  const lacking = lackingPart(model, { compliance, scaled });
  if (lacking) return lacking;
  const filled = filledBy(model, compliance);
  const numbers = [Cms, ...Object.values(parameters)];
  const law = element?.('tried', ['a', 'ground']);
  const over = (name: string, judge: Parameters<typeof overBand>[1]) =>
    tried(name, '4 decades', () => overBand(filled, judge));
  let before = Infinity;
  return [
    ...modelLaws(model),
    over('finite, and the same at each call', () => undefined),
    over('a suspension gives no power', (re, im, w) =>
      im <= 1e-12 * Math.abs(re) ? undefined : `the imaginary part of its compliance is ${im} at ${w} rad/s`,
    ),
    over('a spring of about Cms', (re, _, w) =>
      w < LOWEST || w > HIGHEST || (re > 0.5 && re < 2) ? undefined : `it is ${re} times as compliant at ${w} rad/s`,
    ),
    over('no softer as frequency rises', (re, im, w) => {
      const size = Math.hypot(re, im);
      const fault =
        size <= before * (1 + 1e-12) ? undefined : `it becomes ${size / before} times as compliant at ${w} rad/s`;
      before = size;
      return fault;
    }),
    tried('changes nothing that it reads', 'once', () => {
      const given = Float64Array.from(Object.values(parameters));
      const own = given.slice();
      compliance(own, 100, new Float64Array(2));
      return own.every((value, i) => Object.is(value, given[i])) ? undefined : 'its parameters are changed';
    }),
    tried('scaled, it is the same suspension', 'time', () => {
      const other = scaled(TIME);
      return scaledFault(filled, filledBy(other, other.compliance), 1, TIME);
    }),
    ...(law ? lawElementLaws(law, { values: numbers }) : []),
    over('in a network it is its compliance', (re, im, w) => {
      if (law === undefined) return re === 1 && im === 0 ? undefined : 'it has no element, and is no plain spring';
      if (law.stands !== 'admittance') return 'it stands as an impedance';
      const out = complexColumn(1);
      law.fill(Float64Array.from(numbers), 0, Float64Array.of(w / (2 * Math.PI)), out);
      const [x, y] = [out.re[0]!, out.im[0]!];
      // jω Cms c Y is 1.
      const [a, b] = [re * x - im * y, re * y + im * x].map((part) => part * w * Cms) as [number, number];
      return Math.hypot(-b - 1, a) <= 1e-9 ? undefined : `it is ${x} + ${y} j N·s/m at ${w} rad/s`;
    }),
  ];
}
