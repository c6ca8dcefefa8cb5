import type { LineSection } from '../duct/index.js';
import { type LawResult, tried } from './law.js';

/** Inverse thicknesses of the layer, 1/m, from a layer that fills the section to a thin one. */
const layers = Array.from({ length: 61 }, (_, i) => 10 ** (-1 + i / 10));

/**
 * What every cross-section of a line must obey, ours and a stranger's.
 *
 * Its layer takes a share F with Re F from 1 (all of it, at s → 0) to 0, and Im F ≤ 0: friction and heat take power
 * (@source zwikker1949, exp(+jωt)). Both F and 1 − F are filled, and are a sum of 1. Where the layer is thin, F is
 * perimeter/(area · s √j): the perimeter is that of a form with this area and width. The first wave across travels from
 * kw ≥ π on, the slit's, and no later than that of the circle of the same area (theorems of Payne and Weinberger, and of
 * Szegő and Weinberger, from memory). Without loss F is 0 everywhere, and that is taken as well.
 *
 * @validity convex sections with smooth walls
 * @neglects whether the layer between thick and thin is that of the form
 * @returns one result for each law
 * @source zwikker1949 line constants; stinson1991
 * @example lineSectionLaws(roundSection({ diameter: '75 mm' })).every(({ holds }) => holds)
 */
export function lineSectionLaws({ area, width, cutOn, layer, sources, warnings }: LineSection): readonly LawResult[] {
  const at = (s: number) => {
    const out = new Float64Array(4).fill(Number.NaN);
    layer(s, out);
    return out as unknown as readonly [number, number, number, number];
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
    tried('the first wave across', 'once', () => {
      const latest = 1.8411837813406593 * width * Math.sqrt(Math.PI / area);
      return cutOn >= Math.PI * (1 - 1e-9) && cutOn <= latest * (1 + 1e-9)
        ? undefined
        : `${cutOn}, of ${Math.PI} to ${latest}`;
    }),
    each('F and 1 − F are one', (s) => {
      const [a, b, c, d] = at(s);
      return Math.abs(a + c - 1) <= 1e-9 && Math.abs(b + d) <= 1e-9 ? undefined : `F ${a} ${b}, 1 − F ${c} ${d}`;
    }),
    each('walls take power', (s) => {
      const [a, b] = at(s);
      return a > -1e-12 && a <= 1 + 1e-12 && b <= 1e-12 ? undefined : `F is ${a} + ${b} j`;
    }),
    tried('all is layer where it is thick', 'one layer', () => {
      const [a, b] = at(1e-3 * scale);
      return isLossless || Math.hypot(a - 1, b) <= 1e-3 ? undefined : `F is ${a} + ${b} j`;
    }),
    tried('a perimeter where it is thin', 'one layer', () => {
      if (isLossless) return undefined;
      const s = 1e5 * scale;
      const [a, b] = at(s);
      const perimeter = (a - b) * Math.SQRT1_2 * s * area;
      // Only two sides of a slit count, so its perimeter is not compared with that of a circle.
      const least = warnings.length > 0 ? 0 : 2 * Math.sqrt(Math.PI * area);
      // Only a circle fills its width so.
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
