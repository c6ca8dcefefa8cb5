import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { jsonFault } from '../../../packages/airspring/src/command/json-fault.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';

test.each([
  ['', 1, 1, 'a value'],
  ['{"a": 1,}', 1, 9, 'a name in double quotes'],
  ['{\n  "a": 1\n  "b": 2\n}', 3, 3, '"," or "}"'],
  ['["ä", "no end]', 1, 7, 'a value'],
  ['[1, 2', 1, 6, '"," or "]"'],
  ["{'a': 1}", 1, 2, 'a name in double quotes or "}"'],
  ['{"a" 1}', 1, 6, '":" after the name'],
  ['{} {}', 1, 4, 'nothing more'],
  ['[01]', 1, 3, '"," or "]"'],
])('%j', (text, line, column, expected) => {
  expect(jsonFault(text)).toEqual({ line, column, expected });
});

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

/** JSON with one letter put in, taken out or put twice. */
const mutated = fc
  .tuple(
    fc.json(),
    fc.nat(),
    fc.constantFrom('', ',', '"', '{', '}', '[', ']', ':', '1', 'e', '-', '.', '\\', '\n', '\u0001'),
  )
  .map(([text, at, letter]) => {
    const cut = at % (text.length + 1);
    return text.slice(0, cut) + letter + text.slice(letter === '' ? cut + 1 : cut);
  });

property.prop([fc.oneof(mutated, fc.json(), fc.string())], { numRuns: 10 * fuzzRuns })(
  'finds a fault exactly where the engine refuses',
  (text) => {
    expect(jsonFault(text) === undefined).toBe(isJson(text));
  },
);

property.prop([fc.json(), fc.nat()], { numRuns: fuzzRuns })(
  'never before the place where a text is cut',
  (text, at) => {
    const cut = text.slice(0, at % (text.length + 1));
    fc.pre(!isJson(cut));
    const fault = jsonFault(cut);
    expect(fault).toBeDefined();
    // What stands before the place can be gone on with: it is a start of the whole text.
    expect(text.startsWith([...cut].slice(0, (fault?.column ?? 1) - 1).join(''))).toBe(true);
  },
);
