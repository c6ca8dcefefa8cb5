import type { EndCorrection, Opening } from '../duct/index.js';
import { alike, type LawResult, tried } from './law.js';

/** How much a length may differ from a known one, relative. */
const AGREEMENT = 5e-3;

/** Options for trying an end correction. */
export interface EndCorrectionTrial {
  /** The same correction with its own lengths (a flare, distances) scaled by a factor. Leave it out if there are none. */
  readonly scaled?: (factor: number) => EndCorrection;
  /** Radii of openings to try, m; default 5, 30 and 150 mm. */
  readonly radii?: readonly number[];
  /**
   * Least and greatest length of a round opening toward long waves, in radii; default 0.6 to 1.2. A free thin tube has
   * 0.6127, the least without a flare (@source levine1948). A tube flush with a wide wall has 0.8216 (@source norris1989). A piston
   * there has 8/(3π), the most (@source rayleigh1896 sec. 302), unless something is close to the end. Twice the least, 1.23, comes
   * from a diameter taken for a radius. For flares and near walls, state bounds of your own.
   */
  readonly bounds?: readonly [least: number, greatest: number];
  /** Lengths known from elsewhere, measured or published, m. They agree within 0.5 %. */
  readonly known?: readonly { readonly opening: Opening; readonly k: number; readonly length: number }[];
}

const waves = [0, 0.01, 0.1, 0.5, 1.5]; // ka

/** Openings of one radius. */
const openings = (radius: number): readonly Opening[] => [
  { radius },
  { radius, wall: 0.1 * radius },
  { radius, flangeRadius: 3 * radius, wall: 0.1 * radius },
  { radius, aspect: 4 },
];

/**
 * The laws of every end correction, including your own.
 *
 * It is a finite length that scales with the opening at the same ka, because the opening is the only length there is. In radii it
 * lies within the bounds of the literature. It does not jump over frequency, because the field in front of an opening is analytic
 * in k. It gives the same answer twice, and names its sources.
 *
 * @validity openings small against the wavelength
 * @neglects whether the measured or derived length is right within those bounds
 * @returns one result for each law
 * @source rayleigh1896 secs. 302 to 307; levine1948; norris1989
 * @example for (const { law, holds, detail } of endCorrectionLaws(mine)) console.log(law, holds, detail)
 */
export function endCorrectionLaws(
  correction: EndCorrection,
  { scaled = () => correction, radii = [0.005, 0.03, 0.15], bounds = [0.6, 1.2], known = [] }: EndCorrectionTrial = {},
): readonly LawResult[] {
  const each = (law: string, fault: (radius: number, ka: number, shape: number) => string | undefined) =>
    tried(law, `${radii.length} radii, ${waves.length} wave numbers, ${openings(1).length} shapes`, () => {
      for (const radius of radii) {
        for (const ka of waves) {
          for (const shape of openings(radius).keys()) {
            const found = fault(radius, ka, shape);
            if (found !== undefined) return `${found} at radius ${radius} m, ka ${ka}`;
          }
        }
      }
      return undefined;
    });
  const at = (radius: number, ka: number, shape: number, end = correction) =>
    end(openings(radius)[shape] as Opening, ka / radius);

  return [
    each('finite and not negative', (radius, ka, shape) => {
      const length = at(radius, ka, shape);
      // A flare is part of the tube. A wide flare makes the tube act shorter, by less than the length of the flare.
      const least = -(correction.flare?.radius ?? 0);
      return Number.isFinite(length) && length >= least ? undefined : `got ${length}`;
    }),
    each('a length that scales with the size', (radius, ka, shape) => {
      const [one, two] = [at(radius, ka, shape), at(2 * radius, ka, shape, scaled(2))];
      return alike(2 * one, two) ? undefined : `${one} m doubled is ${two} m`;
    }),
    each('a length within the bounds of the literature', (radius, ka, shape) => {
      const own = at(radius, 0, shape) / radius;
      const isRound = openings(radius)[shape]?.aspect === undefined;
      return ka > 0 || !isRound || (own >= bounds[0] && own <= bounds[1])
        ? undefined
        : `${own} radii, of ${bounds.join(' to ')},`;
    }),
    each('smooth toward long waves', (radius, _, shape) => {
      const [zero, small] = [at(radius, 0, shape), at(radius, 1e-4, shape)];
      return Math.abs(small - zero) <= 1e-3 * Math.abs(zero) ? undefined : `jumps from ${zero} to ${small}`;
    }),
    each('no jump over frequency', (radius, _, shape) => jumpOver((ka) => at(radius, ka, shape))),
    each('the same answer twice', (radius, ka, shape) => {
      const [first, second] = [at(radius, ka, shape), at(radius, ka, shape)];
      return first === second ? undefined : 'two answers';
    }),
    tried('agrees with known values', `${known.length} lengths`, () => {
      for (const { opening, k, length } of known) {
        const own = correction(opening, k);
        if (!alike(own, length, AGREEMENT)) return `${own} m, and ${length} m are known, at ${JSON.stringify(opening)}`;
      }
      return undefined;
    }),
    tried('sources named', correction.sources.join(', '), () => (correction.sources.length > 0 ? undefined : 'none')),
  ];
}

/** Where a function, such as one of ka, jumps between 0 and the greatest number. */
export function jumpOver(length: (ka: number) => number, greatest = 2): string | undefined {
  const steps = 100 * greatest;
  const scale = Math.abs(length(0)) + Math.abs(length(1)) + Number.MIN_VALUE;
  for (let i = 0; i < steps; i++) {
    let [low, high] = [(greatest * i) / steps, (greatest * (i + 1)) / steps];
    let [a, b] = [length(low), length(high)];
    // Each step keeps the half with the greater change. For a smooth function the change vanishes in the end.
    for (let k = 0; k < 40 && Math.abs(b - a) > 1e-9 * scale; k++) {
      const [middle, value] = [(low + high) / 2, length((low + high) / 2)];
      if (Math.abs(b - value) > Math.abs(value - a)) [low, a] = [middle, value];
      else [high, b] = [middle, value];
    }
    if (Math.abs(b - a) > 1e-9 * scale) return `jumps from ${a} to ${b} near ${low}`;
  }
  return undefined;
}
