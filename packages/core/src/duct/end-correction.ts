import type { Fault } from '../fault/index.js';

/** The geometry of an open end, in plain SI numbers. */
export interface Opening {
  /** Inner radius, m; for an opening that is not round, the radius of a circle of the same area. */
  readonly radius: number;
  /** Ratio of the long to the short side of a rectangular opening, 1 or more; left out for a round one. */
  readonly aspect?: number;
  /** Outer radius of the flange around the opening, m; left out when there is none. */
  readonly flangeRadius?: number;
  /** Thickness of the tube wall, m; left out for a thin wall. */
  readonly wall?: number;
}

/**
 * The end correction of a tube at one open end: the length in m that the air outside adds to the tube. It depends on the
 * opening and on the wave number $k = 2\pi f/c$ in rad/m; $k = 0$ gives the low-frequency limit. It is a function that names
 * its sources, and you can use your own in the same way.
 *
 * @example const mine: EndCorrection = Object.assign((o: Opening) => 0.7 * o.radius, { sources: ['my-measurement'] });
 */
export interface EndCorrection {
  (opening: Opening, k: number): number;
  readonly name: string;
  /** Citation keys. */
  readonly sources: readonly string[];
  /** Greatest $ka$ for which it holds; beyond it results carry a warning. Left out when no limit is known. */
  readonly greatestKa?: number;
  /** Greatest wave number for which it holds, rad/m, when it depends on lengths other than the radius; beyond it results warn. */
  readonly greatestK?: number;
  /** The wave number makes no difference to it, so that a search need work it out only once for an opening. */
  readonly atAnyFrequency?: true;
  /** Why it is only an estimate; results then carry a warning. */
  readonly estimate?: string;
  /** The flare, when the end has one. Its radius is part of the length of the tube. */
  readonly flare?: { readonly radius: number; readonly end: EndCorrection };
}

/** No fault, or the fault of what is no end correction. */
export function unlessEnd(path: string, got: EndCorrection | null | undefined): Fault[] {
  if (typeof got === 'function' && Array.isArray(got.sources)) return [];
  const expected = 'an end correction, such as flanged or unflanged';
  return [{ code: 'inconsistent', path, got, expected, remedy: 'Give the function, with its sources.' }];
}

/**
 * End correction of a thin tube that ends in free air.
 *
 * $$ \Delta\ell = 0.6133\,a\left[\frac{1 + 0.044\,(ka)^2}{1 + 0.19\,(ka)^2} - 0.02\sin^2 2ka\right] $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | inner radius |
 * | $k$ | `k` | rad/m | wave number |
 *
 * The low-frequency limit is the printed 0.6133. The integral from which it comes gives 0.612701, which is 0.1 % less.
 *
 * @validity $ka \le 1.5$: within 0.4 % of the exact integral, worst at $ka = 1.3$; above this range 5 % off at $ka = 2.5$.
 * @neglects wall thickness, flow.
 * @returns m
 * @source levine1948 eq. VI.4; dalmont2001 unflanged fit
 * @example unflanged({ radius: 0.05 }, 0) // 0.030665 m
 */
export const unflanged: EndCorrection = Object.assign(
  function unflanged({ radius }: Opening, k: number): number {
    const square = (k * radius) ** 2;
    return 0.6133 * radius * ((1 + 0.044 * square) / (1 + 0.19 * square) - 0.02 * Math.sin(2 * k * radius) ** 2);
  },
  { sources: ['levine1948', 'dalmont2001'], greatestKa: 1.5 },
);

/**
 * End correction of a tube that ends flush with a wall much wider than the opening, as a vent does in the panel of a box.
 *
 * $$ \Delta\ell = \frac{0.8216\,a}{1 + \dfrac{(0.77\,ka)^2}{1 + 0.77\,ka}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | inner radius |
 * | $k$ | `k` | rad/m | wave number |
 *
 * @validity $ka \le 1$: within 1.8 % of the exact solution. It was published for $ka < 3.5$, where it is 14 % off.
 * @neglects the edges of the wall, other walls nearby, flow.
 * @returns m
 * @source norris1989 fit of the length; dalmont2001 quotes it
 * @example flanged({ radius: 0.05 }, 0) // 0.04108 m
 */
export const flanged: EndCorrection = Object.assign(
  function flanged({ radius }: Opening, k: number): number {
    const x = 0.77 * k * radius;
    return (0.8216 * radius) / (1 + (x * x) / (1 + x));
  },
  { sources: ['norris1989', 'dalmont2001'], greatestKa: 1 },
);

/**
 * End correction of a tube with a round flange of finite size, or with a thick wall, which acts as a flange.
 *
 * $$ \Delta\ell = \Delta\ell_\infty + \frac{a}{b}\,(\Delta\ell_0 - \Delta\ell_\infty)
 *    + 0.057\,a\,\frac{a}{b}\left[1 - \left(\frac{a}{b}\right)^5\right] $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | inner radius |
 * | $b$ | `flangeRadius`, `wall` | m | outer radius: that of the flange, or $a$ + wall, whichever is greater |
 * | $\Delta\ell_0$ | | m | {@link unflanged} |
 * | $\Delta\ell_\infty$ | | m | {@link flanged} |
 *
 * Without flange and wall it equals {@link unflanged}. The published formula holds at low frequency. Here its two limits keep
 * their dependence on $ka$, so that both are met at every frequency.
 *
 * @validity $ka \le 0.5$ and a flange that is small compared with the wavelength. It agrees with measurements within 2 %.
 * @neglects the reflection from the edge of the flange.
 * @returns m
 * @source dalmont2001 circular flange
 * @example finiteFlange({ radius: 0.05, flangeRadius: 0.1 }, 0) // 0.037253 m
 */
export const finiteFlange: EndCorrection = Object.assign(
  function finiteFlange(opening: Opening, k: number): number {
    const { radius, flangeRadius = 0, wall = 0 } = opening;
    const ratio = radius / Math.max(flangeRadius, radius + wall);
    const infinite = flanged(opening, k);
    return infinite + ratio * (unflanged(opening, k) - infinite) + 0.057 * radius * ratio * (1 - ratio ** 5);
  },
  { sources: ['dalmont2001'], greatestKa: 0.5 },
);

/**
 * End correction of a rigid piston in a wide wall at low frequency. It is the upper bound of {@link flanged}, for comparison:
 * in a real opening the air moves faster at the rim than in the middle, which makes it 3.2 % lighter.
 *
 * $$ \Delta\ell = \frac{8}{3\pi}\,a $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `radius` | m | radius |
 *
 * @validity $ka \le 0.2$: within 1.1 % of the exact reactance.
 * @neglects the dependence on frequency.
 * @returns m
 * @source rayleigh1896 sec. 302
 * @example pistonInFlange({ radius: 0.05 }, 0) // 0.042441 m
 */
export const pistonInFlange: EndCorrection = Object.assign(
  function pistonInFlange({ radius }: Opening): number {
    return (8 / (3 * Math.PI)) * radius;
  },
  { sources: ['rayleigh1896'], greatestKa: 0.2 },
);
