import { greatestLevel, type Limit } from '@airspring/core/limit';
import { logarithmicGrid } from '@airspring/core/quantity';
import type { Brief, Design } from 'airspring';
import { describe, expect } from 'vitest';
import { metBy } from '../../../packages/airspring/src/design.js';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import type { Box } from '../../../packages/airspring/src/search/box.js';
import { leanings, pointsOf } from '../../../packages/airspring/src/search/points.js';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

const [driver] = demo.drivers;
/** Whole searches: far fewer than of a single function. */
// Each is several whole searches: more of them than this would take hours.
const RUNS = Math.min(20, Math.ceil(fuzzRuns / 25));
const mm = (value: number) => `${value} mm`;

/** The properties below draw the same briefs: they share what a search of each has learned. */
const searches = memory((brief: string) => searchFor(JSON.parse(brief)));
const sharedSearch = (brief: Brief) => searches(JSON.stringify(brief));
const bests = memory((brief: string) => bestBoxes(searches(brief)));

/** What the briefs below differ in: lengths in mm, the volume in litres. */
interface Sizes {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly volume: number | undefined;
  readonly lowest: number;
  readonly level: number;
  readonly airSpeed: number;
  readonly voltage: number;
  readonly bends: number;
  readonly largest: number;
  readonly printer: number;
  readonly weights: NonNullable<Brief['weights']>;
}

const briefOf = ({
  width,
  height,
  depth,
  volume,
  lowest,
  level,
  airSpeed,
  voltage,
  bends,
  largest,
  printer,
  weights,
}: Sizes): Brief => ({
  ...demo,
  space: {
    width: mm(width),
    height: mm(height),
    depth: mm(depth),
    ...(volume !== undefined && { volume: `${volume} L` }),
    panelThickness: '18 mm',
  },
  wanted: { lowest: `${lowest} Hz`, highest: '120 Hz', level: `${level} dB`, fall: '6 dB' },
  amplifier: { voltage: `${voltage} V`, current: '6 A', sourceResistance: '0.1 Ω' },
  vent: { ...demo.vent, airSpeed: `${airSpeed} m/s`, bends, smallest: '40 mm', largest: mm(largest) },
  printer: { height: '200 mm', width: mm(printer) },
  weights,
});

/** Briefs of many sizes and wishes: most can be met, some cannot. */
const briefs: fc.Arbitrary<Brief> = fc
  .record({
    width: fc.integer({ min: 330, max: 700 }),
    height: fc.integer({ min: 330, max: 600 }),
    depth: fc.integer({ min: 250, max: 600 }),
    volume: fc.option(fc.integer({ min: 35, max: 90 }), { nil: undefined }),
    lowest: fc.integer({ min: 28, max: 48 }),
    level: fc.integer({ min: 84, max: 96 }),
    airSpeed: fc.integer({ min: 8, max: 20 }),
    voltage: fc.integer({ min: 12, max: 40 }),
    bends: fc.integer({ min: 0, max: 1 }),
    largest: fc.integer({ min: 60, max: 130 }),
    printer: fc.integer({ min: 140, max: 260 }),
    weights: fc.constantFrom({}, { small: 4 }, { deep: 3, simple: 0 }, { loud: 2, simple: 3 }),
  })
  .map(briefOf);

const more = (text: string, factor: number) => {
  const [value, unit] = text.split(' ') as [string, string];
  return `${Number((Number(value) * factor).toPrecision(12))} ${unit}`;
};
const decibels = (text: string, by: number) => `${Number(text.split(' ')[0]) + by} dB`;

