import { reportText } from 'airspring';
import { expect, test } from 'vitest';
import { answerTo, demo, met } from '../../arbitrary/brief.js';

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
const stiff = { ...ten, name: 'stiff ten-inch driver, invented', fs: '45 Hz', Vas: '30 L' } as const;

test('which of three drivers to buy: the best box of each, or why it has none', { timeout: 60_000 }, () => {
  const answer = met({ ...demo, drivers: [ten, stiff, eight] });
  const { perDriver = [], designs } = answer;
  expect(perDriver.map(({ driverIndex }) => driverIndex).sort()).toEqual([0, 1, 2]);
  const [best, second, last] = perDriver;
  if (!best?.ok || !second?.ok || last?.ok !== false) throw new Error('not told');
  expect(best.points).toBeGreaterThanOrEqual(second.points);
  expect(best.outer).toEqual(designs[0]?.box.outer);
  expect(best.driverIndex).toBe(designs[0]?.drivers.index);
  expect(last.name).toBe(stiff.name);
  // Each says of its driver what a brief with that driver alone says.
  const alone = met({ ...demo, drivers: [[ten, stiff, eight][second.driverIndex]!] }).designs[0];
  expect(second.outer).toEqual(alone?.box.outer);
  expect(second.points).toBeCloseTo(alone?.points as number, 9);
  const none = answerTo({ ...demo, drivers: [stiff] });
  if (none.ok) throw new Error('it was met');
  for (const { wish } of none.conflict) expect(last.because).toContain(wish);

  const text = reportText(answer).replaceAll(/\s+/g, ' ');
  expect(text).toContain('The best box of each driver');
  expect(text).toContain(`By the weights of this brief, #${best.driverIndex + 1} serves best`);
});

test('with one driver there is nothing to compare', () => {
  const answer = met(demo);
  expect(answer.perDriver).toBeUndefined();
  expect(reportText(answer)).not.toContain('The best box of each driver');
});
