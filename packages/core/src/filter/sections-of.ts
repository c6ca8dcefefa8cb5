import { refuse } from '../fault/index.js';
import { type Frequency, si } from '../quantity/index.js';
import { type Factor, factorsOf } from './factors.js';
import { type Filter, normalisedFilter } from './filter.js';

/** A section of first or second order, which is a filter of its own. */
export interface FilterSection extends Filter {
  /** Hz; of a pair of poles their geometric mean. */
  readonly f0: Frequency;
  /** Quality factor of a pair of poles. A section of first order has none. */
  readonly Q?: number;
}

/** Factors of a numerator: one s for each zero at the origin, two by two, and those of the rest. */
function zerosOf(numerator: Float64Array): readonly Factor[] {
  const first = numerator.findIndex((a) => a !== 0);
  const rest = numerator.slice(first, numerator.findLastIndex((a) => a !== 0) + 1);
  return [...(rest.length > 1 ? factorsOf(rest) : []), ...atOrigin(first)];
}
const atOrigin = (count: number): Factor[] => [
  ...Array.from({ length: Math.floor(count / 2) }, () => [0, 0, 1]),
  ...(count % 2 === 1 ? [[0, 1]] : []),
];

const qualityOf = ([c, b]: Factor): number => Math.sqrt(c!) / b!;
/** Distance of two factors by their frequencies; zeros at the origin are far from all. */
const apart = (a: Factor, b: Factor): number => Math.abs(Math.log(Math.max(a[0]!, 1e-30) / b[0]!));

/** The largest gain that a section has at one of its ends or in its middle. */
const reach = (numerator: Factor, denominator: Factor): number =>
  Math.max(...numerator.map((value, k) => Math.abs(value / denominator[k]!)));

/**
 * The sections of first and second order that make up a filter, by rising quality factor; a section of first order comes first. Their
 * product is the filter. Poles of high Q get the zeros that lie nearest.
 *
 * $$ H(s) = \prod_i \frac{b_{0i} + b_{1i} s + b_{2i} s^2}{\omega_i^2 + s\,\omega_i/Q_i + s^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $H$ | `filter` | 1 | transfer function |
 * | $\omega_i/2\pi$ | `f0` | Hz | frequency of a section |
 * | $Q_i$ | `Q` | 1 | its quality factor |
 *
 * The auxiliary filter of an assisted sixth-order alignment is such a section of the whole sixth-order response; the box has the others.
 *
 * @validity as `compileFilter`; an order of 1 or more
 * @neglects nothing; poles that coincide are found as such
 * @returns one filter for each section
 * @throws InputError `empty`, `not-finite`, `out-of-range`, `inconsistent`
 * @source zverev1967 ch. 2, cascade of sections
 * @source thiele1971a assisted alignments: a peaked second-order section before the box
 * @example sectionsOf(highPass(butterworthShape(6), '25 Hz')).map(({ Q }) => Q) // [0.518, 0.707, 1.93]
 */
export function sectionsOf(filter: Filter): readonly FilterSection[] {
  const { scale, numerator, denominator } = normalisedFilter(filter);
  if (denominator.length < 2) {
    const remedy = 'Multiply the signal instead.';
    refuse([
      {
        code: 'inconsistent',
        path: 'filter.denominator',
        got: filter.denominator,
        expected: 'an order of 1 or more',
        remedy,
      },
    ]);
  }
  const gain = numerator[numerator.findLastIndex((a) => a !== 0)]! / denominator.at(-1)!;
  const poles = [...factorsOf(denominator)].sort((a, b) => b.length - a.length || qualityOf(b) - qualityOf(a));
  const free = [...zerosOf(numerator)];
  const chosen = poles.map((pole): Factor => {
    const fitting = free.filter((zeros) => zeros.length <= pole.length);
    const [nearest] = fitting.sort((a, b) => b.length - a.length || apart(a, pole) - apart(b, pole));
    if (nearest === undefined) return [1];
    free.splice(free.indexOf(nearest), 1);
    return nearest;
  });
  const reaches = chosen.map((zeros, i) => reach(zeros, poles[i]!));
  const rest = reaches.reduce((product, one) => product * one, gain);
  return poles
    .map((pole, i): FilterSection => {
      const last = pole.length - 1;
      const factor = (i === poles.length - 1 ? rest : 1) / reaches[i]!;
      const unscaled = (list: Factor, by = 1) => list.map((value, k) => by * value * scale ** (last - k));
      const hertz = (scale * (last === 2 ? Math.sqrt(pole[0]!) : pole[0]!)) / (2 * Math.PI);
      return {
        kind: filter.kind,
        name: `${filter.name}: section ${poles.length - i} of ${poles.length}`,
        numerator: unscaled(chosen[i]!, factor),
        denominator: unscaled(pole),
        f0: si('frequency', hertz),
        ...(last === 2 && { Q: qualityOf(pole) }),
      };
    })
    .reverse();
}
