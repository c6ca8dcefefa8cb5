/** The bench of the front page: the vent bends and the verdict turns where the numbers do. */
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { answers, solve } from '../../../docs-site/src/home/bench.js';
import { drawBench } from '../../../docs-site/src/home/bench-drawing.js';
import { documentOf } from './document.js';

const at = (millimetres: number) => ({ diameter: si('length', millimetres / 1e3) });
const every = Array.from({ length: 49 }, (_, i) => at(44 + i));

test('a narrow vent rushes, a wide one does not fit, and one between does both', () => {
  expect(answers(at(50)).verdict).toMatch(/^No: it fits, but its air is too fast/);
  expect(answers(at(70)).verdict).toMatch(/^Yes/);
  expect(answers(at(85)).verdict).toMatch(/^No: it does not fit/);
  expect(solve(at(50)).bend).toBeUndefined();
  expect(solve(at(70)).bend).toBeDefined();
});

test('ten per cent either way turn the verdict of the author', () => {
  const author = answers(at(70)).verdict;
  expect([answers(at(60)).verdict, answers(at(80)).verdict]).not.toContain(author);
});

test('wider is longer and slower; each fitting one is tuned as it says, its own bulk taken from the air', () => {
  const all = every.map(solve);
  all.slice(1).forEach((bench, i) => {
    expect(bench.speed).toBeLessThan(all[i]!.speed);
    if (bench.length !== undefined) expect(bench.length).toBeGreaterThan(all[i]?.length ?? Infinity);
  });
  for (const { diameter, length = 0, fits } of all.filter(({ length: known }) => known !== undefined)) {
    const bulk = (Math.PI / 4) * (diameter + 0.006) ** 2 * (length - 0.018);
    const netVolume = si('volume', 0.374 * 0.294 * 0.364 - 0.0021 - bulk);
    const vent = { diameter: si('length', diameter), wall: si('length', 0.003), length: si('length', length) };
    const tuned = tuning({ vent, netVolume });
    expect(tuned.ok && tuned.fb, `${diameter}, ${fits}`).toBeCloseTo(26, 4);
  }
});

test('the drawing says what the sentence says, and shows red what sticks out', () => {
  const draw = (millimetres: number) =>
    documentOf(`<html><body>${drawBench(solve(at(millimetres)), 'x')}</body></html>`);
  expect(draw(70).querySelector('.vent-fits')).not.toBeNull();
  expect(draw(85).querySelector('.vent-out')).not.toBeNull();
  const points = (millimetres: number) =>
    draw(millimetres).querySelector('.skin')?.getAttribute('d')?.split('L').length;
  expect(points(50)).toBe(2);
  expect(points(70)).toBe(15);
});
