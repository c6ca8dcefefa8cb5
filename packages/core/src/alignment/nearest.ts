import type { System } from '../enclosure/index.js';
import { isInputError, refuse } from '../fault/index.js';
import { simplexMinimum } from '../numeric/index.js';
import { unlessList } from '../numeric/refusal.js';
import { frequencyGrid, si } from '../quantity/index.js';
import { cutoff, HALF_POWER, passband, referenceLevel, respond } from '../response/index.js';
import { type Alignment, isBandPass, isGoal, type ShapedAlignment } from './alignment.js';
import { aboutMean, bandOf, type Deviation, deviationOf } from './deviation.js';
import { judgeAlignment } from './refusals.js';
import { compileLevelOfTarget, type LevelOfTarget } from './target-level.js';

/** How near a response is to the shape of an alignment. */
export interface Nearness {
  readonly alignment: string;
  readonly parameters: Readonly<Record<string, number>>;
  /** The frequency at which the target lies nearest, Hz: the geometric mean of the magnitudes of its poles. */
  readonly frequency: number;
  readonly deviation: Deviation;
}

/** The frequency of a target is sought within this factor of the one at which it has the same f3. */
const FARTHEST = Math.log(2);
/** Where in the range of a parameter the search begins. */
const PARTS = [0.08, 0.35, 0.75] as const;

/** Where a target is half power down, by bisection from above; in the unit of the target. */
function cutoffOfTarget(levelOfTarget: LevelOfTarget, denominator: readonly number[]): number {
  let [low, high] = [0.01, 100];
  for (let turn = 0; turn < 40; turn++) {
    const middle = Math.sqrt(low * high);
    if (levelOfTarget(denominator, middle) < -HALF_POWER) low = middle;
    else high = middle;
  }
  return high;
}

/** The geometric mean of the magnitudes of the poles of a shape. */
const meanOf = (shape: readonly number[]): number => shape[0]! ** (1 / (shape.length - 1));

/** Where a response is looked at: at f3, and its level is counted from its asymptote; or in the middle of the band that it passes. */
function placeOf(system: System): { readonly middle: number; readonly top?: number } | undefined {
  const top = asymptoteOf(system);
  if (top !== undefined) {
    const f3 = cutoff(system);
    return f3.ok ? { middle: f3.frequency, top } : undefined;
  }
  const passed = passband(system, { to: si('frequency', HIGHEST) });
  if (!passed.ok || passed.lower === undefined || passed.upper === undefined) return undefined;
  return { middle: Math.sqrt(passed.lower * passed.upper) };
}

/** The level far above all corners, if it approaches one. */
function asymptoteOf(system: System): number | undefined {
  try {
    return referenceLevel(system);
  } catch (error) {
    if (!isInputError(error)) throw error;
    return undefined;
  }
}

/** Up to here the upper edge of a band-pass is sought, Hz. */
const HIGHEST = 1000;

/**
 * Which alignments a response comes near to, the nearest first: the root of the mean square of the difference in level, from half of
 * f3 to four times f3, at the frequency and the parameter that make it least. A band-pass is compared with band-pass shapes alone,
 * from half the middle of its band to twice it, and its level about the mean. Goals have no shape and are left out.
 *
 * $$ \min_{f_0, p} \sqrt{\tfrac{1}{n}\sum_i \bigl(L(f_i) - L_\infty - 20\log_{10}|G_p(f_i/f_0)|\bigr)^2} $$
 *
 * @validity systems whose level approaches a constant and that have an f3 up to 200 Hz, or that pass a band below 1 kHz
 * @neglects phase; zeros of the box, such as a notch
 * @returns one entry for each alignment with a polynomial; none where the system has no f3
 * @throws InputError `inconsistent`, `unsorted`, `not-finite`, and those of `referenceLevel`
 * @source own (least deviation)
 * @example nearestAlignments(system, [butterworth(4), quasiThirdOrder])[0].alignment
 */
export function nearestAlignments(system: System, alignments: readonly Alignment[]): readonly Nearness[] {
  refuse(unlessList('alignments', alignments, 'alignments'));
  refuse(alignments.flatMap((one, i) => judgeAlignment(one, `alignments[${i}]`)));
  const found = placeOf(system);
  if (found === undefined) return [];
  const { middle: reach, top } = found;
  const passes = top === undefined;
  const band = bandOf(reach, passes);
  const { levelHalfSpace } = respond(system, frequencyGrid(band), { driveVoltageRms: si('voltageRms', 1) });
  const got = levelHalfSpace.map((level) => level - (top ?? 0));
  const levelOfTarget = compileLevelOfTarget();
  const differences = new Float64Array(band.length);
  const near = ({ name, target, parameters, free, order, orderBelow = order }: ShapedAlignment): Nearness => {
    const at = ([logarithm, parameter = 0]: readonly number[]): Deviation => {
      const denominator = target(parameter);
      const unit = 1 / Math.exp(logarithm!);
      for (let i = 0; i < band.length; i++) {
        differences[i] = got[i]! - levelOfTarget(denominator, band[i]! * unit, orderBelow);
      }
      if (passes) aboutMean(differences);
      return deviationOf(differences, band);
    };
    const starts = free === undefined ? [[]] : PARTS.map((part) => [free.from + part * (free.to - free.from)]);
    const found = starts.map((parameter) => {
      const shape = target(parameter[0] ?? 0);
      const middle = Math.log(reach / (passes ? 1 / meanOf(shape) : cutoffOfTarget(levelOfTarget, shape)));
      return simplexMinimum(
        (place) => at(place).rms,
        [middle, ...parameter],
        free === undefined ? [middle - FARTHEST] : [middle - FARTHEST, free.from],
        free === undefined ? [middle + FARTHEST] : [middle + FARTHEST, free.to],
      );
    });
    const { x } = found.reduce((best, one) => (one.value < best.value ? one : best));
    const shape = target(x[1] ?? 0);
    const told = free === undefined ? parameters : { ...parameters, ...free.told(x[1]!) };
    const frequency = Math.exp(x[0]!) * meanOf(shape);
    return { alignment: name, parameters: told, frequency, deviation: at(x) };
  };
  return alignments
    .flatMap((one) => (isGoal(one.target) || isBandPass(one) !== passes ? [] : [near(one as ShapedAlignment)]))
    .sort((a, b) => a.deviation.rms - b.deviation.rms);
}
