import type { Brief } from 'airspring';
import { expect, test } from 'vitest';
import { WITHIN } from '../../../packages/airspring/src/search/axis.js';
import { compileBox } from '../../../packages/airspring/src/search/box.js';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';

// Boxes spread evenly over five dimensions, without a pattern: x⁶ = x + 1. Slots are up to 0.9 m longer than the shortest.
const BOXES = fuzzRuns < 300 ? 400 : 4000;
const ROOT = 1.1347241384015194;
const STEPS = [1, 2, 3, 4, 5].map((power) => ROOT ** -power);
const LONGER = 900;

const { printer: _, ...rest } = demo;
const space = { ...demo.space, width: '600 mm', height: '600 mm', depth: '500 mm', volume: '120 L' };
const narrow = { width: '180 mm', along: ['none', 'one', 'two'], wall: '12 mm' };

test.each([
  ['from side to side', {}, {}],
  ['of a width', narrow, {}],
  ['from side to side, its tuning held', {}, { tuning: '34 Hz' }],
  ['of a width, its tuning held', narrow, { tuning: '34 Hz' }],
])('straight or folded, a slot leaves the air that its boards and its own air leave: %s', (_name, slot, box) => {
  const search = searchFor({ ...rest, space, slot, box: { kinds: ['slot-vented'], ...box } } as unknown as Brief);
  const t = search.job.space.panelThickness;
  const wall = 'wall' in slot ? 0.012 : t;
  const seen = { straight: 0, folded: 0 };
  for (const variant of search.variants) {
    const { boxAt, stands, lower, upper } = compileBox(
      search.job,
      search.wishes,
      variant,
      search.demandOf(variant),
      WITHIN,
    );
    for (let n = 1; n <= BOXES; n++) {
      const cell = lower.map((low, i) => {
        const most = i === 4 ? Math.min(upper[i]!, low + LONGER) : upper[i]!;
        return low + Math.round(((n * STEPS[i]!) % 1) * (most - low));
      });
      const found = boxAt(cell);
      if (found === undefined || !stands(found)) continue;
      const { edges, point } = found;
      const fit = variant.place(edges, point);
      if (!fit.ok) throw new Error('it stands');
      const { placed = [] } = variant.record({ edges, point, fit });
      const { firstLeg, bend } = fit.placement.vent!;
      // A shorter second leg has an inner board that is left out for glue.
      if (bend && bend.secondLeg - wall < 1e-4) continue;
      const [height = 0, width = 0.18] = point.slice(2);
      const way = bend ? firstLeg - t + Math.min(width, height) + bend.secondLeg : firstLeg - t;
      const wood = placed.reduce(
        (sum, { least, greatest }) =>
          sum + least.reduce((all, from, k) => all * (Math.min(greatest[k]!, edges[k]! - t) - Math.max(from, t)), 1),
        0,
      );
      const inner = edges.reduce((all, edge) => all * (edge - 2 * t), 1);
      expect(point[0], cell.join()).toBeCloseTo(inner - variant.contents - wood - width * height * way, 12);
      seen[bend ? 'folded' : 'straight']++;
    }
  }
  expect(seen.straight).toBeGreaterThan(20);
  expect(seen.folded).toBeGreaterThan(20);
});
