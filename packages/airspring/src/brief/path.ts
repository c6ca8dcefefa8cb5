import type * as v from 'valibot';

export type Path = readonly PropertyKey[];

const plainName = /^[\p{L}_$][\p{L}\p{N}_$]*$/u;

/** A path as people write it: `drivers[0].Qts`. Names that are not plain words are quoted. */
export const pathText = (path: Path): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    const name = String(key);
    if (name.length > 200 || !plainName.test(name)) return `${text}[${JSON.stringify(name)}]`;
    return text === '' ? name : `${text}.${name}`;
  }, '') || 'brief';

/** The value at a path of any value; `undefined` where there is none. */
export const valueAt = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null && Object.hasOwn(at, key) ? at[key as never] : undefined),
    value,
  );

/** The keys of a path that {@link pathText} or core has written. */
export const keysOf = (path: string): Path =>
  [...path.matchAll(/\[(\d+)\]|([^.[\]]+)/g)].map(([, place, name]) =>
    place === undefined ? (name as string) : Number(place),
  );

/** The parts of a schema that can be walked. */
interface Walkable {
  readonly entries?: Readonly<Record<string, v.GenericSchema>>;
  readonly item?: v.GenericSchema;
  readonly wrapped?: v.GenericSchema;
  /** Of a union. */
  readonly options?: readonly unknown[];
}

/** The record among the choices of a union; the schema itself where it is no union of records. */
const recordOf = (schema: v.GenericSchema): Walkable =>
  ((schema as Walkable).options?.find((one) => (one as Walkable).entries !== undefined) ?? schema) as Walkable;

/** The schema at a path, without its mark as optional; `undefined` where the schema has no such place. */
export function schemaAt(schema: v.GenericSchema, path: Path): v.GenericSchema | undefined {
  const { wrapped } = schema as Walkable;
  if (wrapped !== undefined) return schemaAt(wrapped, path);
  const [key, ...rest] = path;
  if (key === undefined) return schema;
  const { entries, item } = recordOf(schema);
  const next =
    typeof key === 'number' ? item : entries && Object.hasOwn(entries, key) ? entries[key as string] : undefined;
  return next && schemaAt(next, rest);
}

/** The names of the fields of a record of the schema. */
export const fieldsAt = (schema: v.GenericSchema, path: Path): readonly string[] =>
  [schemaAt(schema, path)].flatMap((at) => Object.keys((at && recordOf(at).entries) ?? {}));
