import { expect, test } from 'vitest';
import stage from '../../../packages/airspring/briefs/stage-dragon.json' with { type: 'json' };
import { costByMiss, costOfMeeting } from '../../../packages/airspring/src/search/cost.js';
import { compileDistinct } from '../../../packages/airspring/src/search/distinct-shapes.js';
import { edgesOf, type Shape, shapesFor } from '../../../packages/airspring/src/search/shapes.js';
import { compileSizePrices } from '../../../packages/airspring/src/search/size-prices.js';
import { yieldingOf } from '../../../packages/airspring/src/search/yielding.js';
import { searchFor } from '../../arbitrary/brief.js';

const search = searchFor({ ...stage, box: { kinds: ['band-pass', 'series-band-pass'] } } as never);
const { job, wishes } = search;
const panels = 2 * job.space.panelThickness;
const shapes = shapesFor(job, true);
const costs = [costOfMeeting, costByMiss([...wishes.list.keys()]), costByMiss([0, 1, 5]), yieldingOf(search)];
const criteria = { depth: 40, level: 100, volume: 0.05, effort: 1 };
/** What the parts and the sound of some boxes miss, and by how much each misses it. */
const rests = [-1, 0.02, 0.3, 2].map((most) =>
  Float64Array.from(wishes.list, (_, i) => (most < 0 ? -1 : most * Math.sin(7 * i + 10 * most))),
);

test('no box costs less than its size and the rest of it are told to cost', () => {
  let over = 0;
  let told = 0;
  let tight = 0;
  for (const { least } of search.variants.slice(0, 1)) {
    const distinctAt = compileDistinct(shapes, least);
    const pricesOf = compileSizePrices(costs, wishes, panels);
    const inner = new Float64Array(3);
    for (let volume = 8e-3; volume < 0.3; volume *= 1.0931) {
      const groups = distinctAt(volume);
      const { least: leastPrices, of } = pricesOf(groups);
      for (const place of groups.flatMap(({ places }) => places)) {
        if (!edgesOf(shapes[place] as Shape, least, volume, inner)) continue;
        for (const rest of rests) {
          const excess = rest.slice().fill(-1, wishes.soundCount, wishes.soundCount + wishes.sizeCount);
          const apart = costs.map((cost) => cost.of(excess, criteria));
          wishes.size(
            inner.map((edge) => edge + panels),
            excess,
          );
          costs.forEach((cost, k) => {
            const price = cost.of(excess, criteria);
            if (price === Infinity) return;
            over = Math.max(over, apart[k]! + of[k]![place]! - price, leastPrices[k]! - of[k]![place]!);
            told++;
            if (of[k]![place]! > 0 && price < apart[k]! + of[k]![place]! + 0.1) tight++;
          });
        }
      }
    }
  }
  expect(over).toBeLessThan(1e-9);
  // A price that is always 0 would cut nothing off.
  expect(tight).toBeGreaterThan(told / 10);
});