/** Each gives more to choose from, or asks for less. */
const kinder: readonly (readonly [string, (brief: Brief) => Brief])[] = [
  ['a wider space', (b) => ({ ...b, space: { ...b.space, width: more(b.space.width, 1.37) } })],
  ['a higher space', (b) => ({ ...b, space: { ...b.space, height: more(b.space.height, 1.21) } })],
  ['a deeper space', (b) => ({ ...b, space: { ...b.space, depth: more(b.space.depth, 1.53) } })],
  [
    'more volume',
    (b) => ({ ...b, space: { ...b.space, ...(b.space.volume && { volume: more(b.space.volume, 1.18) }) } }),
  ],
  ['a faster vent', (b) => ({ ...b, vent: { ...b.vent, airSpeed: more(b.vent!.airSpeed!, 1.4) } })],
  ['a wider vent', (b) => ({ ...b, vent: { ...b.vent, largest: more(b.vent!.largest!, 1.3) } })],
  ['a bend', (b) => ({ ...b, vent: { ...b.vent, bends: 1 } })],
  ['another face', (b) => ({ ...b, vent: { ...b.vent, faces: ['front', 'back'] } })],
  ['a larger printer', (b) => ({ ...b, printer: { height: '200 mm', width: more(b.printer!.width, 1.5) } })],
  [
    'a stronger amplifier',
    (b) => ({ ...b, amplifier: { ...b.amplifier, voltage: more(b.amplifier.voltage as string, 1.3) } }),
  ],
  ['a lower level', (b) => ({ ...b, wanted: { ...b.wanted, level: decibels(b.wanted.level, -2) } })],
  ['a greater rise', (b) => ({ ...b, wanted: { ...b.wanted, rise: '3 dB' } })],
  ['one more driver', (b) => ({ ...b, drivers: [driver!, { ...driver!, name: 'other', Vas: '52 L', fs: '27 Hz' }] })],
  ['one more wiring', (b) => ({ ...b, drivers: [{ ...driver!, wirings: [{}, { series: 2 }] }] })],
];

/** Briefs that once lost by more choice, by a lower level, by a wider vent and by a higher space. */
const lostOnce = [
  [
    'one more driver',
    {
      width: 692,
      height: 413,
      depth: 284,
      volume: 54,
      lowest: 40,
      level: 85,
      airSpeed: 16,
      voltage: 38,
      bends: 1,
      largest: 127,
      printer: 190,
      weights: {},
    },
  ],
  [
    'a lower level',
    {
      width: 656,
      height: 532,
      depth: 524,
      volume: 39,
      lowest: 34,
      level: 94,
      airSpeed: 10,
      voltage: 40,
      bends: 0,
      largest: 117,
      printer: 145,
      weights: { loud: 2, simple: 3 },
    },
  ],
  [
    'a wider vent',
    {
      width: 392,
      height: 334,
      depth: 518,
      volume: 79,
      lowest: 47,
      level: 95,
      airSpeed: 9,
      voltage: 23,
      bends: 0,
      largest: 66,
      printer: 247,
      weights: { deep: 3, simple: 0 },
    },
  ],
  [
    'a higher space',
    {
      width: 698,
      height: 386,
      depth: 257,
      volume: 71,
      lowest: 29,
      level: 92,
      airSpeed: 11,
      voltage: 28,
      bends: 1,
      largest: 63,
      printer: 255,
      weights: { small: 4 },
    },
  ],
] satisfies [string, Sizes][];

const criteriaOf = ({ response, loudness, box, vent }: Design) => ({
  depth: response.depth,
  level: loudness.level,
  volume: box.outerVolume,
  effort: (vent?.count ?? 0) * (vent?.length ?? 0),
});

/** A kinder brief finds, for each leaning, what costs at most a thousandth more. */
function expectNoLoss(brief: Brief, [name, kinderBrief]: (typeof kinder)[number]): void {
  const search = sharedSearch(brief);
  const before = bests(JSON.stringify(brief));
  if (before[0] === undefined) return;
  const after = bestBoxes(searchFor(kinderBrief(brief)));
  leanings(search.job).forEach(({ name: leaning, weights }, k) => {
    const score = (box: Box | undefined) =>
      box === undefined ? -Infinity : pointsOf(search.job, weights, box.criteria);
    const sum = Object.values(weights).reduce((all, one) => all + one, 0);
    // A thousandth of each: ten points are an octave, a halving, ten decibels.
    const thousandth = 10 * Math.log2(1.001) * Math.max(1, sum);
    expect(score(after[k]), `${name}, ${leaning}`).toBeGreaterThanOrEqual(score(before[k]) - thousandth);
  });
}

