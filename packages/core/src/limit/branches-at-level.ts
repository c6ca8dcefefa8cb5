import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { type Fault, InputError, refuse } from '../fault/index.js';
import { boundedMinimum, bracketedRoot, polynomialRoots } from '../numeric/index.js';
import { frequencyGrid, nested, optional, positive, readFields, type VoltageRmsInput } from '../quantity/index.js';
import { levelOfFlow, REFERENCE_PRESSURE } from '../response/level.js';
import { type Complex, type ConePort, conePorts, lossyConePorts, over, times } from './cone-port.js';
import { travelAverages } from './travel-averages.js';
import { type TravelCurve, travelCurveShape } from './travel-curve.js';

export interface BranchesOptions {
  readonly driveVoltageRms: VoltageRmsInput;
  /** The force factor over displacement; default that at rest everywhere. */
  readonly Bl?: TravelCurve;
  /** The stiffness of the suspension over displacement; default that at rest everywhere. */
  readonly stiffness?: TravelCurve;
  /** What the vent loses by the speed of its air; default nothing. Not for several unlike vents. */
  readonly loss?: FlowLoss;
}

/** One state in which a system can swing at a drive. */
export interface Branch {
  readonly displacementPeak: number;
  /** Through the coil. */
  readonly currentRms: number;
  /** Level of the fundamental at 1 m in half space, dB. */
  readonly levelHalfSpace: number;
  /** Whether a small disturbance dies away: more drive means more travel. A system does not stay on a branch that is not stable. */
  readonly stable: boolean;
}

/** Every state of a system at one frequency, the least travel first. */
export interface BranchesAtFrequency {
  readonly frequency: number;
  readonly branches: readonly Branch[];
  /** Whether a further one lies beyond the travel up to which the curves hold. */
  readonly beyond: boolean;
}

const curve = optional(nested(travelCurveShape));
const shape = { driveVoltageRms: positive('voltageRms'), Bl: curve, stiffness: curve, loss: optional(flowLossField) };

/** Steps of the scan over the travel; two states that lie within one of them are found by the turn between them. */
const STEPS = 400;

/**
 * Every state in which a system with a nonlinear driver can swing at a drive and a frequency. Where the suspension stiffens, a resonance
 * leans over, and a range of frequencies has three states: on a slow sweep the travel jumps at its ends, up at another place than down.
 *
 * $$ \hat e\,a = Z_e\left(\frac{\alpha}{Bl_c} + j\frac{\beta}{Bl_s}\right) + j\omega\hat x\,Bl_s,\qquad
 *    \alpha + j\beta = \hat x\,\bigl(j\omega Z_m + K_c - K_0\bigr) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\hat x$ | `displacementPeak` | m | peak of the travel, which is chosen; the drive then follows |
 * | $Bl_c, Bl_s$ | `Bl` | T·m | what the force factor comes to for a current in phase with the travel, and in quadrature |
 * | $K_c - K_0$ | `stiffness` | N/m | by how much the suspension is stiffer than at rest, in the fundamental |
 * | $Z_m$ | | N·s/m | force over velocity of the cone at rest, with everything that it moves; with `loss` at this travel |
 * | $Z_e, a$ | | Ω, 1 | impedance between source and motor, and the share of the source that acts there |
 *
 * The travel is scanned up to where the curves end, and each crossing of the drive is a state, as are the two of a pair that only touch
 * between steps. A linear driver has one. Where a vent loses by its speed, the travel tells the speed of its air, and so its resistance.
 *
 * @validity steady sines whose harmonics move the cone little; one driver, or several alike; `stable` tells of slow changes of the
 *   travel; only the shapes of the curves count: at rest the driver is that of the system
 * @neglects odd powers of the curves, which shift the mean of the travel; harmonics; Le over displacement; heat
 * @returns the states at each frequency
 * @throws InputError those of `respond`; `empty`, `not-finite`, `not-positive`, `out-of-range` for the curves, also for one that falls to
 *   zero before its end; `inconsistent` for unlike drivers, for a suspension over frequency with a curve, and for a loss
 *   where there is no vent, or several unlike ones
 * @source nayfeh1979 frequency response of a spring that stiffens (from memory); klippel2006 power series of Bl and stiffness
 * @example branchesAtLevel(box, [55], { driveVoltageRms: '20 V', stiffness: { coefficients: [1600, 0, 8e6], upTo: '12 mm' } })[0].branches
 */
