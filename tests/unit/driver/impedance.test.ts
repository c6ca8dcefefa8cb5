import { coilImpedance, compileFreeAirImpedance, driver, freeAirImpedance } from '@airspring/core/driver';
import { logarithmicGrid } from '@airspring/core/quantity';
import { expect, test } from 'vitest';

const one = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Le: '0.9 mH',
});

test('the kernel fills the columns that it is given', () => {
  const grid = logarithmicGrid(10, 1000, 5);
  const out = { re: new Float64Array(5), im: new Float64Array(5) };
  compileFreeAirImpedance(one)(grid, out);
  expect(out).toEqual(freeAirImpedance(one, grid));
});

test('a coil without lossy part is a resistance and an inductance', () => {
  const { re, im } = coilImpedance(one, [1000]);
  expect(re[0]).toBe(5.6);
  expect(im[0]).toBeCloseTo(2 * Math.PI * 0.9, 12);
});

test('bad frequencies and bad drivers are refused', () => {
  const refused = (code: string) => expect.objectContaining({ faults: [expect.objectContaining({ code })] });
  expect(() => freeAirImpedance(one, [])).toThrowError(refused('empty'));
  expect(() => freeAirImpedance(one, [20, 10])).toThrowError(refused('unsorted'));
  expect(() => coilImpedance({ ...one, Re: 0 as never }, [20])).toThrowError(refused('not-positive'));
});
