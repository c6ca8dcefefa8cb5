import { type Alignment, solveAlignment } from '@airspring/core/alignment';
import type { DrivenSpec, Family } from '@airspring/core/enclosure';
import type { Job } from '../job/job.js';
import type { AlignedPoint, Variant } from './box-kind.js';
import type { Point } from './point.js';

/** Boxes of alignments that were solved already, by the numbers that they were solved for. */
export type SolvedBoxes = Map<Alignment, Map<string, AlignedPoint>>;

/**
 * How a variant answers questions about alignments: by the family that it names. The spec at a point gives its drivers and its
 * losses, and the alignment chooses the fields that the family leaves open; `pointOf` tells them as numbers of the search. Variants
 * of the same drivers may share what was `solved`, if their specs differ in numbers alone.
 */
export const alignsIn = <Spec extends DrivenSpec, Input>(
  family: Family<Spec, Input>,
  { air }: Pick<Job, 'air'>,
  spec: (point: Point) => Spec,
  pointOf: (spec: Spec) => Point,
  solved?: SolvedBoxes,
): Required<Pick<Variant, 'align'>> => {
  const chosen = (family.unknowns ?? []).map(({ field }) => field);
  return {
    align: (alignment, at, keep) => {
      // What the shape leaves open is kept as it is at the point.
      const count = chosen.length + (alignment.free === undefined ? 0 : 1);
      const open = new Set(keep && count === alignment.order ? chosen.slice(1) : chosen);
      const known = Object.fromEntries(Object.entries(spec(at)).filter(([field]) => !open.has(field)));
      const { drivers: _, ...numbers } = known;
      const key = JSON.stringify(numbers);
      const boxes = solved?.get(alignment) ?? new Map<string, AlignedPoint>();
      const before = boxes.get(key);
      if (before !== undefined) return before;
      const found = solveAlignment(alignment, family, known as Partial<Input> & Pick<Spec, 'drivers'>, { air });
      const box = found.ok ? { ...found, point: pointOf(found.system.spec) } : found;
      solved?.set(alignment, boxes.set(key, box));
      return box;
    },
  };
};
