import { type Fault, InputError } from '../fault/index.js';
import type { Kind, Quantity } from './quantity.js';
import { readInto, type Sign } from './read.js';

/** How one field of a record is read. Reading returns the value, or adds faults to the list and returns `undefined`. */
export interface Field<T> {
  readonly optional: boolean;
  readonly read: (faults: Fault[], value: unknown, path: string) => T | undefined;
}

/** A field that may be left out. */
export type OptionalField<T> = Field<T> & { readonly optional: true };

/** For each field name, how the field is read. */
export type Shape = Readonly<Record<string, Field<unknown>>>;

type Value<F> = F extends Field<infer T> ? T : never;
type OptionalKeys<S extends Shape> = { [K in keyof S]: S[K] extends OptionalField<unknown> ? K : never }[keyof S];

/** The record that a shape reads. */
export type Fields<S extends Shape> = { readonly [K in Exclude<keyof S, OptionalKeys<S>>]: Value<S[K]> } & {
  readonly [K in OptionalKeys<S>]?: Value<S[K]>;
};

const quantity =
  (sign: Sign) =>
  <K extends Kind>(kind: K): Field<Quantity<K>> => ({
    optional: false,
    read: (faults, value, path) => readInto(faults, kind, value, path, sign),
  });

/** A quantity above zero. */
export const positive = quantity('positive');
/** A quantity of zero or more. */
export const notNegative = quantity('not-negative');
/** A quantity of any sign. */
export const anySign = quantity('any');

/** A whole number from 1 to `most`. */
export const count = (most: number): Field<number> => ({
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= most) return value;
    const remedy = 'Give a whole number.';
    const code = typeof value !== 'number' || Number.isFinite(value) ? 'out-of-range' : 'not-finite';
    faults.push({ code, path, got: value, expected: `a whole number from 1 to ${most}`, remedy });
    return undefined;
  },
});

/** One of the given words. */
export const oneOf = <T extends string>(...words: readonly T[]): Field<T> => ({
  optional: false,
  read: (faults, value, path) => {
    if (words.includes(value as T)) return value as T;
    const expected = `one of ${words.join(', ')}`;
    faults.push({ code: 'unknown-field', path, got: value, expected, remedy: 'Choose one of them.' });
    return undefined;
  },
});

/** A value that is used unchecked, such as a function or a record that was read before. */
export const given = <T>(): Field<T> => ({ optional: false, read: (_faults, value) => value as T });

/** A record inside a record. */
export const nested = <S extends Shape>(shape: S): Field<Fields<S>> => ({
  optional: false,
  read: (faults, value, path) => readFieldsInto(faults, path, value, shape),
});

/** The same field, but it may be left out. */
export const optional = <T>(field: Field<T>): OptionalField<T> => ({ ...field, optional: true });

/**
 * Reads a record without throwing. Returns `undefined` when any field was refused. A field whose value is `undefined` counts
 * as left out, whatever its name.
 */
export function readFieldsInto<S extends Shape>(
  faults: Fault[],
  path: string,
  input: unknown,
  shape: S,
): Fields<S> | undefined {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    const expected = `a record with ${Object.keys(shape).join(', ')}`;
    faults.push({ code: 'empty', path: path || 'input', got: input, expected, remedy: 'Give the record.' });
    return undefined;
  }
  const before = faults.length;
  const record: Record<string, unknown> = {};
  const within = (name: string) => (path === '' ? name : `${path}.${name}`);
  for (const [name, value] of Object.entries(input)) {
    if (value !== undefined && !Object.hasOwn(shape, name)) {
      const expected = `one of ${Object.keys(shape).join(', ')}`;
      faults.push({ code: 'unknown-field', path: within(name), got: name, expected, remedy: 'Remove it.' });
    }
  }
  for (const [name, field] of Object.entries(shape)) {
    const value = Object.hasOwn(input, name) ? (input as Record<string, unknown>)[name] : undefined;
    const at = within(name);
    if (value !== undefined) {
      const got = field.read(faults, value, at);
      if (got !== undefined) record[name] = got;
    } else if (!field.optional) {
      faults.push({ code: 'empty', path: at, got: undefined, expected: 'a value', remedy: 'Give the field.' });
    }
  }
  return faults.length === before ? (record as Fields<S>) : undefined;
}

/**
 * Reads a record of quantities by a shape. All faults of all fields are reported at once, including unknown fields.
 *
 * @throws InputError
 * @example readFields('vent', { diameter: '62 mm' }, { diameter: positive('length') }) // { diameter: 0.062 }
 */
export function readFields<S extends Shape>(path: string, input: object, shape: S): Fields<S> {
  const faults: Fault[] = [];
  const record = readFieldsInto(faults, path, input, shape);
  if (record === undefined) throw new InputError(faults);
  return record;
}
