import { expect, test } from 'vitest';
import { BEYOND, WITHIN } from '../../../packages/airspring/src/search/axis.js';
import { costByMiss, costByPoints } from '../../../packages/airspring/src/search/cost.js';
import { explore } from '../../../packages/airspring/src/search/explore.js';
import { searchAgain } from '../../../packages/airspring/src/search/search.js';
import { edgesOf, shapesFor } from '../../../packages/airspring/src/search/shapes.js';
import { demo, searchFor } from '../../arbitrary/brief.js';

const brief = { ...demo, drivers: [{ ...demo.drivers[0]!, wirings: [{}, { parallel: 2 }] }] };

test('searches that share what they know of room find what each finds alone', { timeout: 30_000 }, () => {
  const shared = searchFor(brief);
  for (const lowest of [30, 41]) {
    const job = { ...shared.job, wanted: { ...shared.job.wanted, lowest } };
    const cost = costByPoints(job, job.weights);
    const parts = ({ edges, point }: { readonly edges: readonly number[]; readonly point: readonly number[] }) => [
      edges,
      point,
    ];
    const [alone] = explore(searchAgain(searchFor(brief), job), [cost], WITHIN);
    const [again] = explore(searchAgain(shared, job), [cost], WITHIN);
    expect(parts(again!)).toEqual(parts(alone!));
  }
});

test('a cost that nothing can undercut ends the search, and the box keeps what was asked of it', () => {
  const search = searchFor(brief);
  const places = [...search.wishes.list.keys()];
  const [box] = explore(search, [costByMiss(places)], BEYOND);
  expect([...box!.excess].every((excess) => excess <= 0)).toBe(true);
});

test('each shape has the volume that is asked for, within its bounds', () => {
  const { job } = searchFor(brief);
  const out = new Float64Array(3);
  const least = [0.2, 0.2, 0.1] as const;
  let stood = 0;
  for (const shape of shapesFor(job, false)) {
    for (const volume of [0.01, 0.025, 0.045]) {
      if (!edgesOf(shape, least, volume, out)) continue;
      stood++;
      expect(out.reduce((product, edge) => product * edge, 1)).toBeCloseTo(volume, 12);
      out.forEach((edge, axis) => {
        expect(edge).toBeGreaterThanOrEqual(least[axis]! - 1e-12);
        expect(edge).toBeLessThanOrEqual(shape.most[axis]! + 1e-12);
      });
    }
  }
  expect(stood).toBeGreaterThan(100);
});
