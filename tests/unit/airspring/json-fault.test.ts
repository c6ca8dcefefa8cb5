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
  const says = `this is not JSON; expected ${expected}`;
  expect(jsonFault(text)).toEqual({ code: 'not-json', line, column, says });
});

test.each([
  ['{\n  "a": 1,\n  "a": 2\n}', 3, 3, '"a" is repeated here; it is already in line 2'],
  ['{"a": {"b": 1, "\\u0062": 2}}', 1, 16, '"b" is repeated here; it is already in line 1'],
  ['{"\\u001b": 1, "\\u001b": 1}', 1, 15, '"\\u001b" is repeated here; it is already in line 1'],
])('a name that stands twice in one record: %j', (text, line, column, says) => {
  expect(jsonFault(text)).toEqual({ code: 'repeated-name', line, column, says });
});

test('a name may stand in two records, and what is not JSON is told before what stands twice', () => {
  expect(jsonFault('[{"a": {"a": 1}}, {"a": 2}]')).toBeUndefined();
  expect(jsonFault('{"a": 1, "a": 2')?.code).toBe('not-json');
});

test.each([
  ['nine megabytes of letters', `{"title": "${'x'.repeat(9e6)}"`],
  ['nine megabytes of escapes', `{"title": "${'\\n'.repeat(4.5e6)}"`],
  ['a million open lists', '['.repeat(1e6)],
  ['a million open records', '{"a":'.repeat(1e6)],
  ['a million names', `{${Array.from({ length: 1e6 }, (_, i) => `"${i}":1`).join()}`],
  ['nine million lines', `[${'\n'.repeat(9e6)}`],
])('%s have their place as well', (_, text) => {
  expect(jsonFault(text)?.code).toBe('not-json');
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
    expect(jsonFault(text)?.code !== 'not-json').toBe(isJson(text));
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
