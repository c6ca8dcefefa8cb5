import { longestVent } from '@airspring/core/space';
import { expect, test } from 'vitest';

const space = {
  outer: { width: '336 mm', height: '436 mm', depth: '386 mm' },
  thickness: '18 mm',
  driver: { outerDiameter: '200 mm', cutoutDiameter: '180 mm', depth: '90 mm' },
} as const;
const slot = (width: string, count = 1) =>
  longestVent({ ...space, vent: { width, height: '25 mm', wall: '18 mm', along: 'three', count } as never });

test('a slot of three panels stands where it is as wide as the box, and only there', () => {
  // Inner depth 350 mm, panel 18 mm, free air of the height before the inner end.
  expect(slot('300 mm').straight).toBeCloseTo(0.35 + 0.018 - 0.025, 12);
  // The first leg runs to the back, where the air turns about half its height; the second goes on up to the free air.
  const [first, turn, second] = [0.35 - 0.025, (Math.PI / 4) * 0.025, 0.4 - 0.025 - 0.025];
  expect(slot('300 mm').bent).toBeCloseTo(0.018 + first + turn + second, 12);
  for (const width of ['299 mm', '301 mm']) expect(slot(width)).toMatchObject({ straight: 0, bent: 0 });
});

test('there is one such slot', () => {
  expect(() => slot('300 mm', 2)).toThrowError('1 from panel to panel');
});
