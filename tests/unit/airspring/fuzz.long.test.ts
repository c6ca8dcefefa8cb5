import { readFileSync } from 'node:fs';
import { design } from 'airspring';
import { expect } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { reportText } from '../../../packages/airspring/src/words/report-text.js';
import { cases, fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };

const demo: Json = JSON.parse(
  readFileSync(new URL('../../../packages/airspring/briefs/whale-bench.json', import.meta.url), 'utf8'),
);

/** Every place in a value, the whole included. */
const placesOf = (value: Json, path: readonly string[] = []): string[][] => [
  [...path],
  ...(typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([name, part]) => placesOf(part, [...path, name]))
    : []),
];

/** A copy with one place changed; `undefined` takes it out. */
function put(value: Json, [name, ...rest]: readonly string[], to: Json | undefined): Json | undefined {
  if (name === undefined) return to;
  // A list has places only, not names: JSON holds no other.
  if (typeof value !== 'object' || value === null || (Array.isArray(value) && !/^\d{1,3}$/.test(name))) return value;
  const copy = Array.isArray(value) ? [...value] : { ...value };
  const record = copy as Record<string, Json>;
  const part = put(record[name] ?? null, rest, to);
  if (part !== undefined) record[name] = part;
  else if (Array.isArray(copy)) copy.splice(Number(name), 1);
  else delete record[name];
  return copy;
}

const odd = fc.oneof(
  fc.constantFrom<Json>(
    null,
    true,
    '',
    ' ',
    '0 mm',
    '-3 mm',
    '1e999 mm',
    '1e-300 mm',
    'NaN mm',
    '12 constructor',
    '1,5 L',
    0,
    -1,
    1e308,
    [],
    {},
  ),
  fc.jsonValue() as fc.Arbitrary<Json>,
  fc.string(),
);
/** What a reader accepts now and then: numbers of any size in every unit. */
const quantity = fc
  .tuple(
    fc.double({ min: -6, max: 6, noNaN: true }),
    fc.constantFrom('mm', 'L', 'Hz', 'dB', 'V', 'A', 'Ω', 'W', 'm/s', 'cm²', 'mH', '%', '°C'),
  )
  .map(([power, unit]) => `${Number((10 ** power).toPrecision(3))} ${unit}`);

const places = placesOf(demo);
const change = fc.oneof(
  fc.record({ place: fc.constantFrom(...places), to: fc.constant(undefined) }),
  fc.record({ place: fc.constantFrom(...places), to: fc.oneof(odd, quantity) }),
  fc.record({ place: fc.tuple(fc.constantFrom(...places), fc.string()).map(([p, name]) => [...p, name]), to: odd }),
);
const brokenBrief = (least: number, most: number) =>
  fc
    .array(change, { minLength: least, maxLength: most })
    .map((changes) => changes.reduce<Json>((value, { place, to }) => put(value, place, to) ?? null, demo));

/** Its value, or the refusal with a path, a got and a remedy for each fault; any other exception fails the test. */
function valueOrRefusal<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    expect(error).toMatchObject({ name: 'InputError', code: 'airspring-input' });
    const { faults } = error as { faults: Record<string, unknown>[] };
    expect(faults.length).toBeGreaterThan(0);
    for (const fault of faults) {
      expect(fault).toMatchObject({
        path: expect.stringMatching(/./),
        expected: expect.stringMatching(/./),
        remedy: expect.stringMatching(/[.?]$/),
      });
    }
    return undefined;
  }
}

test.prop([fc.oneof(brokenBrief(1, 6), odd)], { numRuns: 4 * fuzzRuns })(
  'a broken brief is read, or refused with its faults',
  (brief) => {
    valueOrRefusal(() => readBrief(brief, standard));
  },
);

// A whole design takes about a second: few of them, and of briefs that are whole but odd.
const sizes = fc.record({
  place: fc.constantFrom(
    ...places.filter(
      (place) => place.length === 2 && ['space', 'wanted', 'amplifier', 'vent'].includes(place[0] ?? ''),
    ),
  ),
  factor: fc.constantFrom(0.01, 0.2, 0.5, 1.5, 4, 100),
});
/** Its vents have few diameters and no bends, so that a search is short. */
const few = [
  ['vent', 'smallest', '55 mm'] as const,
  ['vent', 'largest', '75 mm'] as const,
  ['vent', 'bends', 0] as const,
  ['wanted', 'lowest', '36 Hz'] as const,
].reduce<Json>((value, [section, field, to]) => put(value, [section, field], to) as Json, demo);
const scaled = fc.array(sizes, { minLength: 1, maxLength: 2 }).map((list) =>
  list.reduce<Json>((value, { place, factor }) => {
    const text = place.reduce<unknown>((part, name) => (part as Record<string, unknown>)[name], value);
    if (typeof text !== 'string') return value;
    const [digits, unit] = text.split(' ');
    return put(value, place, `${Number((Number(digits) * factor).toPrecision(4))} ${unit}`) ?? null;
  }, few),
);

test.prop([scaled], { numRuns: cases(12) })(
  'a strange brief is answered or refused, and its answer can be printed and sent',
  (brief) => {
    if (valueOrRefusal(() => readBrief(brief, standard)) === undefined) return;
    // What was read is answered: a refusal from inside would name fields that no reader wrote.
    const answer = design(brief);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    const report = reportText(answer);
    expect(report).not.toMatch(/undefined|NaN|Infinity/);
    for (const line of report.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  },
  120_000,
);
