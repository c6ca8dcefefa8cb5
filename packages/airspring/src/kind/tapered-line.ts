import type { BoxKind } from './box-kind.js';
import { lineVariants } from './line.js';
import { acrossShapedLine, shapedLineFields } from './line-fields.js';
import { tapered } from './line-form.js';

/** A driver in a line whose section changes evenly, closed at one end and open at the other, and folded in a box by slanting boards. */
export const taperedLine: BoxKind<typeof shapedLineFields> = {
  name: 'tapered-line',
  called: 'a box with a tapered line',
  byName: true,
  fields: shapedLineFields,
  across: acrossShapedLine(
    'tapered-line',
    'an odd number of folds, so that its boards end in a cuboid',
    (folds) => folds % 2 === 1,
  ),
  variants: (job, choice) => lineVariants(taperedLine, [tapered], job, choice),
};