export function branchesAtLevel(
  system: System,
  frequencies: ArrayLike<number>,
  options: BranchesOptions,
): readonly BranchesAtFrequency[] {
  const { driveVoltageRms, Bl: motor, stiffness: spring, loss } = readFields('options', options, shape);
  refuse([...unlessAboveZero('options.Bl', motor), ...unlessAboveZero('options.stiffness', spring)]);
  const grid = frequencyGrid(frequencies);
  const { Bl, at } = loss ? lossyConePorts(system, grid, loss) : conePorts(system, grid);
  const K0 = spring ? stiffnessAtRest(system) : 0;
  const unit = system.air.density / REFERENCE_PRESSURE;
  const upTo = Math.min(motor?.upTo ?? Infinity, spring?.upTo ?? Infinity);

  return Array.from(grid, (frequency, i): BranchesAtFrequency => {
    const omega = 2 * Math.PI * frequency;
    /** Current in the coil at a travel, and the drive that it takes; both rms. */
    const drivenBy = (peak: number) => {
      const force = averaged(motor, peak);
      const stiffer = K0 * (averaged(spring, peak).inPhase - 1);
      const port = at(i, omega * peak);
      const [Zr, Zi] = port.mechanical;
      const size = peak / Math.SQRT2;
      const current: Complex = [
        (size * (stiffer - omega * Zi)) / (Bl * force.inPhase),
        (size * omega * Zr) / (Bl * force.quadrature),
      ];
      const [re, im] = times(port.electrical, current);
      const drive = over([re, im + omega * size * Bl * force.quadrature], port.share);
      return { port, current: Math.hypot(...current), drive: Math.hypot(...drive) };
    };
    const excess = (peak: number) => drivenBy(peak).drive / driveVoltageRms - 1;
    const [most, steps] = upTo < Infinity ? [upTo, STEPS] : [pastOnly(excess), 1];
    const branches = crossings(excess, most, steps).map(({ x, rises }) => {
      const { port, current } = drivenBy(x);
      return branchOf(port, x, rises, current, frequency, unit);
    });
    return { frequency, branches, beyond: excess(most) < 0 };
  });
}

/** A travel above the only one. Without a curve and a loss the drive is in proportion to the travel. */
function pastOnly(excess: (peak: number) => number): number {
  let most = 2 / (excess(1) + 1);
  while (excess(most) < 0) most *= 2;
  return most;
}

const averaged = (one: { readonly coefficients: readonly number[] } | undefined, peak: number) =>
  travelAverages(one?.coefficients ?? [1], peak);

function branchOf(
  { flow }: ConePort,
  displacementPeak: number,
  stable: boolean,
  currentRms: number,
  frequency: number,
  unit: number,
): Branch {
  const velocity = Math.PI * Math.SQRT2 * frequency * displacementPeak;
  const levelHalfSpace = levelOfFlow(Math.hypot(...flow) * velocity * frequency, unit);
  return { displacementPeak, currentRms, levelHalfSpace, stable };
}

/** Every root of a function between 0, where it is below zero, and an end, and whether it rises there. */
function crossings(
  of: (x: number) => number,
  end: number,
  steps: number,
): readonly { readonly x: number; readonly rises: boolean }[] {
  const ends = Array.from({ length: steps + 1 }, (_, k) => (end * k) / steps);
  const values = ends.map(of);
  // An extremum between steps may lie on the other side.
  const points = ends.flatMap((x, k) => {
    const value = values[k]!;
    const [before, after] = [values[k - 1], values[k + 1]];
    const side = Math.sign(value);
    const isTurn =
      before !== undefined && after !== undefined && side * before > side * value && side * after > side * value;
    if (!isTurn) return [{ x, value }];
    const turn = boundedMinimum((at) => side * of(at), ends[k - 1]!, ends[k + 1]!).x;
    const found = { x: turn, value: of(turn) };
    return turn < x ? [found, { x, value }] : [{ x, value }, found];
  });
  return points.slice(1).flatMap(({ x, value }, k) => {
    const { x: from, value: start } = points[k]!;
    if (start < 0 === value < 0 || !(x > from)) return [];
    const root = bracketedRoot(of, from, x, 1e-15 * end);
    return root.ok ? [{ x: root.x, rises: value >= 0 }] : [];
  });
}

/** The stiffness of a suspension that does not depend on frequency. */
function stiffnessAtRest({ network, family }: System): number {
  const { Cms } = network.values;
  if (typeof Cms === 'number') return 1 / Cms;
  const remedy = 'Leave the curve out, or give a driver whose suspension is constant over frequency.';
  const expected = 'a driver with a constant Cms';
  throw new InputError([{ code: 'inconsistent', path: 'options.stiffness', got: family, expected, remedy }]);
}

/** A curve that falls to zero gives no force, or no spring. */
function unlessAboveZero(
  path: string,
  one: { readonly coefficients: readonly number[]; readonly upTo: number } | undefined,
): Fault[] {
  const scaled = one?.coefficients.map((value, k) => value * one.upTo ** k) ?? [];
  if (scaled.slice(1).every((value) => value === 0)) return [];
  const { re, im } = polynomialRoots(scaled);
  const zero = Array.from(re).find((x, k) => Math.abs(im[k]!) <= 1e-9 && Math.abs(x) <= 1);
  if (zero === undefined) return [];
  const got = `zero at ${(zero * one!.upTo * 1e3).toPrecision(3)} mm`;
  const expected = 'a curve that stays above zero from −upTo to upTo';
  return [{ code: 'not-positive', path: `${path}.coefficients`, got, expected, remedy: 'Shorten upTo.' }];
}
