import type { Fault } from '@airspring/core/fault';
import type * as v from 'valibot';
import type { Job, Written } from '../job/job.js';

/** Fields that a kind of box adds to the brief: section → field → schema. A section may also be one schema, such as a list. */
export type Fields = Readonly<Record<string, v.GenericSchema | Readonly<Record<string, v.GenericSchema>>>>;

/** What a brief must know of a kind of box: its name, its fields, and which of its fields can contradict each other. */
export interface BriefPart<F extends Fields = Fields> {
  /** As `box.kinds` names it. */
  readonly name: string;
  /** It is tried only where `box.kinds` names it. A brief with a field that only such kinds use must name one of them. */
  readonly byName?: true;
  /** It can be built in a space that is no cuboid: its parts have `driverLayout` and `interiorIn`, and stand on the front by default. */
  readonly shaped?: true;
  readonly fields: F;
  /** Faults between fields that are each right by themselves. Values are quoted as written. */
  readonly across?: (written: Written, read: Partial<Job['sections']>) => readonly Fault[];
}

type Together<U> = (U extends unknown ? (one: U) => void : never) extends (all: infer I) => void ? I : never;
type Section<F> = F extends v.GenericSchema
  ? F
  : F extends v.ObjectEntries
    ? v.StrictObjectSchema<F, undefined>
    : never;
type Sections<F, As extends 'input' | 'output'> = {
  readonly [Name in keyof F]?: As extends 'input' ? v.InferInput<Section<F[Name]>> : v.InferOutput<Section<F[Name]>>;
};

/** What a brief may say in the fields of these kinds, as it is written. */
export type WrittenFields<Parts extends readonly BriefPart[]> = Together<Sections<Parts[number]['fields'], 'input'>>;

/** The sections of one kind, read into SI units. */
export type ReadFields<F extends Fields> = Sections<F, 'output'>;
