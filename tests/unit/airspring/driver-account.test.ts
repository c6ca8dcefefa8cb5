import { expect, test } from 'vitest';
import bench from '../../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { accountsOf } from '../../../packages/airspring/src/record/driver-account.js';
import { searchFor } from '../../arbitrary/brief.js';

const assumed = (Sd: string, cutoutDiameter: string) => {
  const [driver] = bench.drivers;
  const { job } = searchFor({ ...bench, drivers: [{ ...driver, Sd, cutoutDiameter }] });
  return accountsOf(job)[0]!.assumed;
};

test('a cone that is wider than its cutout is told with both widths', () => {
  // π/4 (0.2 m)² is 314.16 cm².
  expect(assumed('314.1 cm²', '200 mm')).toEqual([]);
  const [told, ...others] = assumed('314.2 cm²', '200 mm');
  expect(others).toEqual([]);
  const [width, cutout] = told!.filter((part) => typeof part !== 'string').map(([value]) => value);
  expect(width).toBeCloseTo(0.20001, 5);
  expect(cutout).toBe(0.2);
});
