import { expect, test } from 'vitest';
import { linePath, pointsOf } from '../../../docs-site/src/figures/line-path.js';

test('a line is read as it was drawn, to a tenth of a pixel at every point', () => {
  const x = Array.from({ length: 300 }, (_, i) => i * 2.5031);
  const y = x.map((value) => 150 + 140 * Math.sin(value / 37));
  const read = pointsOf(linePath(x, y));
  expect(read.x).toHaveLength(300);
  for (let i = 0; i < 300; i++) {
    expect(Math.abs(read.x[i]! - x[i]!)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(Math.abs(read.y[i]! - y[i]!)).toBeLessThanOrEqual(0.05 + 1e-9);
  }
});

test('the path is what a browser draws', () => {
  expect(linePath([0, 2.5, 5], [184.5, 180.9, 181])).toBe('M0 184.5l2.5 -3.6 2.5 0.1');
  expect(linePath([], [])).toBe('');
  expect(pointsOf('')).toEqual({ x: [], y: [] });
});
