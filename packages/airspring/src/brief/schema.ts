import * as v from 'valibot';
import type { BriefPart, WrittenFields } from './fields.js';
import { sectionsOf } from './kind-sections.js';
import { sections } from './sections.js';

/**
 * The schema of a brief for these kinds of box. Types, checks and the JSON Schema for editors all come from it.
 *
 * @example v.parse(briefSchema(kinds), brief)
 */
export const briefSchema = (parts: readonly BriefPart[]) =>
  v.strictObject({ ...sections, ...sectionsOf(parts) }) as unknown as v.GenericSchema<unknown, ReadBrief>;

/** The same with further sections, for an existing box. Such a brief needs no space for a new box. */
export const schemaWith = (parts: readonly BriefPart[], more: v.ObjectEntries) =>
  v.strictObject({ ...sections, space: v.exactOptional(sections.space), ...sectionsOf(parts), ...more });

const base = v.strictObject(sections);

/** A brief for boxes of these kinds, as it is written in a file. */
export type BriefFor<Parts extends readonly BriefPart[]> = v.InferInput<typeof base> & {
  readonly box?: { readonly kinds?: readonly string[] };
} & WrittenFields<Parts>;

/** The same with every quantity read. It also holds the fields of kinds, which only their kind knows. */
export type ReadBrief = v.InferOutput<typeof base> & { readonly box?: { readonly kinds?: readonly string[] } };
