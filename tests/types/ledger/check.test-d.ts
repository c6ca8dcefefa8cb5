import { describe, expectTypeOf, test } from 'vitest';
import { check } from '../../ledger/check.js';
import type { Tolerance } from '../../ledger/row.js';

describe('a check', () => {
  test('gives its formula numbers by name, lists taken apart', () => {
    check('id', {
      formula: 'air/density',
      source: { key: 'own', locator: '' },
      status: 'derived',
      kind: 'own',
      given: { t: { value: [0, 20], unit: '°C' }, p: { value: 101325, unit: 'Pa' }, gas: { value: 'dry', unit: '' } },
      got: (given) => {
        expectTypeOf(given).toEqualTypeOf<{ readonly t: number; readonly p: number; readonly gas: string }>();
        // @ts-expect-error a name that was not given
        return given.humidity;
      },
      expected: [1, 2],
      unit: 'kg/m³',
      tolerance: { relative: 0.1, why: 'shown' },
    });
  });

  test('has a tolerance of one sort, with its reason', () => {
    expectTypeOf<{ relative: number; why: string }>().toExtend<Tolerance>();
    expectTypeOf<{ relative: number }>().not.toExtend<Tolerance>();
    expectTypeOf<{ absolute: number }>().not.toExtend<Tolerance>();
    expectTypeOf<{ relative: number; absolute: number; why: string }>().not.toExtend<Tolerance>();
  });
});
