import { expect, test } from 'vitest';
import whale from '../../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { type Alike, compileDistinct } from '../../../packages/airspring/src/search/distinct-shapes.js';
import { edgesOf, type Shape, shapesFor } from '../../../packages/airspring/src/search/shapes.js';
import { demo, searchFor } from '../../arbitrary/brief.js';

const { job } = searchFor(whale as never);
const least = [0.25, 0.25, 0.14] as const;

test.each([false, true])(
  'the distinct shapes have every set of edges of all shapes (beyond the brief: %s)',
  (beyond) => {
    const shapes = shapesFor(job, beyond);
    const distinctAt = compileDistinct(shapes, least);
    const edgesIn = (volume: number, places: Iterable<number>) => {
      const inner = new Float64Array(3);
      const all = [...places].filter((s) => edgesOf(shapes[s] as Shape, least, volume, inner));
      return new Set(
        all.map(
          (s) =>
            edgesOf(shapes[s] as Shape, least, volume, inner) && inner.map((edge) => Math.round(edge * 1e12)).join(),
        ),
      );
    };
    let left = 0;
    for (let volume = 5e-3; volume < 0.08; volume *= 1.0073) {
      const groups: readonly Alike[] = distinctAt(volume);
      const places = groups.flatMap((group) => group.places);
      left += shapes.length - places.length;
      expect(edgesIn(volume, places)).toEqual(edgesIn(volume, shapes.keys()));
    }
    expect(left).toBeGreaterThan(0);
  },
);

test.each([false, true])('no shape exceeds what is told of those like it (beyond the brief: %s)', (beyond) => {
  const { variants } = searchFor({ ...demo, box: { ...demo.box, kinds: ['series-band-pass', 'band-pass'] } });
  const shapes = shapesFor(job, beyond);
  const inner = new Float64Array(3);
  let told = 0;
  for (const { acoustic, geometric, least: smallest, roomAtMost } of variants) {
    const distinctAt = compileDistinct(shapes, smallest);
    for (const volume of [0.021, 0.034, 0.047]) {
      for (const part of [0.1, 0.5, 0.9]) {
        const values = [...acoustic, ...geometric].map(({ from, to }) => from + part * (to - from));
        const point = [0.9 * volume, ...values];
        for (const { places, greatest } of distinctAt(volume)) {
          const most = roomAtMost!(...greatest, point, volume);
          for (const s of places) {
            if (!edgesOf(shapes[s] as Shape, smallest, volume, inner)) continue;
            const [width = 0, height = 0, depth = 0] = inner;
            inner.forEach((edge, axis) => expect(edge).toBeLessThanOrEqual(greatest[axis]! * (1 + 1e-12)));
            const bound = roomAtMost!(width, height, depth, point);
            if (bound > 0) told++;
            expect(most).toBeGreaterThanOrEqual(bound - 1e-9);
          }
        }
      }
    }
  }
  expect(told).toBeGreaterThan(20);
});
