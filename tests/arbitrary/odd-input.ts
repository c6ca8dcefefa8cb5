/** Lengths as people write them, and inputs of which one place holds something that nobody should write. */
import * as fc from 'fast-check';

/** Lengths between two, in mm, as texts. */
export const lengthOf = (least: number, most: number): fc.Arbitrary<string> =>
  fc
    .double({ min: Math.log(least), max: Math.log(most), noNaN: true })
    .map((x) => `${Number(Math.exp(x).toPrecision(4))} mm`);

export const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined, freq: 2 });

/** No length, or one of any size. */
const odd: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    undefined,
    null,
    true,
    '',
    '0 mm',
    '-3 mm',
    '1e999 mm',
    '1e-300 mm',
    '3 kg',
    0,
    -1,
    1e308,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    [],
    {},
    () => 1,
  ),
  fc.double({ min: -9, max: 5, noNaN: true }).map((x) => `${10 ** x} mm`),
);

/** A copy of records and lists without fields that are undefined, and a setter for each place in it. */
function copied(value: unknown, places: ((to: unknown) => void)[]): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const copy = (Array.isArray(value) ? [] : {}) as Record<string, unknown>;
  for (const [name, part] of Object.entries(value)) {
    if (part === undefined) continue;
    copy[name] = copied(part, places);
    places.push((to) => {
      copy[name] = to;
    });
  }
  return copy;
}

/** Inputs whose fields may be undefined, then left out. In one of four cases one place holds something odd. */
export const oddly = <T>(input: fc.Arbitrary<T>): fc.Arbitrary<never> =>
  fc.tuple(input, fc.nat(), fc.nat({ max: 3 }), odd).map(([value, place, chance, to]) => {
    const places: ((to: unknown) => void)[] = [];
    const copy = copied(value, places);
    if (chance === 0) places[place % Math.max(1, places.length)]?.(to);
    return copy as never;
  });

/** What no text of ours holds. */
export const noNumber: RegExp = /NaN|Infinity|undefined|\[object/;
