import type { EndCorrection } from '../duct/index.js';
import { broken, holds, type LawResult, tried } from './law.js';

const waves = [0, 0.1, 0.5]; // ka

/** Openings of one shape at several sizes. */
const openings = (radius: number) => [
  { radius },
  { radius, wall: 0.1 * radius },
  { radius, flangeRadius: 3 * radius, wall: 0.1 * radius },
];

/** How a correction with lengths of its own is tried. */
export interface EndCorrectionTrial {
  /** The same correction with its own lengths (a flare, distances) so many times as long; leave out where it has none. */
  readonly scaled?: (factor: number) => EndCorrection;
  /** Radii of openings that it takes, m; default 5, 30 and 150 mm. */
  readonly radii?: readonly number[];
}

/**
 * What every end correction must obey, ours and a stranger's: finite, zero or more, a length (twice the size at the same
 * ka gives twice the length), smooth toward ka = 0, and sources named.
 *
 * @example for (const { law, holds, detail } of endCorrectionLaws(mine)) console.log(law, holds, detail)
 */
export function endCorrectionLaws(
  correction: EndCorrection,
  { scaled = () => correction, radii = [0.005, 0.03, 0.15] }: EndCorrectionTrial = {},
): readonly LawResult[] {
  const each = (law: string, fails: (radius: number, ka: number, shape: number) => string | undefined) =>
    tried(law, () => {
      for (const radius of radii) {
        for (const ka of waves) {
          for (const shape of openings(radius).keys()) {
            const found = fails(radius, ka, shape);
            if (found !== undefined) return broken(law, `${found} at radius ${radius} m, ka ${ka}`);
          }
        }
      }
      return holds(law, `${radii.length} radii, ${waves.length} wave numbers, 3 shapes`);
    });
  const at = (radius: number, ka: number, shape: number, end = correction) =>
    end(openings(radius)[shape] as { radius: number }, ka / radius);

  return [
    each('finite and not negative', (radius, ka, shape) => {
      const length = at(radius, ka, shape);
      // A flare is part of the tube: where it opens widely the tube acts shorter, by less than the flare.
      const least = -(correction.flare?.radius ?? 0);
      return Number.isFinite(length) && length >= least ? undefined : `got ${length}`;
    }),
    each('a length: scales with size', (radius, ka, shape) => {
      const [one, two] = [at(radius, ka, shape), at(2 * radius, ka, shape, scaled(2))];
      return Math.abs(two - 2 * one) <= 1e-9 * Math.abs(one) + 1e-300 ? undefined : `${one} m doubled is ${two} m`;
    }),
    each('smooth toward long waves', (radius, _, shape) => {
      const [zero, small] = [at(radius, 0, shape), at(radius, 1e-4, shape)];
      return Math.abs(small - zero) <= 1e-3 * Math.abs(zero) ? undefined : `jumps from ${zero} to ${small}`;
    }),
    correction.sources.length > 0
      ? holds('sources named', correction.sources.join(', '))
      : broken('sources named', 'none'),
  ];
}
