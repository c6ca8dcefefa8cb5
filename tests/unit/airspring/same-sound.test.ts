import { expect, test } from 'vitest';
import { WITHIN } from '../../../packages/airspring/src/search/axis.js';
import { type Cell, compileBox } from '../../../packages/airspring/src/search/box.js';
import { costByPoints } from '../../../packages/airspring/src/search/cost.js';
import { leanings } from '../../../packages/airspring/src/search/points.js';
import { cheapestOfSameSound } from '../../../packages/airspring/src/search/same-sound.js';
import { demo, searchFor } from '../../arbitrary/brief.js';

test('a box as large as is allowed gives up air for a shape in which a wider vent fits', () => {
  const search = searchFor({
    ...demo,
    space: { width: '452 mm', height: '596 mm', depth: '583 mm', volume: '65 L', panelThickness: '18 mm' },
    wanted: { lowest: '28 Hz', highest: '120 Hz', level: '96 dB', fall: '6 dB' },
    amplifier: { voltage: '18 V', current: '6 A', sourceResistance: '0.1 Ω' },
    vent: { ...demo.vent, airSpeed: '8 m/s', bends: 1, smallest: '40 mm', largest: '110 mm' },
    printer: { height: '200 mm', width: '143 mm' },
    weights: { loud: 2, simple: 3 },
  });
  const { job, wishes, variants, demandOf } = search;
  const louder = leanings(job).find(({ name }) => name === 'louder')!;
  const cost = costByPoints(job, louder.weights);
  const vented = variants.find(({ kind }) => kind.name === 'vented')!;
  const maker = compileBox(job, wishes, vented, demandOf(vented), WITHIN);
  const price = (cell: Cell) => maker.priceAt(cell, cost, Infinity);
  // Edges, diameter and length of the vent, mm: where a walk ends, and a box of the same outer volume that costs less.
  const walked = [440, 296, 499, 72, 695];
  const flatter = [450, 272, 531, 77, 725];
  expect(maker.stands(maker.boxAt(flatter)!)).toBe(true);
  expect(price(flatter)).toBeLessThan(price(walked) - 0.5);

  const found = cheapestOfSameSound(maker.boxAt(walked)!, cost, maker, job.space.panelThickness, job.space.volume);
  expect(maker.stands(found)).toBe(true);
  expect(cost.of(found.excess, found.criteria)).toBeLessThanOrEqual(price(flatter));
});
