import { expect, test } from 'vitest';
import { jsonPlaces, placeOfPath } from '../../../docs-site/src/json-places.js';
import { whaleBench } from './brief.js';

const text = '{\n  "a": { "b": [1, "x, y: {"], "c": {} },\n  "drivers": [\n    { "Qts": 0.36 }, []\n  ]\n}\n';
const said = (path: string) => {
  const { line, from, to } = placeOfPath(jsonPlaces(text), path);
  return [line, text.slice(from, to)];
};

test('a path leads to its name and value', () => {
  expect(said('a.b[1]')).toEqual([2, '"x, y: {"']);
  expect(said('a.c')).toEqual([2, '"c": {']);
  expect(said('drivers[0].Qts')).toEqual([4, '"Qts": 0.36']);
  expect(said('drivers')).toEqual([3, '"drivers": [']);
});

test('what is not there leads to what is around it', () => {
  expect(said('drivers[0].fs')).toEqual([4, '{']);
  expect(said('drivers[7].fs')).toEqual([3, '"drivers": [']);
  expect(said('wanted.level')).toEqual([1, '{']);
});

test('every leaf of a real brief is found', () => {
  const written = JSON.stringify(whaleBench, null, 1);
  const places = jsonPlaces(written);
  const visit = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) {
      const { from, to } = places.get(path) as { from: number; to: number };
      expect(written.slice(from, to), path).toContain(JSON.stringify(value));
      return;
    }
    for (const [key, inner] of Object.entries(value)) {
      visit(inner, Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`);
    }
  };
  visit(whaleBench, '');
});
