import type { InputError } from '@airspring/core/fault';
import { count, nested, notNegative, oneOf, optional, positive, readFields } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

const shape = {
  diameter: positive('length'),
  wall: optional(notNegative('length')),
  count: optional(count(3)),
  end: optional(oneOf('round', 'flat')),
  bend: optional(nested({ radius: positive('length') })),
};
const faults = (input: object) =>
  faultsOf(() => readFields('vent', input, shape)).map(({ code, path }) => `${code} ${path}`);

test('reads every field to SI, and leaves out what was left out', () => {
  expect(readFields('vent', { diameter: '62 mm', count: 2, bend: { radius: '8 cm' } }, shape)).toEqual({
    diameter: 0.062,
    count: 2,
    bend: { radius: 0.08 },
  });
});
test('tells every fault at once, unknown fields first, then shallow paths', () => {
  expect(faults({ wall: '-1 mm', count: 4, end: 'square', bend: { radius: 'x', colour: 1 }, length: 1 })).toEqual([
    'unknown-field vent.length',
    'unknown-field vent.end',
    'unknown-field vent.bend.colour',
    'empty vent.diameter',
    'not-positive vent.wall',
    'out-of-range vent.count',
    'unit vent.bend.radius',
  ]);
});
test('inherited names are no fields', () => {
  expect(faults(Object.create({ diameter: '62 mm' }))).toEqual(['empty vent.diameter']);
  expect(faults({ diameter: '62 mm', constructor: 1 })).toEqual(['unknown-field vent.constructor']);
});
test('a list is no record', () => {
  expect(faults([])).toEqual(['empty vent']);
});
test('a field that is undefined is one left out, known or not', () => {
  expect(readFields('vent', { diameter: '62 mm', wall: undefined, bend: undefined, length: undefined }, shape)).toEqual(
    {
      diameter: 0.062,
    },
  );
  expect(faults({ diameter: undefined })).toEqual(['empty vent.diameter']);
});
test('without a name of the record a path is the name of the field', () => {
  try {
    readFields('', { colour: 1 }, shape);
    expect.unreachable();
  } catch (error) {
    expect((error as InputError).faults.map(({ path }) => path)).toEqual(['colour', 'diameter']);
  }
});
