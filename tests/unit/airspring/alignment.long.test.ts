import {
  type Alignment,
  butterworth,
  ofTotalQ,
  quasiThirdOrder,
  sixthOrderBandPass,
  solveAlignment,
} from '@airspring/core/alignment';
import { closedFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { type BriefOptions, type Design, design, reportText } from 'airspring';
import { expect, test } from 'vitest';
import organ from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import thunder from '../../../packages/airspring/briefs/travelling-thunder.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { seriesBandPass } from '../../../packages/airspring/src/kind/series-band-pass.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { alignmentsNear } from '../../../packages/airspring/src/record/alignments.js';
import { balanced, bestOf, demo, demoRadiator, metByWeights, searchFor } from '../../arbitrary/brief.js';
import { delayAtMost } from '../../packages/stranger-alignment/delay-at-most.js';

const wide = { ...demo.space, width: '700 mm', height: '700 mm', depth: '600 mm', volume: '120 L' };
/** Room for every box, and a level that none is too small for. */
const roomy = { ...demo, space: wide, wanted: { ...demo.wanted, level: '80 dB', fall: '12 dB' } };
const compared = { ...demo, alignment: 'compare' };
const designs = (brief: unknown, options?: Pick<BriefOptions, 'alignments'>): readonly Design[] =>
  balanced(searchFor(brief, standard, options))!.designs;
const faultsOf = (brief: unknown, alignments?: readonly Alignment[]) => {
  try {
    readBrief(brief, standard, undefined, alignments);
  } catch (error) {
    return (error as { faults: readonly { path: string; expected: string }[] }).faults;
  }
  return [];
};
const tuningOf = ({ numbers }: Design) => numbers[0]!.value[0]![0] as number;

test('each design says which alignments it is nearest to, and how the box of each differs', () => {
  const found = metByWeights(compared, 2).designs;
  for (const { alignments = [] } of found) {
    expect(alignments).toHaveLength(3);
    const off = alignments.map(({ deviation }) => deviation.rms);
    expect(off).toEqual([...off].sort((a, b) => a - b));
    for (const { box, deviation } of alignments) {
      expect(deviation.greatest).toBeGreaterThanOrEqual(deviation.rms);
      if (!box.ok) expect(box.because).toMatch(/total Q/);
    }
  }
  // The boxes that are found stay the same.
  expect(found.map(({ alignments: _, ...one }) => one)).toEqual(metByWeights(demo, 2).designs);
});

test('the report tells the nearest, in words that follow from the numbers', () => {
  const answer = metByWeights(compared);
  const text = reportText(answer).replaceAll(/\s+/g, ' ');
  const [first] = answer.designs[0]?.alignments ?? [];
  expect(text).toContain(`Of the named alignments, ${first!.name}`);
  expect(text).toContain(`The two differ by ${first!.deviation.rms.toFixed(2)} dB (rms)`);
  expect(reportText(metByWeights(demo))).not.toContain('ALIGNMENT');
});

test('a box of a pinned alignment has its volume within the rounding of the edges, its tuning, and its response', () => {
  for (const name of ['QB3', 'B2']) {
    const box = bestOf({ ...roomy, alignment: { name } });
    const [near, ...others] = box.alignments!;
    expect(others).toEqual([]);
    expect(near!.name).toBe(name);
    if (!near!.box.ok) throw new Error(near!.box.because);
    expect(Math.abs(box.box.netVolume / near!.box.netVolume - 1)).toBeLessThan(0.01);
    expect(Math.abs(box.response.f3! / near!.box.f3! - 1)).toBeLessThan(0.01);
    expect(near!.deviation.rms).toBeLessThan(0.3);
  }
});

test('a pinned alignment takes only the kinds that it suits, and says so where none has it', () => {
  expect(new Set(designs({ ...roomy, alignment: { name: 'B2' } }).map(({ kind }) => kind))).toEqual(
    new Set(['closed']),
  );
  const answer = design({ ...roomy, alignment: { name: 'B4' } });
  if (answer.ok) throw new Error('no driver of this Q has B4');
  expect(answer.conflict).toEqual([{ path: 'alignment.name', wish: 'the alignment B4' }]);
  expect(answer.because.join(' ')).toContain('B4 takes a total Q of 0.405 at QL 7; the driver has 0.366.');
});

test('a box that is left out for its alignment is told, with the reason', () => {
  const pinned = { ...roomy, vent: { ...roomy.vent, waves: true }, alignment: { name: 'B2' } };
  const answer = balanced(searchFor({ ...pinned, box: { ...roomy.box, kinds: ['vented', 'closed'] } }, standard))!;
  expect(answer.designs.map(({ kind }) => kind)).toEqual(['closed']);
  expect(answer.leftOut).toHaveLength(1);
  expect(answer.leftOut![0]).toMatch(/" in a vented box: B2 is a shape of few poles/);
  expect(reportText(answer).replaceAll(/\s+/g, ' ')).toContain(answer.leftOut![0]);
  // Kinds with one reason share a sentence; where no wish can be met either, they are told as well.
  const wide = { ...roomy, wanted: { ...roomy.wanted, lowest: '21 Hz' }, alignment: { name: 'B2' } };
  const refused = design({ ...wide, box: { ...roomy.box, kinds: ['vented', 'slot-vented', 'closed'] } });
  expect(!refused.ok && refused.because.join(' ')).toMatch(
    /in a vented box and "[^"]+" in a box with a slot vent: B2 has order 2/,
  );
});

test('parameters choose one shape of an alignment', () => {
  // The driver decides the parameter of QB3; pinned at another value, it asks for another driver.
  const answer = design({
    ...roomy,
    box: { ...roomy.box, kinds: ['vented'] },
    alignment: { name: 'QB3', parameters: { B: 5 } },
  });
  expect(answer.ok || answer.because.join(' ')).toMatch(/QB3 takes a total Q of 0\.\d+/);
});

test('an alignment of a stranger counts by being passed in', () => {
  const alignments = [delayAtMost(0.018), quasiThirdOrder, ofTotalQ(0.8)];
  const [box] = designs({ ...roomy, alignment: { name: 'delay of 18 ms' } }, { alignments });
  expect(Math.max(...box!.curves.groupDelay)).toBeLessThan(1.02 * 0.018);
  // The report tells what the goal came to: a cut-off, as long as the delay keeps its limit.
  const { goal } = box!;
  if (!goal?.least.ok) throw new Error('no least value');
  expect(box!.alignments).toBeUndefined();
  expect(goal.least.value).toBeLessThanOrEqual(goal.value);
  expect(goal.value / goal.least.value).toBeLessThan(1.05);
  expect(Math.abs(goal.least.value - box!.response.f3!)).toBeLessThan(0.3);
  const pinned = design({ ...roomy, alignment: { name: 'delay of 18 ms' } }, { alignments });
  expect(pinned.ok && reportText(pinned).replaceAll(/\s+/g, ' ')).toMatch(
    /The goal delay of 18 ms is \d\d\.\d+ in this box\. The least that these drivers reach is \d\d\.\d+, with \d+\.?\d* L of air/,
  );
  const [closed] = designs({ ...roomy, alignment: { name: 'Qtc 0.8' } }, { alignments });
  const job = readBrief(roomy, standard);
  const own = solveAlignment(
    ofTotalQ(0.8),
    closedFamily,
    { drivers: job.choices[0]!.drivers, QL: 7, sourceResistance: si('resistance', job.amplifier.sourceResistance) },
    { air: job.air },
  );
  expect(own.ok && Math.abs(closed!.box.netVolume / own.system.spec.netVolume - 1)).toBeLessThan(0.01);
  expect(tuningOf(closed!)).toBeGreaterThan(0);
});

test('a name that none of them has is a fault at its path, with those that there are', () => {
  const [fault, ...others] = faultsOf({ ...demo, alignment: { name: 'QB4' } }, [quasiThirdOrder, butterworth(4)]);
  expect(others).toEqual([]);
  expect(fault).toMatchObject({ path: 'alignment.name', got: 'QB4', expected: 'one of "QB3", "B4"' });
});

const allows = (text: string) => `what the alignment allows: ${text}`;
test.each([
  [{ name: 'QB3', parameters: { B: -1 } }, 'alignment.parameters.B', allows('QB3 has B from 0 to ')],
  [{ name: 'QB3', parameters: { ripple: 1 } }, 'alignment.parameters.ripple', allows('QB3 has the parameter B')],
  [{ name: 'B4', parameters: { k: 1 } }, 'alignment.parameters.k', allows('B4 has no parameter')],
  [{ name: 'C4', parameters: { k: 0.8, ripple: 3 } }, 'alignment.parameters.ripple', allows('C4 has ripple = ')],
  [{ name: 'BP4', parameters: { S: 1.2 } }, 'alignment.parameters.S', 'a damping from 0.1 to below 1'],
  [{ name: 'BP4', parameters: { ripple: 20 } }, 'alignment.parameters.ripple', 'a ripple up to 14 dB'],
  [{ name: 'BP4', parameters: { S: 0.6, ripple: 1 } }, 'alignment.parameters.ripple', 'no ripple, since S decides it'],
  [{ name: 'BP4', parameters: { B: 1 } }, 'alignment.parameters.B', 'one of ripple, S, Q'],
  [{ name: 'BP6', parameters: { ripple: 7 } }, 'alignment.parameters.ripple', 'a ripple up to 6 dB'],
  [{ name: 'BP6', parameters: { bandwidth: 3 } }, 'alignment.parameters.bandwidth', allows('BP6 has bandwidth from ')],
  [
    { name: 'BP6', parameters: { S: 0.6 } },
    'alignment.parameters.S',
    allows('BP6 has the parameters ripple, bandwidth'),
  ],
  [{ name: 'LS4', parameters: { depth: 20 } }, 'alignment.parameters.depth', 'a depth from 0.5 to 12 dB'],
  [{ name: 'LS4', parameters: { depth: 4, y1: 9 } }, 'alignment.parameters.y1', allows('LS4 has y1 from ')],
  [{ name: 'QB3', parameter: {} }, 'alignment.parameter', 'one of the fields name, parameters'],
  [{ parameters: {} }, 'alignment.name', 'one of "B2"'],
  [{ name: 'QB3', parameters: { B: 'flat' } }, 'alignment.parameters.B', 'a number'],
  ['nearest', 'alignment', '"compare", or a record, in braces'],
  [
    { name: 'C4', parameters: JSON.parse('{ "__proto__": 1 }') },
    'alignment.parameters.__proto__',
    'no field of this name',
  ],
] as const)('%j is refused at %s', (alignment, path, expected) => {
  const [fault, ...others] = faultsOf({ ...demo, alignment });
  expect(others).toEqual([]);
  expect(fault!.path).toBe(path);
  expect(fault!.expected.startsWith(expected) || fault!.expected).toBe(true);
});

test('a tuning beside an alignment that decides it is a fault', () => {
  const brief = { ...demo, alignment: { name: 'QB3' }, box: { ...demo.box, tuning: '30 Hz' } };
  expect(faultsOf(brief).map(({ path }) => path)).toEqual(['box.tuning']);
});

/** A band-pass box with room for any alignment. */
const passing = {
  ...thunder,
  space: { ...thunder.space, width: '600 mm', height: '360 mm', depth: '400 mm' },
  wanted: { ...thunder.wanted, level: '85 dB', fall: '6 dB' },
  box: { kinds: ['band-pass'] },
};

test('a band-pass box of a pinned alignment has its chambers, its tuning and both edges', () => {
  const box = bestOf({ ...passing, alignment: { name: 'BP4', parameters: { ripple: 0.5, Q: 0.7 } } });
  const [near] = box.alignments!;
  expect(near!.parameters).toMatchObject({ ripple: expect.closeTo(0.5, 9) });
  if (!near!.box.ok) throw new Error(near!.box.because);
  expect(Math.abs(box.box.netVolume / near!.box.netVolume - 1)).toBeLessThan(0.01);
  expect(Math.abs(box.response.f3! / near!.box.f3! - 1)).toBeLessThan(0.01);
  expect(near!.deviation.rms).toBeLessThan(0.5);
});

/** Where a rising function of 0 to 1 vanishes. */
function bisected(of: (x: number) => number): number {
  let [low, high] = [0, 1];
  for (let turn = 0; turn < 50; turn++) {
    const x = (low + high) / 2;
    if (of(x) < 0) low = x;
    else high = x;
  }
  return low;
}

/** The tops and the dip of BP4 over its flat part, by the printed low-pass that it is made from: dB at S and Q over the middle. */
const printedLevel = (S: number, Q: number, ratio: number): number => {
  const w = 2 * S * Q * (ratio - 1 / ratio);
  return -10 * Math.log10((1 - w ** 2) ** 2 + (2 * S * w) ** 2);
};

test.each([
  ['S', { S: 0.55, Q: 0.7 }, 0.55],
  ['a round top', { S: 0.85, Q: 0.6 }, 0.85],
  // S of a ripple, solved by hand from r = −10 lg(4 S² (1 − S²)).
  ['any ripple', { ripple: 1, Q: 0.65 }, Math.sqrt((1 - Math.sqrt(1 - 10 ** -0.1)) / 2)],
] as const)('a band-pass box takes %s, and has its printed shape', (_, parameters, S) => {
  const brief = {
    ...passing,
    wanted: { ...passing.wanted, fall: '8 dB', level: '80 dB' },
    box: { kinds: ['band-pass'], QL: 1000 },
  };
  const drivers = brief.drivers.map(({ Le: _, ...driver }) => driver);
  const box = bestOf({ ...brief, drivers, alignment: { name: 'BP4', parameters } });
  expect(box.alignments![0]!.deviation.rms).toBeLessThan(0.3);
  const { frequencies, levelHalfSpace } = box.curves;
  const fb = (box.numbers.find(({ what }) => what.startsWith('tuning'))!.value[0] as readonly [number, string])[0];
  const level = (ratio: number) => {
    const k = frequencies.findIndex((f) => f >= ratio * fb);
    const [low, high] = [frequencies[k - 1]!, frequencies[k]!];
    const part = Math.log((ratio * fb) / low) / Math.log(high / low);
    return levelHalfSpace[k - 1]! * (1 - part) + levelHalfSpace[k]! * part;
  };
  for (const ratio of [0.6, 0.75, 0.85, 1.2, 1.35, 1.6]) {
    expect(Math.abs(level(ratio) - level(1) - printedLevel(S, parameters.Q, ratio)), `${ratio}`).toBeLessThan(0.5);
  }
});

/** A box of sixth order without a coil, and as good as without losses. */
const sixth = (kind: string) => ({
  ...passing,
  drivers: passing.drivers.map(({ Le: _, ...driver }) => driver),
  space: { ...passing.space, width: '700 mm', height: '500 mm', depth: '500 mm' },
  wanted: { lowest: '20 Hz', highest: '60 Hz', level: '60 dB', fall: '8 dB' },
  box: { kinds: [kind], QL: 1000 },
});

test.each(['parallel-band-pass', 'series-band-pass'])('a %s box of BP6 is maximally flat', (kind) => {
  const box = bestOf({ ...sixth(kind), alignment: { name: 'BP6' } });
  const [near] = box.alignments!;
  if (!near!.box.ok) throw new Error(near!.box.because);
  expect(Math.abs(box.box.netVolume / near!.box.netVolume - 1)).toBeLessThan(0.01);
  expect(near!.deviation.rms).toBeLessThan(0.1);
  const { bandwidth } = near!.box.parameters as { bandwidth: number };
  const { frequencies, levelHalfSpace } = box.curves;
  // The middle of the band, by the lower edge: |G|² is a half where (1 − x²)³ = b³ x⁴.
  const edge = bisected((x) => bandwidth ** 3 * x ** 4 - (1 - x ** 2) ** 3);
  const middle = near!.box.f3! / edge;
  const level = (ratio: number) => -10 * Math.log10(1 + (ratio ** 2 - 1) ** 6 / (bandwidth ** 6 * ratio ** 8));
  const top = Math.max(...levelHalfSpace);
  for (const [k, frequency] of frequencies.entries()) {
    const ratio = frequency / middle;
    if (ratio > 0.5 && ratio < 2)
      expect(Math.abs(levelHalfSpace[k]! - top - level(ratio)), `${ratio}`).toBeLessThan(0.5);
  }
});

test('a box of sixth order is compared with shapes of its order, of any ripple', () => {
  const job = readBrief({ ...sixth('series-band-pass'), alignment: 'compare' }, standard);
  const [variant] = seriesBandPass.variants(job, job.choices[0]!);
  const flat = variant!.align!(sixthOrderBandPass(), [0.04, 31, 0.8, 0.55, 0.06]);
  if (!flat.ok) throw new Error(flat.because[0]!.text);
  const told = alignmentsNear(job, { variant: variant!, point: [...flat.point, 0.06] } as never)!;
  expect(told.map(({ name, parameters }) => [name, parameters.ripple])).toEqual([
    ['BP6', 0],
    ['BP6', 0.5],
    ['BP6', 1.5],
  ]);
  expect(told[0]!.deviation.rms).toBeLessThan(0.01);
});

test('a low shelf of any depth is one of a brief', () => {
  const space = { ...roomy.space, width: '900 mm', height: '900 mm', depth: '900 mm', volume: '700 L' };
  const wanted = { ...roomy.wanted, level: '80 dB', fall: '8 dB' };
  const box = bestOf({ ...roomy, space, wanted, alignment: { name: 'LS4', parameters: { depth: 4 } } });
  expect(box.alignments![0]!.parameters).toMatchObject({ depth: 4 });
});

test('a band-pass shape that leaves a number open says so, and is compared in the closed chamber of the box', () => {
  const answer = design({ ...passing, alignment: { name: 'BP4' } });
  const because = answer.ok ? '' : answer.because.join(' ');
  expect(because).toContain('BP4 needs 3 numbers that it may choose; this box leaves 4');
  expect(because).toContain('the parameter Q (0.1 to 3)');
  expect(because).toMatch(
    /alignment\.parameters of BP4: Q from 0\.1 to 3 .*; S from 0\.1 to below 1, or ripple up to 14 dB/,
  );
  for (const { alignments } of designs({ ...thunder, box: passing.box, alignment: 'compare' })) {
    expect(alignments!.map(({ name }) => name)).toEqual(['BP4', 'BP4', 'BP4']);
    for (const { box } of alignments!) expect(box.ok).toBe(true);
  }
});

test('a line has no alignment, and says why', () => {
  const answer = design({ ...organ, alignment: { name: 'B4' } });
  expect(answer.ok || answer.because.join(' ')).toContain('the waves in a line have poles without end');
});

const radiated = (more: object) => ({
  ...roomy,
  box: { kinds: ['radiator'] },
  radiators: [{ ...demoRadiator, greatestAddedMass: '200 g', ...more }],
});

test('a radiator box of a pinned alignment has its added mass as well as its air', () => {
  const box = bestOf({ ...radiated({}), alignment: { name: 'C4' } });
  const [near] = box.alignments!;
  if (!near!.box.ok) throw new Error(near!.box.because);
  expect(Math.abs(box.box.netVolume / near!.box.netVolume - 1)).toBeLessThan(0.01);
  expect(Math.abs(box.response.f3! / near!.box.f3! - 1)).toBeLessThan(0.02);
});

test('a radiator that is too heavy for an alignment, or cannot carry enough, says so', () => {
  const because = (more: object, name: string) => {
    const answer = design({ ...radiated(more), alignment: { name } });
    return answer.ok ? 'a box' : answer.because.join(' ');
  };
  expect(because({}, 'QB3')).toContain('QB3 takes a radiator that is lighter than "ten-inch radiator, invented"');
  expect(because({ greatestAddedMass: '1 g' }, 'LS4')).toMatch(/takes \d+ g on the radiator, which can carry 1 g/);
});
