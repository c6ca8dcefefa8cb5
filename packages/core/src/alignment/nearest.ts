import type { System } from '../enclosure/index.js';
import { refuse } from '../fault/index.js';
import { simplexMinimum } from '../numeric/index.js';
import { frequencyGrid, si } from '../quantity/index.js';
import { cutoff, HALF_POWER, referenceLevel, respond } from '../response/index.js';
import { type Alignment, isGoal, type TargetPolynomial } from './alignment.js';
import { bandOf, type Deviation, deviationOf } from './deviation.js';
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

/**
 * Which alignments a response comes near to, the nearest first: the root of the mean square of the difference in level, from half of
 * f3 to four times f3, at the frequency and the parameter that make it least. Goals have no shape and are left out.
 *
 * $$ \min_{f_0, p} \sqrt{\tfrac{1}{n}\sum_i \bigl(L(f_i) - L_\infty - 20\log_{10}|G_p(f_i/f_0)|\bigr)^2} $$
 *
 * @validity systems whose level approaches a constant and that have an f3
 * @neglects phase
 * @returns one entry for each alignment with a polynomial; none where the system has no f3
 * @throws InputError `inconsistent`, `unsorted`, `not-finite`, and those of `referenceLevel`
 * @source own (least deviation)
 * @example nearestAlignments(system, [butterworth(4), quasiThirdOrder])[0].alignment
 */
export function nearestAlignments(system: System, alignments: readonly Alignment[]): readonly Nearness[] {
  refuse(alignments.flatMap((one, i) => judgeAlignment(one, `alignments[${i}]`)));
  const f3 = cutoff(system);
  if (!f3.ok) return [];
  const band = bandOf(f3.frequency);
  const { levelHalfSpace } = respond(system, frequencyGrid(band), { driveVoltageRms: si('voltageRms', 1) });
  const top = referenceLevel(system);
  const got = levelHalfSpace.map((level) => level - top);
  const levelOfTarget = compileLevelOfTarget();
  const differences = new Float64Array(band.length);
  const near = ({ name, target, parameters, free }: Alignment & { readonly target: TargetPolynomial }): Nearness => {
    const at = ([logarithm, parameter = 0]: readonly number[]): Deviation => {
      const denominator = target(parameter);
      const unit = 1 / Math.exp(logarithm!);
      for (let i = 0; i < band.length; i++) {
        differences[i] = got[i]! - levelOfTarget(denominator, band[i]! * unit);
      }
      return deviationOf(differences, band);
    };
    const starts = free === undefined ? [[]] : PARTS.map((part) => [free.from + part * (free.to - free.from)]);
    const found = starts.map((parameter) => {
      const middle = Math.log(f3.frequency / cutoffOfTarget(levelOfTarget, target(parameter[0] ?? 0)));
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
    const frequency = Math.exp(x[0]!) * shape[0]! ** (1 / (shape.length - 1));
    return { alignment: name, parameters: told, frequency, deviation: at(x) };
  };
  return alignments
    .flatMap((one) => (isGoal(one.target) ? [] : [near(one as Alignment & { readonly target: TargetPolynomial })]))
    .sort((a, b) => a.deviation.rms - b.deviation.rms);
}
