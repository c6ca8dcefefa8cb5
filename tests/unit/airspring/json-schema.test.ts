import { readdirSync, readFileSync } from 'node:fs';
import { briefJsonSchema, design } from 'airspring';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';

const briefs = new URL('../../../packages/airspring/briefs/', import.meta.url);
const briefOf = (name: string) => JSON.parse(readFileSync(new URL(name, briefs), 'utf8'));
const validate = new Ajv({ allErrors: true }).compile(briefJsonSchema());

test.each(readdirSync(briefs))('a validator and our reader accept %s', (name) => {
  validate(briefOf(name));
  expect(validate.errors).toBeNull();
  expect(() => readBrief(briefOf(name))).not.toThrow();
});

// biome-ignore lint/suspicious/noExplicitAny: a brief broken on purpose has no type
type Broken = Record<string, any>;
const broken: readonly [string, path: string, (brief: Broken) => void][] = [
  ['a quantity without a unit', 'space.width', (b) => (b.space.width = '480')],
  ['a unit of another kind', 'space.width', (b) => (b.space.width = '480 Hz')],
  ['a unit with a letter more', 'amplifier.voltage', (b) => (b.amplifier.voltage = '25 Volt')],
  ['two blanks', 'space.depth', (b) => (b.space.depth = '420  mm')],
  ['a hexadecimal number', 'space.depth', (b) => (b.space.depth = '0x1A mm')],
  ['a number for a quantity', 'wanted.level', (b) => (b.wanted.level = 92)],
  ['a quantity for a number', 'drivers[0].Qts', (b) => (b.drivers[0].Qts = '0.36')],
  ['a number out of range', 'drivers[0].Qts', (b) => (b.drivers[0].Qts = 0)],
  ['half a bend', 'vent.bends', (b) => (b.vent.bends = 0.5)],
  ['an unknown field', 'vent.colour', (b) => (b.vent.colour = 'red')],
  ['an unknown face', 'vent.faces[0]', (b) => (b.vent.faces = ['inside'])],
  ['an empty list', 'drivers', (b) => (b.drivers = [])],
  ['a missing field', 'wanted.lowest', (b) => delete b.wanted.lowest],
  ['a missing section', 'amplifier', (b) => delete b.amplifier],
  ['another version', 'version', (b) => (b.version = 2)],
  ['an empty title', 'title', (b) => (b.title = '')],
];

test.each(broken)('both refuse %s', (_, path, change) => {
  const brief = briefOf('whale-bench.json');
  change(brief);
  expect(validate(brief)).toBe(false);
  expect(() => design(brief)).toThrowError(
    expect.objectContaining({
      code: 'airspring-input',
      faults: expect.arrayContaining([expect.objectContaining({ path })]),
    }),
  );
});

test('a quantity says its units, and what it stands for', () => {
  const { properties } = briefJsonSchema() as { properties: { space: { properties: { width: object } } } };
  expect(properties.space.properties.width).toMatchObject({
    title: 'length: a number, one space, and one of m, mm, cm, in, ft',
    description: 'outside, at most',
    pattern: expect.stringContaining('(m|mm|cm|in|ft)$'),
  });
});
