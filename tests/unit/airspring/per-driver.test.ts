import { reportText } from 'airspring';
import { expect, test } from 'vitest';
import { wishText } from '../../../packages/airspring/src/record/per-driver.js';
import { conflictOf } from '../../../packages/airspring/src/search/conflict.js';
import { bestOf, demo, met, possible, searchFor } from '../../arbitrary/brief.js';

const ten = demo.drivers[0]!;
const eight = {
  ...ten,
  name: 'eight-inch driver, invented',
  fs: '32 Hz',
  Vas: '30 L',
  Sd: '210 cm²',
  Xmax: '6 mm',
  outerDiameter: '210 mm',
  cutoutDiameter: '185 mm',
  depth: '95 mm',
  displacedVolume: '0.9 L',
} as const;
const stiff = { ...ten, name: 'stiff ten-inch driver, invented', fs: '60 Hz', Vas: '30 L' } as const;

/** Straight vents of one diameter, so that each search is short. */
const brief = {
  ...demo,
  vent: { ...demo.vent, smallest: '70 mm', largest: '70 mm', bends: 0 },
  wanted: { ...demo.wanted, lowest: '34 Hz' },
};

test('which of three drivers to buy: the best box of each, or why it has none', { timeout: 60_000 }, () => {
  const answer = met({ ...brief, drivers: [ten, stiff, eight] });
  const { perDriver = [], designs } = answer;
  expect(perDriver.map(({ driverIndex }) => driverIndex).sort()).toEqual([0, 1, 2]);
  const [best, second, last] = perDriver;
  if (!best?.ok || !second?.ok || last?.ok !== false) throw new Error('not told');
  expect(best.points).toBeGreaterThanOrEqual(second.points);
  expect(best.outer).toEqual(designs[0]?.box.outer);
  expect(best.driverIndex).toBe(designs[0]?.drivers.index);
  expect(last.name).toBe(stiff.name);
  // Each says of its driver what a brief with that driver alone says.
  const alone = bestOf({ ...brief, drivers: [[ten, stiff, eight][second.driverIndex]!] });
  expect(second.outer).toEqual(alone.box.outer);
  expect(second.points).toBeCloseTo(alone.points, 9);
  const none = { ...brief, drivers: [stiff] };
  expect(possible(none)).toBe(false);
  const { wishes } = conflictOf(searchFor(none));
  expect(wishes.length).toBeGreaterThan(0);
  for (const wish of wishes) expect(last.because).toContain(wishText(wish));

  const text = reportText(answer).replaceAll(/\s+/g, ' ');
  expect(text).toContain('The best box of each driver');
  expect(text).toContain(`By the weights of this brief, #${best.driverIndex + 1} serves best`);
});

test('with one driver there is nothing to compare', () => {
  const answer = met({ ...demo, box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } });
  expect(answer.perDriver).toBeUndefined();
  expect(reportText(answer)).not.toContain('The best box of each driver');
});
