import type { Air } from '../air/index.js';
import type { DrivenSpec, Family } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { simplexMinimum } from '../numeric/index.js';
import { isBandPass, type ShapedAlignment } from './alignment.js';
import { bandOf, type ComparedBand, type Deviation, deviationOf, differences, multiplesOf } from './deviation.js';
import type { ShapeRoot } from './roots.js';
import type { ShapedBox } from './shaped-box.js';
import { canBeBuilt, fill, type Sought, trialOf } from './unknowns.js';

/** How far the search may go from the box that would be exact without coil and vent losses: a factor for each number. */
const FARTHEST = Math.log(4);

/**
 * What is to be small of the differences of level over a band, dB. The name says it in reports. One of your own is used
 * like {@link rootMeanSquare}.
 */
export interface Norm {
  readonly name: string;
  readonly of: (deviation: Deviation) => number;
}

/** The root of the mean square of the differences. */
export const rootMeanSquare: Norm = { name: 'rms', of: ({ rms }) => rms };
/** The greatest difference. */
export const greatestDifference: Norm = { name: 'greatest', of: ({ greatest }) => greatest };

/** A box near a root, and how far its whole response is from the target. */
export interface Fitted<Spec> {
  readonly root: ShapeRoot<Spec>;
  readonly deviation: Deviation;
}

/**
 * Compares the whole response of a box, coil and all losses included, with its target. `fit` then moves the numbers that were
 * sought, and the frequency of the target, until the norm of the differences is least. It is for boxes that cannot have the
 * shape of a polynomial: with a coil, or with losses in the vent.
 */
export function leastDeviation<Spec extends DrivenSpec>(
  alignment: ShapedAlignment,
  family: Family<Spec, never>,
  shape: ShapedBox,
  box: ShapedBox,
  sought: readonly Sought<Spec>[],
  spec: Spec,
  air: Air,
  norm: Norm,
  compared?: ComparedBand,
): { readonly told: (root: ShapeRoot<Spec>) => Fitted<Spec>; readonly fit: (root: ShapeRoot<Spec>) => Fitted<Spec> } {
  const judged = (deviation: Deviation): number => {
    const value = norm.of(deviation);
    if (!Number.isNaN(value) || Number.isNaN(deviation.rms)) return value;
    const expected = `a number from the norm ${norm.name}`;
    throw new InputError([{ code: 'not-finite', path: 'options.norm', got: value, expected, remedy: 'Correct it.' }]);
  };
  const { free } = alignment;
  const multiples = compared && multiplesOf(compared);
  const compare = differences(alignment, family, spec, air, shape, box);
  // The band goes with the target: in a fixed one, a target far above it would be compared by its slope alone.
  const told = (root: ShapeRoot<Spec>): Fitted<Spec> => {
    const band = bandOf(root.frequency, isBandPass(alignment), multiples);
    const parameter = free === undefined ? 0 : root.place[sought.length]!;
    return { root, deviation: deviationOf(compare(root.spec, parameter, root.frequency, band), band) };
  };
  const fit = (root: ShapeRoot<Spec>): Fitted<Spec> => {
    const placed = (x: readonly number[]): ShapeRoot<Spec> => ({
      spec: fill(sought, trialOf(spec), (i) => Math.exp(x[i]!)),
      place: Float64Array.from(x.slice(0, -1)),
      frequency: Math.exp(x.at(-1)!),
    });
    const start = [...root.place, Math.log(root.frequency)];
    const bounds = start.map((x, i): readonly [number, number] =>
      free !== undefined && i === sought.length ? [free.from, free.to] : [x - FARTHEST, x + FARTHEST],
    );
    const { x } = simplexMinimum(
      (trial) => {
        const one = placed(trial);
        return canBeBuilt(sought, one.spec) ? judged(told(one).deviation) : Infinity;
      },
      start,
      bounds.map(([low]) => low),
      bounds.map(([, high]) => high),
    );
    return told(placed(x));
  };
  return { told, fit };
}
