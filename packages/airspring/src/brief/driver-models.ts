import type { CoilModel, Driver, SuspensionModel } from '@airspring/core/driver';
import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';

/** Fields that a model is made of, and the model. Fields are made with `quantity` and `plainNumber`. */
interface Choice<F extends v.ObjectEntries, Model> {
  /** The key that asks for it in a brief: `coil: { lossyInductance: { … } }`. */
  readonly name: string;
  /** What it is, in words. */
  readonly what: string;
  readonly fields: F;
  /** The model of the fields, read into SI units, for a driver that is complete without it. */
  model(fields: v.InferOutput<v.StrictObjectSchema<F, undefined>>, driver: Driver): Model;
}

/** A coil model as a brief may ask for it. */
export type CoilChoice<F extends v.ObjectEntries = v.ObjectEntries> = Choice<F, CoilModel>;

/** A suspension model as a brief may ask for it. */
export type SuspensionChoice<F extends v.ObjectEntries = v.ObjectEntries> = Choice<F, SuspensionModel>;

/** The models of coils and suspensions that briefs may ask for. */
export interface DriverModels {
  readonly coils: readonly CoilChoice[];
  readonly suspensions: readonly SuspensionChoice[];
}

/** A model in a brief: one key, its name, and its fields. */
export type WrittenModel = Readonly<Record<string, Readonly<Record<string, string | number | boolean>>>>;

/** One record of which one field is given: the name of a model, with its fields. */
export function modelField(choices: readonly Choice<v.ObjectEntries, unknown>[], what: string) {
  const entries = choices.map(({ name, what: one, fields }): [string, v.GenericSchema] => [
    name,
    v.exactOptional(v.pipe(v.strictObject(fields), v.description(one))),
  ]);
  const names = choices.map(({ name }) => name).join(', ');
  const schema = v.pipe(
    v.strictObject(Object.fromEntries(entries)),
    v.minEntries(1, `empty\none of ${names}\nGive one, or leave the field out.`),
    v.maxEntries(1, `conflict\nonly one of ${names}\nKeep one of them.`),
    v.description(what),
  );
  return schema as unknown as v.GenericSchema<WrittenModel, Readonly<Record<string, object>>>;
}

/** The model that a brief asks for; `undefined` where it asks for none, or where one of its fields has a fault. */
export function modelOf<Model>(
  choices: readonly Choice<v.ObjectEntries, Model>[],
  read: Readonly<Record<string, object | undefined>> | undefined,
  written: WrittenModel | undefined,
  path: string,
): { readonly make: (driver: Driver) => Model; readonly told: (fault: Fault) => Fault } | undefined {
  const [name, fields] = Object.entries(read ?? {})[0] ?? [];
  const choice = choices.find((one) => one.name === name);
  if (choice === undefined || typeof fields !== 'object') return undefined;
  const asked = Object.keys(written?.[choice.name] ?? {});
  const needed = Object.entries(choice.fields).flatMap(([field, { type }]) =>
    type === 'exact_optional' ? [] : [field],
  );
  if (![...asked, ...needed].every((field) => Object.hasOwn(fields, field))) return undefined;
  return {
    make: (driver) => choice.model(fields as never, driver),
    told: (fault) => ({ ...fault, path: `${path}.${name}${fault.path.replace(/^[^.]*/, '')}` }),
  };
}
