import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import type { BoxKind, Variant } from './box-kind.js';
import { onFront } from './front-alone.js';
import { acrossLine, lineFields, type shapedLineFields } from './line-fields.js';
import { type LineForm, uniform } from './line-form.js';
import { lineVariant } from './line-variant.js';

/** One variant for each number of folds, each form and each place that a brief allows. */
export function lineVariants(kind: BoxKind, forms: readonly LineForm[], job: Job, choice: DriverChoice): Variant[] {
  const { line = {} } = job.sections as ReadFields<typeof shapedLineFields>;
  // Its first channel lies behind the front.
  const front = onFront(choice);
  if (front === undefined) return [];
  const all = [...new Set(line.folds ?? [0, 1, 2, 3])].flatMap((folds) =>
    forms
      .filter((form) => form.folds(folds))
      .flatMap((form) =>
        (line.driverAt ?? [undefined]).flatMap((driverAt) =>
          (line.openAt ?? [1]).map((openAt) => ({
            kind,
            form,
            folds,
            ...(driverAt !== undefined && { driverAt }),
            openAt,
          })),
        ),
      ),
  );
  // Several drivers stand around the middle of the first channel.
  const placed = choice.drivers.fronts === 1 ? all : all.filter(({ driverAt }) => driverAt === undefined);
  return placed.map((one) => lineVariant(job, front, one));
}

/** A driver in a line: a pipe of one section, closed at one end and open at the other, and folded in a box. */
export const foldedLine: BoxKind<typeof lineFields> = {
  name: 'line',
  called: 'a box with a line',
  byName: true,
  fields: lineFields,
  across: acrossLine('line'),
  variants: (job, choice) => lineVariants(foldedLine, [uniform], job, choice),
};
