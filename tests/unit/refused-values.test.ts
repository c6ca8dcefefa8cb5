/** What is left out, or is nothing of its kind, is refused with words by whatever takes it. */
import { approximationErrors, boxesThatSuit, chebyshev, fixedAt, nearestAlignments } from '@airspring/core/alignment';
import { flanged, flared, withNeighbours } from '@airspring/core/duct';
import { totalQ, ventedBox } from '@airspring/core/enclosure';
import { greatestGradient } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { pathsOf } from '../refusal/faults.js';
import { driver, vented } from './laws/boxes.js';

const box = ventedBox(vented);
const nothing = undefined as never;

test.each<[string, string, (value: never) => unknown]>([
  ['totalQ', 'spec', (value) => totalQ(value, 1)],
  ['approximationErrors', 'approximation', (value) => approximationErrors(value)],
  ['fixedAt, alignment', 'alignment', (value) => fixedAt(value, {})],
  ['fixedAt, parameters', 'parameters', (value) => fixedAt(chebyshev(4), value)],
  ['flared', 'flare', (value) => flared(value)],
  ['withNeighbours, end', 'end', (value) => withNeighbours(value, [])],
  ['withNeighbours, distances', 'distances', (value) => withNeighbours(flanged, value)],
  ['nearestAlignments', 'alignments', (value) => nearestAlignments(box, value)],
  ['boxesThatSuit', 'candidates', (value) => boxesThatSuit(driver, value)],
])('%s refuses undefined and a number at %s', (_, path, call) => {
  expect(pathsOf(() => call(nothing))).toEqual([path]);
  expect(pathsOf(() => call(5 as never))).toEqual([path]);
});

test('fields and ends of flares that are missing are refused at their own path', () => {
  expect(pathsOf(() => flared({ radius: '20 mm', end: 5 as never }))).toEqual(['flare.end']);
  expect(pathsOf(() => flared({} as never))).toEqual(['flare.radius']);
  expect(pathsOf(() => greatestGradient(box, nothing))).toEqual(['band.from', 'band.to']);
});