describe('more room, a looser limit, one more candidate: never a conflict, never worse', () => {
  test.prop([briefs, fc.constantFrom(...kinder)], { numRuns: RUNS })(
    'than a thousandth in what was asked for',
    expectNoLoss,
  );

  // Down to printers that are lower than a tube is wide, which take no elbow.
  test.prop([briefs, fc.integer({ min: 40, max: 120 }), fc.double({ min: 1.05, max: 2, noNaN: true })], {
    numRuns: Math.ceil(RUNS / 4),
  })('than a thousandth with a taller printer', (brief, height, factor) => {
    const low = { ...brief, vent: { ...brief.vent, bends: 1 }, printer: { ...brief.printer!, height: `${height} mm` } };
    const taller = (b: Brief): Brief => ({
      ...b,
      printer: { ...b.printer!, height: more(b.printer!.height, factor) },
    });
    expectNoLoss(low, ['a taller printer', taller]);
  });

  test.each(lostOnce)('than a thousandth with %s', (name, sizes) => {
    expectNoLoss(briefOf(sizes), kinder.find(([one]) => one === name)!);
  });
});

/** The limits of a design, from what it says of itself. */
function limitsOf(brief: Brief, one: Design): Limit[] {
  const number = (text: string) => Number(text.split(' ')[0]);
  const basis = 'the brief';
  return [
    {
      name: 'travel',
      probe: 'coneVelocity',
      integrated: true,
      greatestRms: one.drivers.Xmax / Math.SQRT2,
      basis,
    },
    { name: 'voltage', greatestRms: number(brief.amplifier.voltage as string), basis },
    { name: 'current', probe: 'current', greatestRms: number(brief.amplifier.current!), basis },
    ...(one.vent
      ? [
          {
            name: 'vent',
            probe: 'ventAirSpeed',
            greatestRms: number(brief.vent!.airSpeed!) / Math.SQRT2,
            basis,
          },
        ]
      : []),
  ];
}

/** One that is not met is quick to know and slow to explain. */
const answers = memory((brief: string) => metBy(searches(brief), bests(brief)));
const answerTo = (brief: Brief) => answers(JSON.stringify(brief));

describe('what a design claims', () => {
  test.prop([briefs], { numRuns: RUNS })('holds at each frequency that it claims', (brief) => {
    const answer = answerTo(brief);
    if (answer === undefined) return;
    const search = sharedSearch(brief);
    for (const one of answer.designs) {
      const variant = search.variants.find(({ kind }) => kind.name === one.kind)!;
      const point = [one.box.netVolume, ...(one.vent ? [one.vent.fb, one.vent.diameter] : [])];
      const claimed = logarithmicGrid(one.response.depth, search.job.wanted.highest, 1500);
      const { least } = greatestLevel(variant.system(point), limitsOf(brief, one), claimed);
      expect(least.levelHalfSpace).toBeGreaterThanOrEqual(search.job.wanted.level - 0.005);
      for (const margin of one.margins) expect(margin.relative, margin.path).toBeLessThan(1e-3);
    }
  });

  test.prop([briefs], { numRuns: RUNS })('its leaning and its cautions say what its numbers say', (brief) => {
    const answer = answerTo(brief);
    if (answer === undefined) return;
    const all = answer.designs.map(criteriaOf);
    answer.designs.forEach(({ leaning, cautions, protection }, i) => {
      const [mine, first] = [all[i]!, all[0]!];
      if (leaning === 'deeper') expect(Math.min(...all.map(({ depth }) => depth))).toBeGreaterThan(mine.depth - 0.2);
      if (leaning === 'louder') expect(mine.level).toBeGreaterThan(first.level + 0.9);
      if (leaning === 'smaller') expect(mine.volume).toBeLessThan(0.951 * first.volume);
      if (leaning === 'simpler') expect(mine.effort).toBeLessThan(0.901 * first.effort);
      const guards = [protection, protection.atFullVoltage];
      const unsafe = guards.some((guard) => guard.neverSafe || guard.lowestSafeFrequency !== undefined);
      expect(cautions.some((text) => text.startsWith('Driver:'))).toBe(unsafe);
    });
  });
});
