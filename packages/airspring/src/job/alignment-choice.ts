import type { Alignment } from '@airspring/core/alignment';

/** An alignment that a brief may name. */
export interface AlignmentChoice extends Alignment {
  /**
   * The alignment of this name with parameters that a brief states. It refuses those that it cannot have, at a path that ends with the
   * name of the parameter. Left out, a brief may state what the driver would decide.
   */
  readonly made?: (parameters: Readonly<Record<string, number>>) => Alignment;
  /** Its parameters with their ranges, for people, where a box may need some of them: 'Q from 0.1 to 3'. */
  readonly takes?: string;
}
