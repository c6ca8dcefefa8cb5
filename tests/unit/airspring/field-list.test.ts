import { briefFields, fieldsText, standardAlignments } from 'airspring';
import * as v from 'valibot';
import { expect, test } from 'vitest';
import { alignmentField } from '../../../packages/airspring/src/brief/alignment.js';
import { schemaAt } from '../../../packages/airspring/src/brief/path.js';
import { schemaWith } from '../../../packages/airspring/src/brief/schema.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { standingFields } from '../../../packages/airspring/src/standing/fields.js';

const fields = briefFields();
const schema = schemaWith(standard, {
  ...standingFields,
  alignment: alignmentField(standardAlignments),
}) as unknown as v.GenericSchema;
const keys = (path: string) =>
  path.split('.').flatMap((part) => (part.endsWith('[]') ? [part.slice(0, -2), 0] : [part]));

test('every field of the schema is there, of new boxes, of boxes that stand, and of the workshop', () => {
  const paths = fields.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
  for (const path of [
    'drivers[].fs',
    'drivers[].wirings[].series',
    'space.exactly',
    'wanted.safeFrom',
    'amplifier.filter.corner',
    'box.tuning',
    'radiators[].greatestAddedMass',
    'standing.vents[].place.up',
    'workshop.pipes[].inner',
  ])
    expect(paths).toContain(path);
});

test.each(fields.map(({ path }) => path))('%s says what it is, what it takes, and an example that is taken', (path) => {
  const field = fields.find((one) => one.path === path)!;
  expect(field.what).toMatch(/^\S.*\S$/s);
  if (/^a (record|list)/.test(field.takes) && field.example === undefined) return;
  expect(v.safeParse(schemaAt(schema, keys(path))!, field.example).issues).toBeUndefined();
  if (field.units && field.example !== 'full')
    expect(field.units.some((unit) => String(field.example).endsWith(unit))).toBe(true);
});

test('a range is in the unit of the bound, and a default is told apart from what the field is', () => {
  const thickness = fields.find(({ path }) => path === 'vent.wall');
  expect(thickness).toMatchObject({
    range: '0.1 to 200 mm',
    default: '3 mm',
    what: 'wall thickness of the tube, rounded up to whole lines of workshop.nozzle where that is given',
  });
  expect(fields.find(({ path }) => path === 'space.width')?.needed).toBe(true);
  expect(fields.find(({ path }) => path === 'space.volume')?.needed).toBe(false);
});

/** The number of an example; all examples compared here are in one unit. */
const exampled = (path: string) => Number.parseFloat(String(fields.find((one) => one.path === path)?.example));

test('examples that stand beside each other agree with each other, and with what is built', () => {
  for (const [less, more] of [
    ['workshop.pipes[].inner', 'workshop.pipes[].outer'],
    ['vent.wall', 'vent.collar'],
    ['vent.collar', 'vent.smallest'],
    ['vent.smallest', 'vent.largest'],
    ['slot.smallest', 'slot.largest'],
    ['flare.inner', 'vent.smallest'],
  ] as const)
    expect(exampled(less), `${less} and ${more}`).toBeLessThan(exampled(more));
  const [lower, higher] = fields.find(({ path }) => path === 'standing.measured.peaks')!.example as string[];
  expect(Number.parseFloat(lower!)).toBeLessThan(Number.parseFloat(higher!));
  // Those of the medium are near to the standard air.
  expect(exampled('air.viscosity')).toBeCloseTo(1.82e-5, 6);
  expect(exampled('air.specificHeat')).toBeCloseTo(1005, -1);
  expect(exampled('air.thermalConductivity')).toBeCloseTo(0.026, 3);
});

test('what counts only for a box that stands says so', () => {
  const pipes = fields.find(({ path }) => path === 'workshop.pipes')?.what;
  expect(pipes).toContain('count for a box that stands, not for a new one');
});

test('the printed list fits in 80 columns', () => {
  const text = fieldsText(fields);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  expect(text).toContain('wanted.level\n');
});

test('what a field is stands in plain words: pages and terminals show no marks of a markup', () => {
  expect(briefFields().filter(({ what, default: byDefault = '' }) => /[`*]/.test(what + byDefault))).toEqual([]);
});
