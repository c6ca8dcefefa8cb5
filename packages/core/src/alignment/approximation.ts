import { ventedFamily } from '../enclosure/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { linear } from '../numeric/index.js';
import type { Alignment } from './alignment.js';
import { chebyshev } from './chebyshev.js';
import { type DriverRow, driversFor } from './drivers-for.js';
import { quasiThirdOrder } from './quasi-third-order.js';

/** Numbers of a vented box as multiples of Vas and fs. */
export interface VentedNumbers {
  readonly volume: number;
  readonly tuning: number;
  readonly f3: number;
}

/** A published rule that gives the vented box of a driver from its total quality factor alone. */
export interface VentedApproximation {
  readonly name: string;
  /** The total quality factors that it was published for. */
  readonly Qts: readonly [from: number, to: number];
  readonly of: (Qts: number) => VentedNumbers;
  /** Keys of the bibliography. */
  readonly sources: readonly string[];
}

/**
 * The power laws of Margolis and Small, made for pocket calculators and for a QL of about 7.
 *
 * $$ V_b = 15\,Q_{ts}^{2.87}\,V_{as}, \quad f_b = 0.42\,Q_{ts}^{-0.9}\,f_s, \quad f_3 = 0.26\,Q_{ts}^{-1.4}\,f_s $$
 *
 * @validity Qts of 0.2 to 0.6, the range in which it is compared here
 * @neglects losses other than a QL of about 7
 * @source margolis1981 the laws as a lecture tells them; the print was not seen
 * @example margolisSmall.of(0.35).volume // 0.737
 */
export const margolisSmall: VentedApproximation = {
  name: 'Margolis and Small',
  Qts: [0.2, 0.6],
  of: (Qts) => ({ volume: 15 * Qts ** 2.87, tuning: 0.42 * Qts ** -0.9, f3: 0.26 * Qts ** -1.4 }),
  sources: ['margolis1981'],
};

/** The exact box, and by which fraction of it an approximation is off. */
export interface ApproximationError {
  readonly Qts: number;
  /** QB3 below the quality factor of B4, C4 above it. */
  readonly alignment: string;
  readonly exact: VentedNumbers;
  readonly error: VentedNumbers;
}

function judgeApproximation(got: VentedApproximation | undefined): Fault[] {
  if (typeof got?.of === 'function' && Array.isArray(got.Qts)) return [];
  const expected = 'an approximation, such as margolisSmall';
  return [{ code: 'inconsistent', path: 'approximation', got, expected, remedy: 'Give a record with of and Qts.' }];
}

/**
 * How far an approximation is from the exact boxes of QB3, B4 and C4, which it stands for.
 *
 * @validity as `driversFor`
 * @neglects as `driversFor`
 * @returns one row for each total quality factor that an alignment takes; default nine over the range of the approximation
 * @throws InputError `inconsistent` for what is no approximation; for a QL that is not positive
 * @source small1973vented1 QB3, B4 and C4
 * @example approximationErrors(margolisSmall)[0].error.volume // 0.15
 */
export function approximationErrors(
  approximation: VentedApproximation,
  QL = 7,
  Qts?: ArrayLike<number>,
): readonly ApproximationError[] {
  refuse(judgeApproximation(approximation));
  const {
    of,
    Qts: [from, to],
  } = approximation;
  const rowOf = (alignment: Alignment, Q: number): DriverRow | undefined => {
    const found = driversFor(alignment, ventedFamily, { QL }, [Q]);
    return found.ok ? found.rows[0] : undefined;
  };
  return Array.from(Qts ?? linear(from, to, 9)).flatMap((Q) => {
    const droopy = rowOf(quasiThirdOrder, Q);
    const row = droopy ?? rowOf(chebyshev(4), Q);
    if (row === undefined) return [];
    const { box, f3 } = row;
    const { netVolume: volume, fb: tuning } = box;
    if (volume === undefined || tuning === undefined || f3 === undefined) return [];
    const told = of(Q);
    return {
      Qts: Q,
      alignment: droopy === undefined ? 'C4' : 'QB3',
      exact: { volume, tuning, f3 },
      error: { volume: told.volume / volume - 1, tuning: told.tuning / tuning - 1, f3: told.f3 / f3 - 1 },
    };
  });
}
