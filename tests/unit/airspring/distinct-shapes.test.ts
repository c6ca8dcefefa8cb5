import { expect, test } from 'vitest';
import whale from '../../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { compileDistinct } from '../../../packages/airspring/src/search/distinct-shapes.js';
import { edgesOf, type Shape, shapesFor } from '../../../packages/airspring/src/search/shapes.js';
import { searchFor } from '../../arbitrary/brief.js';

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
      const places = distinctAt(volume);
      left += shapes.length - places.length;
      expect(edgesIn(volume, places)).toEqual(edgesIn(volume, shapes.keys()));
    }
    expect(left).toBeGreaterThan(0);
  },
);
