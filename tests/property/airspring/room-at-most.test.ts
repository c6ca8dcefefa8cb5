import type { Brief } from 'airspring';
import { describe, expect } from 'vitest';
import type { Point } from '../../../packages/airspring/src/kind/point.js';
import { demo, put, searchFor } from '../../arbitrary/brief.js';
import { fc, test } from '../../arbitrary/property.js';

const mm = (value: number) => `${value} mm`;
const faces = ['front', 'back', 'left', 'top'] as const;

/** Boxes about as wide as their driver, where a vent beside it hardly fits, and larger ones. */
const briefs = fc
  .record({
    kind: fc.constantFrom('vented', 'flared-vented', 'slot-vented'),
    driverFaces: fc.subarray([...faces], { minLength: 1, maxLength: 2 }),
    ventFaces: fc.subarray([...faces], { minLength: 1, maxLength: 2 }),
    bends: fc.integer({ min: 0, max: 1 }),
    play: fc.integer({ min: 1, max: 6 }),
    parallel: fc.constantFrom(1, 1, 2),
    slot: fc.oneof(
      fc.constant({}),
      fc.record({
        width: fc.integer({ min: 60, max: 240 }).map(mm),
        along: fc.constantFrom(['none'], ['one'], ['two']),
      }),
    ),
  })
  .map(({ kind, driverFaces, ventFaces, bends, play, parallel, slot }) => {
    const { vent, printer, ...rest } = demo;
    const [driver] = demo.drivers;
    const round = { vent: { ...vent, bends, faces: ventFaces }, printer };
    const wide = ventFaces.every((face) => face === 'left') ? { width: '100 mm' } : {};
    const slotted = { vent: { airSpeed: '17 m/s', faces: ventFaces }, slot: { bends, ...wide, ...slot } };
    return put(
      {
        ...rest,
        ...(kind === 'slot-vented' ? slotted : round),
        drivers: [{ ...driver, faces: driverFaces, wirings: [{ parallel }] }],
        box: { ...demo.box, kinds: [kind] },
        space: { ...demo.space, width: '1200 mm', height: '1200 mm', depth: '1200 mm' },
      } as unknown as Brief,
      'space.cutoutPlay',
      mm(play),
    );
  });
const edge = fc.oneof(fc.double({ min: 0.2, max: 0.4, noNaN: true }), fc.double({ min: 0.2, max: 1, noNaN: true }));

/** The least height at which a vent stands at all, found by halving; `undefined` where none does. */
function leastHeight(stands: (height: number) => boolean): number | undefined {
  let [low, high] = [0.1, 1.2];
  if (!stands(high)) return undefined;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (stands(middle)) high = middle;
    else low = middle;
  }
  return high;
}

describe('the quick bound of the room for a vent', () => {
  test.prop([briefs, edge, edge, edge, fc.double({ min: 0, max: 1, noNaN: true })])(
    'is never less than the room that core finds, least of all where a vent just fits',
    (brief, width, height, depth, part) => {
      for (const { room, roomAtMost, geometric, span } of searchFor(brief).variants) {
        const sizes = geometric.map(({ from, to }) => from + part * (to - from));
        const point: Point = [width * height * depth, 30, ...sizes, ...(span ? [width] : [])];
        const just = leastHeight((high) => room(width, high, depth, point) > 0);
        for (const high of [height, just ?? height]) {
          const bound = roomAtMost?.(width, high, depth, point) ?? Infinity;
          expect(bound).toBeGreaterThanOrEqual(room(width, high, depth, point) - 1e-9);
        }
      }
    },
  );
});
