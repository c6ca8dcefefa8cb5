import { solveAlignment } from '@airspring/core/alignment';
import type { DrivenSpec, Family } from '@airspring/core/enclosure';
import type { Job } from '../job/job.js';
import type { Point, Variant } from './box-kind.js';

/**
 * How a variant answers questions about alignments: by the family that it names. The spec at a point gives its drivers and its
 * losses, and the alignment chooses the fields that the family leaves open; `pointOf` tells them as numbers of the search.
 */
export const alignsIn = <Spec extends DrivenSpec, Input>(
  family: Family<Spec, Input>,
  { air }: Pick<Job, 'air'>,
  spec: (point: Point) => Spec,
  pointOf: (spec: Spec) => Point,
): Required<Pick<Variant, 'align'>> => {
  const chosen = (family.unknowns ?? []).map(({ field }) => field);
  return {
    align: (alignment, at, keep) => {
      // What the shape leaves open is kept as it is at the point.
      const count = chosen.length + (alignment.free === undefined ? 0 : 1);
      const open = new Set(keep && count === alignment.order ? chosen.slice(1) : chosen);
      const known = Object.fromEntries(Object.entries(spec(at)).filter(([field]) => !open.has(field)));
      const found = solveAlignment(alignment, family, known as Partial<Input> & Pick<Spec, 'drivers'>, { air });
      return found.ok ? { ...found, point: pointOf(found.system.spec) } : found;
    },
  };
};
