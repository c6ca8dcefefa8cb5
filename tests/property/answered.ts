import { expect } from 'vitest';

/** Runs a door: its answer, or `undefined` when it refused by the one error of the library. Anything else is thrown on. */
export function answered<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if ((error as { name?: string }).name !== 'InputError') throw error;
    expect(error).toMatchObject({ code: 'airspring-input' });
    return undefined;
  }
}

/** Every number in a record, however deep, with its path. */
function numbersIn(value: unknown, path = ''): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[path, value]];
  if (ArrayBuffer.isView(value))
    return Array.from(value as Float64Array, (number, i) => [`${path}[${i}]`, number] as const);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) => numbersIn(part, `${path}.${name}`));
}

/** All of them are finite. */
export function allFinite(value: unknown): void {
  expect(numbersIn(value).filter(([, number]) => !Number.isFinite(number))).toEqual([]);
}
