import type { BoxKind } from './box-kind.js';
import { lineVariants } from './line.js';
import { acrossShapedLine, shapedLineFields } from './line-fields.js';
import { stepped } from './line-form.js';

/** The step is at the fold in the middle, or at either of those beside it. */
const forms = [
  stepped((channels) => channels >> 1),
  // With an even number of channels, this is the same.
  { ...stepped((channels) => (channels + 1) >> 1), folds: (folds: number) => folds > 0 && folds % 2 === 0 },
];

/** A driver in a line of two sections, closed at one end and open at the other, and folded in a box. */
export const steppedLine: BoxKind<typeof shapedLineFields> = {
  name: 'stepped-line',
  called: 'a box with a stepped line',
  byName: true,
  fields: shapedLineFields,
  across: acrossShapedLine('stepped-line', 'at least one fold, where its step is', (folds) => folds > 0),
  variants: (job, choice) => lineVariants(steppedLine, forms, job, choice),
};
