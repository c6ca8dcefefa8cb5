import type { LineSection } from '../duct/index.js';
import { jumpOver } from './end-correction-laws.js';
import { type LawResult, tried } from './law.js';

/** Inverse thicknesses of the layer, 1/m, from a layer that fills the section to a thin one. */
const layers = Array.from({ length: 61 }, (_, i) => 10 ** (-1 + i / 10));

/**
 * The laws of every cross-section of a line, including your own.
 *
 * The boundary layer takes up a share F of the section. Re F falls from 1 (the whole section, at s → 0) to 0. Im F ≤ 0, because
 * friction and heat take up power (@source zwikker1949, exp(+jωt)). Both F and 1 − F are filled, and add up to 1. A thin layer has
 * F = perimeter/(area · s √j), with a perimeter that is possible for this area and width. The first wave across the section
 * travels from some kw ≥ π (the value of the slit), and no later than that of a circle of the same area (theorems of Payne and
 * Weinberger, and of Szegő and Weinberger, from memory). A section without loss, with F = 0 everywhere, is accepted as well.
 *
 * @validity convex sections with smooth walls
 * @neglects whether F between thick and thin layers is right for the shape
 * @returns one result for each law
 * @source zwikker1949 line constants; stinson1991
 * @example lineSectionLaws(roundSection({ diameter: '75 mm' })).every(({ holds }) => holds)
 */
export function lineSectionLaws({ area, width, cutOn, layer, sources, warnings }: LineSection): readonly LawResult[] {
  const at = (s: number) => {
    const out = new Float64Array(4).fill(Number.NaN);
    layer(s, out);
    return [out[0]!, out[1]!, out[2]!, out[3]!] as const;
  };
  const scale = 1 / Math.sqrt(area);
  const isLossless = layers.every((s) => at(s * scale).every((value, i) => value === [0, 0, 1, 0][i]));
  const each = (law: string, fault: (s: number) => string | undefined) =>
    tried(law, `${layers.length} layers`, () => {
      for (const s of layers) {
        const found = isLossless ? undefined : fault(s * scale);
        if (found !== undefined) return `${found} at s = ${s * scale} 1/m`;
      }
      return undefined;
    });
  return [
    tried('an area within its width', 'once', () =>
      area > 0 && area <= width ** 2 * (1 + 1e-12) && width < Infinity ? undefined : `${area} m² within ${width} m`,
    ),
    tried('the first wave across the section', 'once', () => {
      const latest = 1.8411837813406593 * width * Math.sqrt(Math.PI / area);
      return cutOn >= Math.PI * (1 - 1e-9) && cutOn <= latest * (1 + 1e-9)
        ? undefined
        : `${cutOn}, of ${Math.PI} to ${latest}`;
    }),
    each('F and 1 − F add up to one', (s) => {
      const [a, b, c, d] = at(s);
      return Math.abs(a + c - 1) <= 1e-9 && Math.abs(b + d) <= 1e-9 ? undefined : `F ${a} ${b}, 1 − F ${c} ${d}`;
    }),
    each('walls take power', (s) => {
      const [a, b] = at(s);
      return a > -1e-12 && a <= 1 + 1e-12 && b <= 1e-12 ? undefined : `F is ${a} + ${b} j`;
    }),
    tried('no jump between layers', '4 decades', () => {
      if (isLossless) return undefined;
      const over = (part: 0 | 1) => jumpOver((x) => at(scale * 10 ** (2 * x - 1))[part]);
      return over(0) ?? over(1);
    }),
    tried('a thick layer fills the section', 'one layer', () => {
      const [a, b] = at(1e-3 * scale);
      return isLossless || Math.hypot(a - 1, b) <= 1e-3 ? undefined : `F is ${a} + ${b} j`;
    }),
    tried('a thin layer follows the perimeter', 'one layer', () => {
      if (isLossless) return undefined;
      const s = 1e5 * scale;
      const [a, b] = at(s);
      const perimeter = (a - b) * Math.SQRT1_2 * s * area;
      // Only two sides of a slit count, so its perimeter is not compared with that of a circle.
      const least = warnings.length > 0 ? 0 : 2 * Math.sqrt(Math.PI * area);
      // Only a circle has this area in its width.
      const isCircle = Math.abs((4 * area) / (Math.PI * width ** 2) - 1) <= 1e-9;
      const most = isCircle ? least * (1 + 1e-3) : 2.2 * (width + area / width);
      const turned = Math.abs(a + b) <= 1e-3 * Math.hypot(a, b);
      return turned && perimeter >= least * (1 - 1e-3) && perimeter <= most
        ? undefined
        : `${perimeter} m, of ${least} to ${most} m`;
    }),
    tried('sources named', sources.join(', '), () => (sources.length > 0 ? undefined : 'none')),
  ];
}
