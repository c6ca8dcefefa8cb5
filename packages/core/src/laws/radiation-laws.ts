import type { EndCorrection, Radiation } from '../duct/index.js';
import { jumpOver } from './end-correction-laws.js';
import { alike, type LawResult, tried } from './law.js';

/** Options for trying a radiation impedance. */
export interface RadiationTrial {
  /** The same radiation with its own lengths scaled by a factor. Leave it out if there are none. */
  readonly scaled?: (factor: number) => Radiation;
  /** Radii of openings to try, m; default 5, 30 and 150 mm. */
  readonly radii?: readonly number[];
  /** The solid angles into which it may radiate, sr; default 2π and 4π. Infinity stands for an end that radiates nothing. */
  readonly solidAngles?: readonly number[];
  /** The end correction that belongs to it. Its mass for long waves agrees within 0.3 %. */
  readonly end?: EndCorrection;
  /** Without one: least and greatest mass for long waves, in radii; default 0.6 to 1.2, as for end corrections. */
  readonly bounds?: readonly [least: number, greatest: number];
}

const waves = [0.003, 0.03, 0.1, 0.5, 1.5, 5, 20]; // ka

/**
 * The laws of every radiation impedance, including your own.
 *
 * It is finite and passive: the radiated power is not negative. It is a function of ka alone: two openings that differ only in size
 * radiate alike. For long waves the power is that of a point source in a solid angle, (ka)²π/Ω over ρc/S (@source rayleigh1896
 * sec. 278), and the reactance is a mass. Both numbers are filled at each call, without a jump over frequency.
 *
 * @validity any ka; the limit of long waves is read at ka = 0.003
 * @neglects whether the values in between are right
 * @returns one result for each law
 * @source rayleigh1896 secs. 278 and 302
 * @example radiationLaws(pistonRadiation, { end: pistonInFlange, solidAngles: [2 * Math.PI] })
 */
export function radiationLaws(
  radiation: Radiation,
  {
    scaled = () => radiation,
    radii = [0.005, 0.03, 0.15],
    solidAngles = [2 * Math.PI, 4 * Math.PI],
    end,
    bounds = [0.6, 1.2],
  }: RadiationTrial = {},
): readonly LawResult[] {
  const at = (radius: number, ka: number, own = radiation) => {
    const out = Float64Array.of(Number.NaN, Number.NaN);
    own({ radius }, ka / radius, out);
    return [out[0]!, out[1]!] as const;
  };
  const each = (law: string, over: readonly number[], fault: (radius: number, ka: number) => string | undefined) =>
    tried(law, `${radii.length} radii, ${over.length} wave numbers`, () => {
      for (const radius of radii) {
        for (const ka of over) {
          const found = fault(radius, ka);
          if (found !== undefined) return `${found} at radius ${radius} m, ka ${ka}`;
        }
      }
      return undefined;
    });
  const far = waves.slice(0, 1);
  return [
    each('finite, and both numbers filled', waves, (radius, ka) => {
      const [re, im] = at(radius, ka);
      return Number.isFinite(re + im) ? undefined : `got ${re}, ${im}`;
    }),
    each('gives out no power', waves, (radius, ka) => {
      const [re] = at(radius, ka);
      return re >= 0 ? undefined : `its resistance is ${re}`;
    }),
    each('a function of ka alone', waves, (radius, ka) => {
      const [one, two] = [at(radius, ka), at(2 * radius, ka, scaled(2))];
      return one.every((value, i) => alike(value, two[i]!)) ? undefined : `${one}, and ${two} at twice the size`;
    }),
    each('the power of a point source at long waves', far, (radius, ka) => {
      const share = at(radius, ka)[0] / ka ** 2;
      const known = solidAngles.map((angle) => Math.PI / angle);
      return known.some((one) => Math.abs(share - one) <= 3e-3 * one)
        ? undefined
        : `${share} (ka)², of ${known.join(' or ')}`;
    }),
    each('a mass at long waves', far, (radius, ka) => {
      const length = at(radius, ka)[1] / ka;
      const [least, most] = end === undefined ? bounds : [0.997, 1.003].map((by) => (by * end({ radius }, 0)) / radius);
      return length >= least! && length <= most! ? undefined : `${length} radii, of ${least} to ${most}`;
    }),
    each('no jump over frequency', far, (radius) => {
      const [least, most] = [1e-3, waves.at(-1)!];
      const over = (part: 0 | 1) => jumpOver((ka) => at(radius, Math.max(ka, least))[part], most);
      return over(0) ?? over(1);
    }),
    tried('the same answer twice', 'asked once more', () => {
      const radius = radii[0]!;
      const first = [...at(radius, 0.5)];
      at(radius, 1.5);
      return first.every((value, i) => value === at(radius, 0.5)[i]) ? undefined : 'two answers';
    }),
    tried('sources named', radiation.sources.join(', '), () => (radiation.sources.length > 0 ? undefined : 'none')),
  ];
}
