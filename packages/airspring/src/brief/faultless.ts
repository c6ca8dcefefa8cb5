/** What was read, without what has a fault: anything may be missing, and in a list a place may be empty. */
export type Faultless<T> = T extends string | number | boolean
  ? T
  : T extends readonly (infer Item)[]
    ? readonly (Faultless<Item> | undefined)[]
    : { readonly [Name in keyof T]?: Faultless<NonNullable<T[Name]>> };

/** A copy without what stands at a path. */
function without(value: unknown, [key, ...rest]: readonly PropertyKey[]): unknown {
  if (key === undefined || typeof value !== 'object' || value === null) return undefined;
  if (Array.isArray(value)) return value.map((item, i) => (i === key ? without(item, rest) : item));
  const { [key]: part, ...others } = value as Record<PropertyKey, unknown>;
  const left = without(part, rest);
  return left === undefined ? others : { ...others, [key]: left };
}

/** A copy without what stands at any of these paths. */
export const faultlessOf = <T>(value: T, faulty: readonly (readonly PropertyKey[])[]): Faultless<T> =>
  (faulty.reduce<unknown>(without, value) ?? {}) as Faultless<T>;
