import type { ComplexColumn } from '../numeric/index.js';
import type { Curves } from './curves.js';
import { type LawResult, tried } from './law.js';

type Complex = readonly [re: number, im: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const conjugate = ([a, b]: Complex): Complex => [a, -b];
const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];
const size = ([a, b]: Complex) => Math.hypot(a, b);

/**
 * A line is reciprocal if it holds no gyrator and no flow: AD − BC = 1 (@source desoer1969, reciprocity). It is passive: with p
 * and u at the far end it takes the power Re(AC*)|p|² + Re(BD*)|u|² + Re((AD* + B*C − 1) p u*), which is never negative.
 */
export function lineLaws(curves: Curves, frequencies: Float64Array): readonly LawResult[] {
  const each = (law: string, fault: (chain: readonly [Complex, Complex, Complex, Complex]) => string | undefined) =>
    tried(law, `${frequencies.length} frequencies`, () => {
      const columns = curves(frequencies) as readonly ComplexColumn[];
      for (let i = 0; i < frequencies.length; i++) {
        const at = (k: 0 | 1 | 2 | 3): Complex => [columns[k]!.re[i]!, columns[k]!.im[i]!];
        const found = fault([at(0), at(1), at(2), at(3)]);
        if (found !== undefined) return `${found} at ${frequencies[i]} Hz`;
      }
      return undefined;
    });
  return [
    each('reciprocal', ([A, B, C, D]) => {
      const [ad, bc] = [times(A, D), times(B, C)];
      const [re, im] = [ad[0] - bc[0], ad[1] - bc[1]];
      return Math.hypot(re - 1, im) <= 1e-9 * Math.max(1, size(ad)) ? undefined : `AD − BC is ${re} + ${im} j`;
    }),
    each('gives out no power', ([A, B, C, D]) => {
      const [far, flow] = [times(A, conjugate(C))[0], times(B, conjugate(D))[0]];
      const mixed = plus(plus(times(A, conjugate(D)), times(conjugate(B), C)), [-1, 0]);
      const rounding = 1e-9 * Math.max(1, size(A) * size(D));
      if (far < -1e-9 * size(A) * size(C) || flow < -1e-9 * size(B) * size(D)) return 'it gives power';
      return size(mixed) <= 2 * Math.sqrt(Math.max(0, far) * Math.max(0, flow)) + rounding
        ? undefined
        : 'it gives power to some load';
    }),
    tried('a mass where it is open, a spring where it is shut', 'far below its first resonance', () => {
      const [A, B, C] = curves(frequencies) as readonly [ComplexColumn, ComplexColumn, ComplexColumn];
      for (let i = 0; i < frequencies.length && Math.hypot(A.re[i]! - 1, A.im[i]!) < 0.1; i++) {
        const wrong = [B, C].find(({ re, im }) => !(im[i]! >= -1e-9 * Math.abs(re[i]!)));
        if (wrong) return `${wrong === B ? 'B' : 'C'} is ${wrong.re[i]} + ${wrong.im[i]} j at ${frequencies[i]} Hz`;
      }
      return undefined;
    }),
  ];
}
