/** The road of the textbooks for a box with passive radiators: the response as polynomials over the normalised frequency. */
import { type PassiveRadiatorBoxSpec, passiveRadiatorBox, type System } from '@airspring/core/enclosure';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { type Complex, over, plus, times } from '../complex.js';
import { fs, paperAir, physical, split } from './textbook.js';

export interface RadiatorRow {
  readonly Qts: number;
  /** Tuning over fs of the driver. */
  readonly h: number;
  /** Compliance of the driver over that of the box. */
  readonly alpha: number;
  /** Compliance of the radiators over that of the box. */
  readonly delta: number;
  /** Quality factor of the radiators at their resonance; default 2·10⁶: as good as none. */
  readonly Qmp?: number;
  /** Quality factor of the leaks at the tuning; 0 stands for none. */
  readonly QL?: number;
}

const [Vas, Sd, Re] = [0.06, 0.033, 5.6];

/** The box of a row, with so many radiators of free size: neither changes the shape of a response. */
export function radiatorBoxOf(
  { Qts, h, alpha, delta, Qmp = 2e6, QL = 0 }: RadiatorRow,
  { count = 1, area = 0.045 } = {},
): System<PassiveRadiatorBoxSpec> {
  const netVolume = si('volume', Vas / alpha);
  const radiator = {
    Sd: si('coneArea', area),
    fs: si('frequency', (h * fs) / Math.sqrt(1 + delta)),
    Vas: si('volume', (delta * netVolume) / count),
    Qms: Qmp,
    sheetAir: paperAir,
  };
  const drivers = physical({ fs, ...split(Qts), Vas, Sd, Re }, paperAir);
  return passiveRadiatorBox({ drivers, netVolume, radiator, count, ...(QL > 0 && { QL }) }, paperAir);
}

/**
 * p/p∞ = s²P / (D(P + δ') + α'P), with D = s² + s/Qts + 1, P = s²/p² + s/(pQmp) + 1, p = h/√(1 + δ), δ' and α' the compliance
 * ratios times L = s/(s + h/QL), by which a leak makes the spring of the air yield, the numerator times L too.
 */
export function textbookFlow(row: RadiatorRow, frequencies: ArrayLike<number>): ComplexColumn {
  const { Qts, h, alpha, delta, Qmp = 2e6, QL = 0 } = row;
  const p = h / Math.sqrt(1 + delta);
  const out = complexColumn(frequencies.length);
  const { Bl, Mms } = physical({ fs, ...split(Qts), Vas, Sd, Re }, paperAir);
  for (let i = 0; i < frequencies.length; i++) {
    const x = frequencies[i]! / fs;
    const D: Complex = [1 - x * x, x / Qts];
    const P: Complex = [1 - (x / p) ** 2, x / (p * Qmp)];
    const L: Complex = QL > 0 ? over([0, x], [h / QL, x]) : [1, 0];
    const below = plus(times(D, plus(P, times([delta, 0], L))), times([alpha, 0], times(L, P)));
    const response = over(times([-x * x, 0], times(L, P)), below);
    // The flow is pressure over jω: far above all resonances the cone is held by its mass alone.
    const [re, im] = over(times(response, [(Bl * Sd) / (Mms * Re), 0]), [0, 2 * Math.PI * x * fs]);
    out.re[i] = re;
    out.im[i] = im;
  }
  return out;
}
