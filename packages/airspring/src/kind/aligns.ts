import { solveAlignment } from '@airspring/core/alignment';
import type { DrivenSpec, Family } from '@airspring/core/enclosure';
import type { Job } from '../job/job.js';
import type { Point, Variant } from './box-kind.js';

/**
 * How a variant answers questions about alignments: by the family that it names. The spec at a point gives its drivers and its
 * losses, and the alignment chooses the fields that the family leaves open.
 */
export const alignsIn = <Spec extends DrivenSpec, Input>(
  family: Family<Spec, Input>,
  { air }: Pick<Job, 'air'>,
  spec: (point: Point) => Spec,
): Required<Pick<Variant, 'align'>> => {
  const chosen = new Set((family.unknowns ?? []).map(({ field }) => field));
  return {
    align: (alignment, at) => {
      const known = Object.fromEntries(Object.entries(spec(at)).filter(([field]) => !chosen.has(field)));
      return solveAlignment(alignment, family, known as Partial<Input> & Pick<Spec, 'drivers'>, { air });
    },
  };
};
