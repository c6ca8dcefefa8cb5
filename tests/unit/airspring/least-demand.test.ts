import { describe, expect, test } from 'vitest';
import ghost from '../../../packages/airspring/briefs/ghost-train.json' with { type: 'json' };
import dragon from '../../../packages/airspring/briefs/stage-dragon.json' with { type: 'json' };
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import type { Grid } from '../../../packages/airspring/src/search/grid.js';
import { hopefulSounds } from '../../../packages/airspring/src/search/hopeful.js';
import { demo, demoRadiator, searchFor } from '../../arbitrary/brief.js';

const briefs = {
  'a closed and a vented box': demo,
  'boxes with a reference of their own': dragon,
  'a capacitor and felt': ghost,
  'a passive radiator': { ...demo, radiators: [demoRadiator], box: { kinds: ['radiator'] } },
  'a series band-pass box': { ...dragon, box: { kinds: ['series-band-pass'] } },
} as const;

describe.each(Object.entries(briefs))('%s', (_, brief) => {
  const search = searchFor(brief);
  const cases = search.variants.filter((variant) => search.demandOf(variant).atLeast !== undefined);

  test('no number of the least demand exceeds that of the demand itself, and kept ones are told again', () => {
    expect(cases.length).toBeGreaterThan(0);
    let exact = 0;
    for (const variant of cases) {
      const demandOf = search.demandOf(variant);
      const [least, whole, again] = [emptyDemand(variant), emptyDemand(variant), emptyDemand(variant)];
      const axes = [...variant.acoustic, ...variant.geometric, ...(variant.span ? [variant.span] : [])];
      for (let n = 1; n <= 60; n++) {
        // A sequence that fills the range of every axis evenly.
        const part = (axis: number) => (n * Math.SQRT2 * (axis + 1) ** 1.5) % 1;
        const point = [0.008 * 12 ** part(0), ...axes.map(({ from, to }, i) => from * (to / from) ** part(i + 1))];
        demandOf(point, whole);
        expect(demandOf.atLeast!(point, least)).toBe(false);
        const fields = ['cutoff', 'rise', 'travel', 'heat', 'voltage', 'current', 'depth'] as const;
        for (const field of fields) expect(least[field], field).toBeLessThanOrEqual(whole[field] * (1 + 1e-12) + 1e-9);
        least.loads.forEach((load, k) => expect(load).toBeLessThanOrEqual(whole.loads[k]! * (1 + 1e-12)));
        expect(least.leastImpedance).toBeGreaterThanOrEqual(whole.leastImpedance);
        demandOf.keep!(whole);
        if (!demandOf.atLeast!(point, again)) continue;
        exact++;
        for (const field of ['cutoff', 'rise', 'travel', 'heat', 'voltage', 'current'] as const)
          expect(again[field], field).toBe(whole[field]);
        expect(again.loads).toEqual(whole.loads);
      }
    }
    expect(exact).toBeGreaterThan(0);
  });
});

describe('a look before a survey', () => {
  const grid = (volumes: number, counts: readonly number[]): Grid => ({
    volumes: new Float64Array(volumes).fill(1),
    acoustic: Array.from({ length: counts.reduce((product, count) => product * count, 1) }, (_, i) => [i]),
    geometric: [[]],
    shapes: [],
    counts,
  });

  test('looks at every second place and the last one, and marks what stands beside a hopeful one', () => {
    const [volumes, counts] = [50, [10, 8, 6]] as const;
    const places = (volume: number, sound: number) => [
      volume,
      Math.floor(sound / 48),
      Math.floor(sound / 6) % 8,
      sound % 6,
    ];
    const looked: number[][] = [];
    const marks = hopefulSounds(grid(volumes, counts), (volume, sound) => {
      looked.push(places(volume, sound));
      return volume === 4 && sound === 9 * 48 + 2 * 6 + 5;
    })!;
    expect(looked).toHaveLength(26 * 6 * 5 * 4);
    const marked = [...marks.keys()].filter((i) => marks[i] === 1).map((i) => places(Math.floor(i / 480), i % 480));
    const beside = [3, 4, 5].flatMap((v) =>
      [8, 9].flatMap((a) => [1, 2, 3].flatMap((b) => [4, 5].map((c) => [v, a, b, c]))),
    );
    expect(marked).toEqual(beside);
  });

  test('is not taken on a small grid, nor where no number of values is given', () => {
    const never = () => expect.unreachable();
    expect(hopefulSounds(grid(10, [10, 8, 6]), never)).toBeUndefined();
    expect(hopefulSounds({ ...grid(50, [10, 8, 6]), counts: undefined }, never)).toBeUndefined();
  });
});
