/** Deep equality of plain records. */
export function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null) return Object.is(a, b);
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => same((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]));
}

/** Says that JSON loses or changes a field; `undefined` when it does not. */
export function lostByJson(record: unknown): string | undefined {
  const text = JSON.stringify(record) as string | undefined;
  return text !== undefined && same(record, JSON.parse(text)) ? undefined : 'JSON loses or changes a field';
}

/** All records within a value, including the value itself, outer ones first, each with its name. */
export function recordsIn(value: unknown, name = ''): readonly { name: string; record: Record<string, unknown> }[] {
  if (typeof value !== 'object' || value === null) return [];
  const record = value as Record<string, unknown>;
  return [{ name, record }, ...Object.entries(record).flatMap(([field, inner]) => recordsIn(inner, field))];
}
