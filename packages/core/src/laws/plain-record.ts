/** Deep equality of plain records. */
export function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null) return Object.is(a, b);
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => same((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]));
}

/** What JSON loses of a record, or nothing. */
export function lostByJson(record: unknown): string | undefined {
  const text = JSON.stringify(record) as string | undefined;
  return text !== undefined && same(record, JSON.parse(text)) ? undefined : 'a field is lost or changed by JSON';
}

/** All records within a value, itself included, outer ones first, each with its own name. */
export function recordsIn(value: unknown, name = ''): readonly { name: string; record: Record<string, unknown> }[] {
  if (typeof value !== 'object' || value === null) return [];
  const record = value as Record<string, unknown>;
  return [{ name, record }, ...Object.entries(record).flatMap(([field, inner]) => recordsIn(inner, field))];
}
