import { group } from '@airspring/core/driver';
import { faultLine, InputError, impossible, isInputError, refuse, visible } from '@airspring/core/fault';
import { expect, test } from 'vitest';

const fault = { code: 'unit', path: 'a.b', got: '24 mm', expected: 'a volume', remedy: 'Write litres.' } as const;

test('an error carries data, and words only in its message', () => {
  const error = new InputError([fault, { ...fault, path: 'a', got: NaN }]);
  expect(error.name).toBe('InputError');
  expect(error.code).toBe('airspring-input');
  expect(error.faults.map(({ path }) => path)).toEqual(['a', 'a.b']);
  expect(error.message).toBe(
    'a: got NaN; expected a volume. Write litres.\na.b: got "24 mm"; expected a volume. Write litres.',
  );
});
test('whatever was got fits in a line', () => {
  const shown = (got: unknown) => faultLine({ ...fault, got });
  expect(shown('x'.repeat(200)).length).toBeLessThan(120);
  expect(shown({ a: 1 })).toContain('a record');
  expect(shown([1, 2])).toContain('a list of 2');
  expect(shown(Float64Array.of(1, 2, 3))).toContain('a list of 3');
  expect(shown(new DataView(new ArrayBuffer(8)))).toContain('a record');
  expect(shown(() => 0)).toContain('a function');
  expect(shown(undefined)).toContain('got nothing');
  // What rounding leaves behind is not told.
  expect(shown(0.1 + 0.2)).toContain('got 0.3;');
});
test('no fault, no error; and what cannot be built is a result', () => {
  expect(() => refuse([])).not.toThrow();
  expect(() => refuse([fault])).toThrow(InputError);
  expect(impossible('vent-too-long', 'It is.')).toEqual({
    ok: false,
    because: [{ code: 'vent-too-long', text: 'It is.' }],
  });
});

test('nothing that steers a terminal or turns letters round leaves in a line', () => {
  const odd = '\u001b[2J\u0000\u009b\u202e\u2066\n\ud800';
  const line = faultLine({ ...fault, path: `a.${odd}`, got: odd });
  expect(line).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
  expect(visible('\u001b[2J\u202ea\nb')).toBe('\\u001b[2J\\u202ea\\nb');
  expect(visible('10″ driver, µ Ω ° – é 木 👩\u200d🔧')).toBe('10″ driver, µ Ω ° – é 木 👩\u200d🔧');
});
test('a path and a value are shown up to a stated length, and a hundred faults are told', () => {
  expect(faultLine({ ...fault, path: 'x'.repeat(9e6), got: 'y'.repeat(9e6) }).length).toBeLessThan(300);
  const many = new InputError(Array.from({ length: 250_000 }, (_, i) => ({ ...fault, path: `a[${i}]` })));
  const lines = many.message.split('\n');
  expect(lines).toHaveLength(101);
  expect(lines[100]).toBe('and 249900 more faults');
  expect(many.faults).toHaveLength(250_000);
});
test('an unknown name comes first, however deep: it explains what is missing elsewhere', () => {
  const { faults } = new InputError([fault, { ...fault, path: 'a.b.c', code: 'unknown-field' }]);
  expect(faults.map(({ path }) => path)).toEqual(['a.b.c', 'a.b']);
});
test('an error is known by its name and code, whichever copy of the library threw it', async () => {
  const path = '../../../packages/core/src/fault/fault.js?copy';
  const copy: typeof import('@airspring/core/fault') = await import(path);
  const foreign = new copy.InputError([fault]);
  expect(foreign).not.toBeInstanceOf(InputError);
  expect(isInputError(foreign)).toBe(true);
  for (const other of [new Error('x'), new RangeError('x'), { code: 'airspring-input' }, 'x', null, undefined]) {
    expect(isInputError(other)).toBe(false);
  }
  // A record whose field refuses itself with the other copy's error: told among the other faults, and not thrown on.
  const driver = {
    get Sd(): number {
      throw foreign;
    },
  };
  const refusal = expect.objectContaining({ faults: [expect.objectContaining({ path: 'group.series' }), fault] });
  expect(() => group(driver as never, { series: 1000 })).toThrow(refusal);
});
