/** What the dossier says of the lowest standing wave of the air in a box: half a wave fits along its longest edge. */
import { expect, test } from 'vitest';
import { standingWaves } from '../../../packages/workshop/src/dossier/standing-waves.js';
import type { WorkBox } from '../../../packages/workshop/src/dossier/work.js';

const says = (length: number) => `${Math.round(1e3 * length)} mm`;
const thickness = 0.018;
const box = (width: number, height: number, depth: number, more: Partial<WorkBox> = {}): WorkBox => ({
  outer: { width: width + 2 * thickness, height: height + 2 * thickness, depth: depth + 2 * thickness },
  thickness,
  netVolume: width * height * depth,
  holes: [],
  boards: [],
  ...more,
});
const band = { from: 30, to: 120 };

test.each([
  [0.6, 0.3, 0.4, 'width of 600 mm'],
  [0.3, 0.5, 0.4, 'height of 500 mm'],
  [0.3, 0.31, 0.7, 'depth of 700 mm'],
] as const)('%f × %f × %f m: half a wave along the longest edge', (width, height, depth, where) => {
  const [text] = standingWaves(box(width, height, depth), band, says);
  expect(text).toContain(`is that along the ${where}. The band of the brief ends below that.`);
  const told = Number(/at (\d+) Hz/.exec(text!)![1]);
  // 343 to 344 m/s at 20 °C, dry to damp.
  const half = 1 / (2 * Math.max(width, height, depth));
  expect(told).toBeGreaterThanOrEqual(Math.round(343 * half));
  expect(told).toBeLessThanOrEqual(Math.round(344.5 * half));
});

test('waves that nearly coincide are told together', () => {
  expect(standingWaves(box(0.4, 0.2, 0.41), band, says)[0]).toContain(
    'those along the depth of 410 mm and the width of 400 mm: they nearly coincide',
  );
});

test('one in the band is to be damped, and a divided box or one that is no cuboid is left out', () => {
  expect(standingWaves(box(1.6, 0.3, 0.3), band, says)[0]).toContain('in the band of the brief: a layer of felt');
  expect(standingWaves(box(1, 0.3, 0.3, { joints: 'mitres' }), band, says)).toEqual([]);
  const placed = [{ name: 'board', least: [0.018, 0.1, 0.018], greatest: [1, 0.118, 0.3] }];
  expect(standingWaves(box(1, 0.3, 0.3, { placed }), band, says)).toEqual([]);
});
