import { type Brief, design, type NotMet } from 'airspring';
import { describe, expect, test } from 'vitest';
import impossibleBench from '../../../packages/airspring/briefs/impossible-bench.json' with { type: 'json' };
import { anyBox } from '../../../packages/airspring/src/search/best.js';
import { answerTo, demo, possible, put, searchFor } from '../../arbitrary/brief.js';

const at = (brief: Brief, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], brief);
const longer = (text: string) => `${Math.round(1.5 * Number(text.split(' ')[0]))} mm`;

/** Each wish, made so wide that it asks nothing. For the lowest frequency that is the fall allowed there: the band stays. */
const idle: Readonly<Record<string, (brief: Brief) => Brief>> = {
  'wanted.lowest': (brief) => put(brief, 'wanted.fall', '60 dB'),
  'wanted.level': (brief) => put(brief, 'wanted.level', '30 dB'),
  'wanted.rise': (brief) => put(brief, 'wanted.rise', '40 dB'),
  'space.width': (brief) => put(brief, 'space.width', longer(demo.space.width)),
  'space.height': (brief) => put(brief, 'space.height', longer(demo.space.height)),
  'space.depth': (brief) => put(brief, 'space.depth', longer(demo.space.depth)),
  'space.volume': (brief) => put(brief, 'space.volume', undefined),
  'vent.airSpeed': (brief) => put(brief, 'vent.airSpeed', '300 m/s'),
  'vent.largest': (brief) => put(brief, 'vent.largest', '190 mm'),
  'printer.width': (brief) => put(brief, 'printer.width', '2000 mm'),
  'amplifier.voltage': (brief) => put(brief, 'amplifier.voltage', '2000 V'),
  'amplifier.current': (brief) => put(brief, 'amplifier.current', undefined),
};
/** The brief with only these of its wishes asked. */
const only = (brief: Brief, asked: readonly string[]): Brief =>
  Object.entries(idle).reduce((one, [path, widen]) => (asked.includes(path) ? one : widen(one)), brief);

const briefs: Readonly<Record<string, Brief>> = {
  'too deep for the space': put(demo, 'wanted.lowest', '18 Hz'),
  'too loud for the amplifier': put(put(demo, 'amplifier.voltage', '3 V'), 'wanted.level', '98 dB'),
  'lower than the driver is wide': put(demo, 'space.height', '250 mm'),
  'closed, deep and loud': { ...put(demo, 'wanted.level', '110 dB'), box: { kinds: ['closed'] } },
};

describe.each(Object.entries(briefs))('%s', { timeout: 30_000 }, (_, brief) => {
  const answer = answerTo(brief) as NotMet;
  const paths = answer.conflict?.map(({ path }) => path) ?? [];

  test('is not met, and says which wishes contradict each other', () => {
    expect(answer.ok).toBe(false);
    expect(paths.length).toBeGreaterThan(0);
    for (const { wish } of answer.conflict) expect(answer.because.join(' ')).toContain(wish);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  test('these wishes cannot be met though nothing else is asked, and dropping any one frees the rest', () => {
    expect(possible(only(brief, paths))).toBe(false);
    for (const path of paths) {
      const others = paths.filter((one) => one !== path);
      expect(anyBox(searchFor(only(brief, others))), `without ${path}`).toBeDefined();
    }
  });

  test('the nearest brief is met, and none of its changes can be spared', () => {
    const { changes, brief: nearest, answer: told } = answer.nearest!;
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.reduce((one, { path, to }) => put(one, path, to), brief)).toEqual(nearest);
    const again = design(nearest);
    expect(again.ok).toBe(true);
    expect(again).toEqual(told);
    for (const { path } of changes) {
      expect(possible(put(nearest, path, at(brief, path))), `with ${path} as it was`).toBe(false);
    }
  });
});

test('the nearest brief yields no more than the depth alone would have to', { timeout: 60_000 }, () => {
  const brief = put(demo, 'wanted.lowest', '18 Hz');
  let [short, enough] = [18, 40];
  while (enough - short > 0.2) {
    const middle = (short + enough) / 2;
    if (possible(put(brief, 'wanted.lowest', `${middle} Hz`))) enough = middle;
    else short = middle;
  }
  const { nearest } = design(brief) as NotMet;
  const yielded = nearest!.changes.map(({ from, to }) =>
    Math.abs(Math.log(Number(to.split(' ')[0]) / Number(from.split(' ')[0]))),
  );
  // All wishes weigh the same here, and none that yields is a level.
  expect(nearest!.changes.some(({ path }) => path === 'wanted.level')).toBe(false);
  expect(yielded.reduce((sum, one) => sum + one, 0)).toBeLessThan(1.02 * Math.log(enough / 18));
});

test('the nearest brief looks as far up as it pays: no dearer than a band that begins an octave higher', {
  timeout: 60_000,
}, () => {
  const brief = impossibleBench as Brief;
  const octave = put(brief, 'wanted.lowest', '52 Hz');
  let [small, enough] = [25, 60];
  while (enough - small > 0.2) {
    const middle = (small + enough) / 2;
    if (possible(put(octave, 'space.volume', `${middle} L`))) enough = middle;
    else small = middle;
  }
  const { nearest } = design(brief) as NotMet;
  const yielded = nearest!.changes.map(({ from, to }) => {
    const [[before, unit], [after]] = [from.split(' '), to.split(' ')] as [[string, string], [string]];
    // A decibel is a ratio already.
    const decibels = ((Number(after) - Number(before)) * Math.LN10) / 20;
    return Math.abs(unit === 'dB' ? decibels : Math.log(Number(after) / Number(before)));
  });
  expect(nearest!.changes.some(({ path }) => path === 'wanted.level')).toBe(false);
  // A fiftieth for the rounding of what is proposed.
  expect(yielded.reduce((sum, one) => sum + one, 0)).toBeLessThan(Math.log(52 / 26) + Math.log(enough / 25) + 0.02);
});
