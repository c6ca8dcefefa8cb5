import { expect, test } from 'vitest';
import { plainJson } from '../../../packages/airspring/src/command/json-fault.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test as property } from '../../arbitrary/property.js';

const jsonFault = (text: string) => {
  const plain = plainJson(text);
  return plain.ok ? undefined : plain.fault;
};

test.each([
  ['', 1, 1, 'a value'],
  ['{"a": 1,,}', 1, 9, 'a name in double quotes'],
  ['{\n  "a": 1\n  "b": 2\n}', 3, 3, '"," or the closing bracket'],
  ['["ä", "no end]', 1, 7, 'the closing quote of this text in its line'],
  ['[1, 2', 1, 6, '"," or "]"'],
  ['{"a": 1', 1, 8, '"," or "}"'],
  ["{'a': 1}", 1, 2, 'a name in double quotes'],
  ['{"a" 1}', 1, 6, '":" after the name'],
  ['{"a": yes}', 1, 7, 'a value'],
  ['{} {}', 1, 4, 'nothing more'],
  ['[01]', 1, 3, '"," or the closing bracket'],
  ['{"a": 1 /* no end }', 1, 9, 'the end of this comment, */'],
  ['["\\x"]', 1, 2, 'a known letter after each backslash of this text'],
  ['["\u0001"]', 1, 2, 'no control character in this text'],
  ['[1.]', 1, 2, 'the other digits of this number'],
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

test.each([
  ['{"a": 1,}', '{"a": 1 }'],
  ['[1, 2, ]', '[1, 2  ]'],
  ['{"a": [1,],}', '{"a": [1 ] }'],
  ['{ // one\n"a": /* two\nlines */ 1}', '{       \n"a":       \n         1}'],
  ['["//", "/* */", ",]"]', '["//", "/* */", ",]"]'],
  ['[1, // last\n]', '[1         \n]'],
])('comments and commas before a closing bracket become blanks, and nothing else moves: %j', (text, plain) => {
  expect(plainJson(text)).toEqual({ ok: true, text: plain });
  expect(() => JSON.parse(plain)).not.toThrow();
});

test('a name of every record is kept, the one that JavaScript treats apart too', () => {
  const plain = plainJson('{"__proto__": {"a": 1}, // note\n}');
  expect(Object.keys(JSON.parse(plain.ok ? plain.text : ''))).toEqual(['__proto__']);
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
  ['two hundred thousand names', `{${Array.from({ length: 2e5 }, (_, i) => `"${i}":1`).join()}`],
  ['three million lines', `[${'\n'.repeat(3e6)}`],
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
  'takes what the engine takes, and besides it only comments and commas',
  (text) => {
    const plain = plainJson(text);
    if (isJson(text)) expect(plain.ok ? plain.text : plain.fault.code).toBe(plain.ok ? text : 'repeated-name');
    else if (plain.ok) {
      expect(text).toMatch(/,\s*[}\]]|\/[/*]/);
      expect(isJson(plain.text)).toBe(true);
      expect(plain.text.length).toBe(text.length);
    }
  },
);

property.prop([fc.json(), fc.nat()], { numRuns: fuzzRuns })(
  'a text that is cut short is never taken, unless it was whole before',
  (text, at) => {
    const cut = text.slice(0, at % (text.length + 1));
    fc.pre(!isJson(cut));
    expect(jsonFault(cut)?.code).toBe('not-json');
  },
);
