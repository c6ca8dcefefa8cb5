/** The smallest boxes for many depths and levels: each keeps the brief, none is bettered, and no smaller one is found by asking. */
import { isInputError } from '@airspring/core/fault';
import { type Brief, design, type TradeOffOptions, type TradeOffs, tradeOffs } from 'airspring';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { demo, met, possible, put } from '../../arbitrary/brief.js';

// They search.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const closed = { ...demo, wanted: { ...demo.wanted, lowest: '45 Hz' }, box: { kinds: ['closed'] } } as Brief;
const vented = { ...demo, box: { kinds: ['vented'], QL: 7 } } as Brief;

async function pathsOf(options: TradeOffOptions, brief: unknown = closed): Promise<readonly string[]> {
  try {
    await tradeOffs(brief, options);
  } catch (error) {
    if (isInputError(error)) return error.faults.map(({ path }) => path);
    throw error;
  }
  return [];
}

/** The brief that a box of a front answers. */
const asked = (brief: Brief, { lowest, level }: TradeOffs['boxes'][number]): Brief =>
  put(put(brief, 'wanted.lowest', `${lowest} Hz`), 'wanted.level', `${level} dB`);

describe.each([
  ['closed', closed, { lowest: ['38 Hz', '45 Hz', '52 Hz'], levels: ['86 dB', '92 dB', '96 dB'] }],
  ['vented', vented, { lowest: ['31 Hz', '36 Hz'], levels: ['95 dB'] }],
] as const)('%s', (kind, brief, options) => {
  let front: TradeOffs;
  beforeAll(async () => {
    front = await tradeOffs(brief, options);
  });

  test('tells what was tried, boxes of that alone, and is plain data', () => {
    expect(front.lowest).toEqual(options.lowest.map((text) => Number.parseFloat(text)));
    expect(front.levels).toEqual(options.levels.map((text) => Number.parseFloat(text)));
    for (const box of front.boxes) {
      expect(front.lowest).toContain(box.lowest);
      expect(front.levels).toContain(box.level);
      expect(box.kind).toBe(kind);
      expect(box.volume).toBeCloseTo(box.outer[0] * box.outer[1] * box.outer[2], 12);
    }
    expect(front.boxes.length).toBeGreaterThan(1);
    expect(JSON.parse(JSON.stringify(front))).toEqual(front);
  });

  test('deeper or louder boxes are larger: none is bettered in all three', () => {
    for (const one of front.boxes) {
      for (const other of front.boxes) {
        if (other !== one && other.lowest <= one.lowest && other.level >= one.level) {
          expect(other.volume).toBeGreaterThan(one.volume);
        }
      }
    }
  });

  test('a brief that asks for so much in so small a volume can be met', () => {
    for (const box of front.boxes) {
      // A thousandth more: that much two searches of one brief may differ.
      const within = put(asked(brief, box), 'space.volume', `${box.volume * 1001} L`);
      expect(possible(within), `${box.lowest} Hz, ${box.level} dB`).toBe(true);
    }
  });

  test('the smallest box of a whole search is not smaller', () => {
    for (const box of front.boxes) {
      const small = { ...asked(brief, box), weights: { small: 1, deep: 0, loud: 0, simple: 0 } };
      const least = Math.min(...met(small).designs.map((one) => one.box.outerVolume));
      expect(box.volume / least, `${box.lowest} Hz, ${box.level} dB`).toBeLessThan(1.002);
    }
  });
});

test('without a list, beginnings and levels around those of the brief are tried, as far as its band goes', async () => {
  const { lowest, levels } = await tradeOffs(put(closed, 'wanted.highest', '70 Hz'));
  expect(lowest).toEqual([31.8, 37.8, 45, 53.5]);
  expect(levels).toEqual([86, 89, 92, 95, 98]);
});

test('where nothing that is asked for can be played, there is no box', async () => {
  expect((await tradeOffs(closed, { lowest: ['20 Hz'], levels: ['120 dB'] })).boxes).toEqual([]);
});

test('a brief with faults is refused as design refuses it', async () => {
  const wrong = put(closed, 'wanted.level', '12 L');
  expect(await pathsOf({}, wrong)).toEqual(['wanted.level']);
  expect(() => design(wrong)).toThrowError('wanted.level');
});

test('lists that are empty, too long, no quantities, or beyond the band are refused at their places', async () => {
  expect(await pathsOf({ lowest: [], levels: [] })).toEqual(['options.lowest', 'options.levels']);
  expect(await pathsOf({ levels: new Array(61).fill('90 dB') })).toEqual(['options.levels']);
  expect(await pathsOf({ lowest: ['30 Hz', '5 mm' as never], levels: [Number.NaN as never] })).toEqual([
    'options.lowest[1]',
    'options.levels[0]',
  ]);
  expect(await pathsOf({ lowest: ['30 Hz', '110 Hz'] })).toEqual(['options.lowest[1]']);
});

test('what is no list is refused, and a fault stands at its place beside another', async () => {
  for (const list of ['30 Hz', 30, {}]) expect(await pathsOf({ lowest: list as never })).toEqual(['options.lowest']);
  expect(await pathsOf({ lowest: ['5 mm' as never, '110 Hz'] })).toEqual(['options.lowest[0]', 'options.lowest[1]']);
});

test('the highest beginning that a refusal names is taken', async () => {
  const brief = put(closed, 'wanted.highest', '200 Hz');
  const levels = ['60 dB'] as const;
  const refused = tradeOffs(brief, { lowest: ['190 Hz'], levels });
  const [, highest] = /at most ([\d.]+) Hz/.exec((await refused.catch((error: Error) => error.message)) as string)!;
  expect((await tradeOffs(brief, { lowest: [`${Number(highest)} Hz`], levels })).lowest).toEqual([Number(highest)]);
});

test('what is asked for twice is tried once', async () => {
  const { lowest, levels, boxes } = await tradeOffs(closed, { lowest: ['45 Hz', '45 Hz'], levels: ['86 dB', '86 dB'] });
  expect([lowest, levels, boxes.length]).toEqual([[45], [86], 1]);
});

test('options that are no record are refused', async () => {
  for (const options of [null, 'fast', 3]) expect(await pathsOf(options as never)).toEqual(['options']);
});
