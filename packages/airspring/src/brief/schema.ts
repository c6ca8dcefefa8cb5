import type { Alignment } from '@airspring/core/alignment';
import type { ShapeChoice } from '@airspring/core/space';
import * as v from 'valibot';
import { alignmentField, type WrittenAlignment } from './alignment.js';
import { standingDriverSchema } from './driver-fields.js';
import type { DriverModels } from './driver-models.js';
import type { BriefPart, WrittenFields } from './fields.js';
import { sectionsOf } from './kind-sections.js';
import { driversOf, sectionsWith } from './sections.js';
import { standardModels } from './standard-models.js';

/**
 * The schema of a brief for these kinds of box and these alignments. Types, checks and the JSON Schema for editors all come from it.
 *
 * @example v.parse(briefSchema(kinds, alignments), brief)
 */
export const briefSchema = (
  parts: readonly BriefPart[],
  alignments: readonly Alignment[],
  models: DriverModels = standardModels,
  shapes: readonly ShapeChoice[] = [],
) =>
  v.strictObject({
    ...sectionsWith(models, shapes),
    ...sectionsOf(parts),
    alignment: alignmentField(alignments),
  }) as unknown as v.GenericSchema<unknown, ReadBrief>;

/** The same with further sections, for an existing box. Such a brief needs no space for a new box. */
export const schemaWith = (
  parts: readonly BriefPart[],
  more: v.ObjectEntries,
  models: DriverModels = standardModels,
  shapes?: readonly ShapeChoice[],
) => {
  const sections = sectionsWith(models, shapes);
  return v.strictObject({
    ...sections,
    drivers: driversOf(standingDriverSchema(models)),
    space: v.exactOptional(sections.space),
    ...sectionsOf(parts),
    ...more,
  });
};

type Base = v.StrictObjectSchema<ReturnType<typeof sectionsWith>, undefined>;

/** A brief for boxes of these kinds, as it is written in a file. */
export type BriefFor<Parts extends readonly BriefPart[]> = v.InferInput<Base> & {
  readonly box?: { readonly kinds?: readonly string[] };
  readonly alignment?: WrittenAlignment;
} & WrittenFields<Parts>;

/** The same with every quantity read. It also holds the fields of kinds, which only their kind knows. */
export type ReadBrief = v.InferOutput<Base> & {
  readonly box?: { readonly kinds?: readonly string[] };
  readonly alignment?: WrittenAlignment;
};
