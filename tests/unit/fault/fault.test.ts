import { faultLine, InputError, impossible, refuse } from '@airspring/core/fault';
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
  expect(shown(() => 0)).toContain('a function');
  expect(shown(undefined)).toContain('undefined');
});
test('no fault, no error; and what cannot be built is a result', () => {
  expect(() => refuse([])).not.toThrow();
  expect(() => refuse([fault])).toThrow(InputError);
  expect(impossible('vent-too-long', 'It is.')).toEqual({
    ok: false,
    because: [{ code: 'vent-too-long', text: 'It is.' }],
  });
});
