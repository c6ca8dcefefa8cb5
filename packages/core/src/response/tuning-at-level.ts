import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { boundedMinimum, bracketedRoot, type ComplexColumn } from '../numeric/index.js';
import {
  type AirSpeedPeak,
  decimalText,
  type Frequency,
  type FrequencyInput,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { probeIndex } from './compile.js';
import { type Extremum, tops } from './extremum.js';
import { refuseFallingLoss } from './falling-loss.js';
import { compileVentAtLevel } from './vent-at-level.js';

/** One vent, or several alike. */
export interface TuningAtLevelOptions {
  readonly driveVoltageRms: VoltageRmsInput;
  /** What the vent loses by the speed of its air, such as one of the three losses of `ventLoss`. */
  readonly loss: FlowLoss;
  /** Where the tuning is looked for; default 5 to 200 Hz. */
  readonly from?: FrequencyInput;
  readonly to?: FrequencyInput;
}

/** The resonance of vent and box. */
export interface BoxResonance {
  /** Where the air in the vent lags a quarter of a period behind the cone. */
  readonly fb: Frequency;
  /** Quality factor of everything that the box loses there; left out where it loses nothing. */
  readonly Q?: number;
  readonly airSpeedPeak: AirSpeedPeak;
  /** The dip of the impedance next to it; left out where there is none. */
  readonly leastImpedance?: Extremum;
}

/** The resonance without the loss of the vent and with it, at the same drive. */
export interface TuningAtLevel {
  readonly ok: true;
  readonly small: BoxResonance;
  readonly large: BoxResonance;
}

const shape = {
  driveVoltageRms: positive('voltageRms'),
  loss: flowLossField,
  from: optional(positive('frequency')),
  to: optional(positive('frequency')),
};

const POINTS = 400;
/** The relative step by which a slope is taken: its error is about the square of it. */
const STEP = 1e-4;
/** A box that loses less than rounding has no quality factor. */
const ROUNDING = 1e-9;
/** How far from the tuning a dip of the impedance is looked for, as a ratio. */
const NEAR = 2;

/** What a vent does at one frequency: its air over the cone, turned upside down, its speed and the impedance at the terminals. */
interface Told {
  readonly re: number;
  readonly im: number;
  readonly airSpeedPeak: number;
  readonly impedance: number;
}

/**
 * How the resonance of a vented box changes with level: where it is, its quality factor, and the dip of the impedance by which it is
 * measured. The flow of the vent over that of the cone tells of the box alone:
 *
 * $$ \frac{U_{cone}}{U_{vent}} = \kappa\left(1 - \frac{f^2}{f_b^2} + \frac{jf}{f_b Q}\right)\;\Rightarrow\;
 *    Q = \frac{f_b}{2}\left|\frac{d\,\mathrm{Re}/df}{\mathrm{Im}}\right|_{f_b},\qquad
 *    \frac1Q = \frac1{Q_{small}} + \frac{R(\hat u)}{2\pi f_b M} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_b$ | `fb` | Hz | tuning, at which the real part is zero |
 * | $Q$ | `Q` | 1 | quality factor of the box with its vent |
 * | $R$ | `loss` | Pa·s/m³ | what the vent loses at the speed that it has at $f_b$ |
 * | $M$ | | kg/m⁴ | mass of the vent |
 * | $\kappa$ | | 1 | a number that cancels |
 *
 * The last equation holds while both are weak. A leak and a loss that are strong together also raise the tuning, by
 * $\sqrt{1 + 1/(Q_{small} Q_R)}$ with $1/Q_R = R(\hat u)/(2\pi f_b M)$, and Q by the same factor: in a box whose small Q is below 1 the
 * loss can make the resonance sharper.
 *
 * Losses lower Q at once, and hardly move the tuning, as was measured (bezzola2020: the mass of vents is essentially a constant). The
 * dip of the impedance moves more, since it depends on the coil as well.
 *
 * @validity as `respondAtLevel`; one cone, or several alike, and one vent, or several alike
 * @neglects as `respondAtLevel`; that a jet takes mass from the end of a vent
 * @returns the resonance without the loss and with it, or `no-tuning` between `from` and `to`
 * @throws InputError those of `respondAtLevel`; `empty` for unlike cones
 * @source small1973vented1 the box of its leak and its vent; ingard1967 loss
 * @source bezzola2020 mass of vents at any level (abstract)
 * @example tuningAtLevel(box, { driveVoltageRms: '20 V', loss: ventLoss({ vent }).nominal }) // large.Q 3.9
 */
export function tuningAtLevel(system: System, options: TuningAtLevelOptions): TuningAtLevel | Impossible {
  const { driveVoltageRms, loss, from = 5, to = 200 } = readFields('options', options, shape);
  const ventAt = compileVentAtLevel(system);
  const grid = logarithmicGrid(from, to, POINTS);
  refuseFallingLoss(loss, grid, system.air);
  /** At some frequencies, with a resistance of the vent that is given, or that of the loss at the drive. */
  const toldAt = (frequencies: Float64Array, resistance?: number): Told[] => {
    const { probes, linear, resistanceAt, fill } = ventAt(frequencies);
    const [speed, cone, voltage, current] = ['ventAirSpeed', 'coneVelocity', 'terminalVoltage', 'current'].map((name) =>
      probeIndex(probes, name),
    ) as [number, number, number, number];
    const out = linear.map(({ re, im }): ComplexColumn => ({ re: re.slice(), im: im.slice() }));
    return Array.from(frequencies, (_, i): Told => {
      fill(i, resistance ?? resistanceAt(loss, i, driveVoltageRms), out);
      const [u, v] = [out[speed]!, out[cone]!];
      const [a, b, c, d] = [v.re[i]!, v.im[i]!, u.re[i]!, u.im[i]!];
      const square = c * c + d * d;
      const size = (k: number) => Math.hypot(out[k]!.re[i]!, out[k]!.im[i]!);
      return {
        re: (a * c + b * d) / square,
        im: (b * c - a * d) / square,
        airSpeedPeak: Math.SQRT2 * driveVoltageRms * Math.sqrt(square),
        impedance: size(voltage) / size(current),
      };
    });
  };
  const resonance = (isLossy: boolean): BoxResonance | undefined => {
    const none = isLossy ? undefined : 0;
    const one = (f: number, resistance = none): Told => toldAt(Float64Array.of(f), resistance)[0]!;
    const swept = toldAt(grid, none);
    const at = swept.findIndex(({ re }, i) => i > 0 && re > 0 !== swept[i - 1]!.re > 0);
    const found = at > 0 ? bracketedRoot((f) => one(f).re, grid[at - 1]!, grid[at]!, 1e-12 * grid[at]!) : undefined;
    if (!found?.ok) return undefined;
    const fb = found.x;
    const { im, airSpeedPeak } = one(fb);
    // The loss is held at what it is at the tuning: the slope is that of the box, not of its drive.
    const held = isLossy ? ventAt(Float64Array.of(fb)).resistanceAt(loss, 0, driveVoltageRms) : 0;
    const [below, above] = toldAt(Float64Array.of(fb * (1 - STEP), fb * (1 + STEP)), held) as [Told, Told];
    const turned = Math.abs(above.re - below.re) / (4 * STEP);
    const dips = tops(
      swept.map(({ impedance }) => impedance),
      -1,
    ).map((i) => ({ i, apart: Math.abs(Math.log(grid[i]! / fb)) }));
    const dip = dips.reduce((a, b) => (b.apart < a.apart ? b : a), { i: -1, apart: Math.log(NEAR) });
    const least = dip.i > 0 && boundedMinimum((f) => one(f).impedance, grid[dip.i - 1]!, grid[dip.i + 1]!);
    return {
      fb: si('frequency', fb),
      ...(Math.abs(im) > ROUNDING * turned && { Q: turned / Math.abs(im) }),
      airSpeedPeak: si('airSpeedPeak', airSpeedPeak),
      ...(least && { leastImpedance: { frequency: si('frequency', least.x), value: least.value } }),
    };
  };
  const small = resonance(false);
  const large = small && resonance(true);
  if (large) return { ok: true, small, large };
  return impossible(
    'no-tuning',
    `The vent tunes nothing between ${decimalText(from, 4)} and ${decimalText(to, 4)} Hz.`,
  );
}
