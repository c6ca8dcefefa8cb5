import { type Brief, design } from 'airspring';
import { expect, test } from 'vitest';
import { bestOf, demo, demoRadiator, put } from '../../arbitrary/brief.js';

const exactly = (edges: readonly string[], more: object = {}) =>
  ({ ...demo, space: { ...demo.space, ...more, exactly: edges } }) as Brief;

test.each([[['width']], [['height', 'depth']], [['width', 'depth']]])(
  'edges that are exact are kept, the others are free: %j',
  (edges) => {
    const free = bestOf(demo).box.outer;
    const { outer } = bestOf(exactly(edges)).box;
    const space = { width: 0.48, height: 0.34, depth: 0.42 };
    for (const [axis, edge] of (['width', 'height', 'depth'] as const).entries()) {
      if (edges.includes(edge)) expect(outer[axis]).toBeCloseTo(space[edge], 9);
      else expect(outer[axis]).toBeLessThanOrEqual(space[edge] + 1e-9);
    }
    expect(outer).not.toEqual(free);
  },
);

test('all three edges exact: the box is the space itself, and as deep as a search may make it', () => {
  const sizes = { width: '400 mm', height: '330 mm', depth: '400 mm' };
  const fixed = bestOf(exactly(['width', 'height', 'depth'], sizes));
  expect(fixed.box.outer.map((edge) => Math.round(edge * 1e3))).toEqual([400, 330, 400]);
  // A box that was free to be smaller, and chose so, cannot be far better.
  const free = bestOf({ ...demo, space: { ...demo.space, ...sizes } });
  expect(fixed.points).toBeGreaterThan(free.points - 3);
});

test('a pinned tuning is the tuning, within the rounding of the vent to whole millimetres', () => {
  for (const tuning of [24, 29.5]) {
    const box = bestOf({ ...demo, box: { ...demo.box, kinds: ['vented'], tuning: `${tuning} Hz` } });
    const fb = box.numbers.find(({ what }) => what === 'tuning (fb)')?.value[0] as readonly [number, string];
    expect(Math.abs(fb[0] / tuning - 1)).toBeLessThan(0.005);
  }
});

test('a pinned tuning of a box with passive radiators is met by whole grams', () => {
  const brief = {
    ...demo,
    box: { kinds: ['radiator'], tuning: '22 Hz' },
    radiators: [{ ...demoRadiator, counts: [1, 2] }],
  };
  const wanted = { ...demo.wanted, level: '84 dB', lowest: '32 Hz' };
  const space = { ...demo.space, width: '700 mm', height: '700 mm', volume: '120 L' };
  const box = bestOf({ ...brief, wanted, space });
  const fb = box.numbers.find(({ what }) => what === 'tuning (fb)')?.value[0] as readonly [number, string];
  expect(Math.abs(fb[0] / 22 - 1)).toBeLessThan(0.01);
});

test('a brief with pins that cannot be met is told as any other', () => {
  const answer = design(put(exactly(['width', 'height', 'depth'], { volume: '70 L' }), 'wanted.level', '125 dB'));
  expect(answer.ok).toBe(false);
});

test('a tuning is not pinned in silence where only closed boxes are tried', () => {
  expect(() => design({ ...demo, box: { kinds: ['closed'], tuning: '30 Hz' } })).toThrow(
    'box.tuning: got "30 Hz"; expected "vented" or "slot-vented" or "flared-vented" or "radiator" or "band-pass" or "parallel-band-pass" or "series-band-pass" in box.kinds',
  );
});
