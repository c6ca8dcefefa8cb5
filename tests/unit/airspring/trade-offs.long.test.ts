/** The smallest boxes for many depths and levels: each keeps the brief, none is bettered, and no smaller one is found by asking. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isInputError } from '@airspring/core/fault';
import { type Brief, design, type TradeOffOptions, type TradeOffs, tradeOffs, tradeOffsText } from 'airspring';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { run } from '../../../packages/airspring/src/command/run.js';
import { bestOf, demo, possible, put } from '../../arbitrary/brief.js';

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
      const least = bestOf(small).box.outerVolume;
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
  await expect(tradeOffs(closed, { lowest: [] })).rejects.toThrow(
    'options.lowest: got a list of 0; expected a list of 1 to 60 values. Give a few.',
  );
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

describe('the command', () => {
  const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
  const write = (name: string, brief: object) => writeFileSync(join(folder, name), JSON.stringify(brief));
  write('closed.json', closed);
  write('loud.json', put(closed, 'wanted.level', '125 dB'));
  write('wrong.json', put(closed, 'wanted.level', '12 L'));
  write('standing.json', oldThunderBox);
  const command = (...words: string[]) => run(['design', ...words, '--trade-offs'], folder);

  test('prints the boxes of the library as text, and as data', async () => {
    const front = await tradeOffs(closed);
    const heard: string[] = [];
    const data = await run(['design', 'closed.json', '--trade-offs', '--json'], folder, ({ what, count, of }) =>
      heard.push(`${what} ${count} of ${of}`),
    );
    expect(data).toEqual({ status: 0, out: `${JSON.stringify(front)}\n`, error: '' });
    expect([heard[0], heard.at(-1)]).toEqual(['smallest boxes 1 of 7', 'smallest boxes 7 of 7']);
    const { out } = await command('closed.json');
    expect(out).toBe(tradeOffsText(front, closed.units));
    for (const { lowest, level, outer } of front.boxes) {
      const edges = outer.map((edge) => Number((edge * 1e3).toFixed(1))).join(' × ');
      expect(out).toMatch(
        new RegExp(`${Number(lowest.toPrecision(3))} Hz +${level.toFixed(1)} dB .*${edges} .*closed`),
      );
    }
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test('ends with 1 where no box can be had, and with 2 where the brief has a fault', async () => {
    const { status, out } = await command('loud.json');
    expect(status).toBe(1);
    expect(out).toContain('No box that meets the other wishes');
    const wrong = await command('wrong.json');
    expect([wrong.status, wrong.out]).toEqual([2, '']);
    expect(wrong.error).toMatch(/^wanted\.level: [^\n]*\n$/);
  });

  test('is for new boxes, and goes without what is told of designs', async () => {
    expect(await command('standing.json')).toEqual({
      status: 2,
      out: '',
      error: '--trade-offs is for briefs about a new box\n',
    });
    for (const word of ['--scatter', '--prices', '--only=A', '--html=page.html']) {
      const { status, error } = await command('closed.json', word);
      expect(status).toBe(2);
      expect(error).toContain(`so it goes without ${word.split('=')[0]};`);
    }
  });
});

test('the text tells each driver by its number and its name, safe to print', async () => {
  const front = await tradeOffs(closed, { lowest: ['38 Hz', '55 Hz'], levels: ['86 dB'] });
  const [one, other] = front.boxes;
  const drivers = { name: 'other\u001b', index: 2, count: 2 };
  const text = tradeOffsText({ ...front, boxes: [one!, { ...other!, drivers }] }, { length: 'in', volume: 'ft³' });
  expect(text).toMatch(/38 Hz .* ft³ +#1 /);
  expect(text).toMatch(/55 Hz .* ft³ +2 × #3 /);
  expect(text).toContain(`#1  "${demo.drivers[0]!.name}"`);
  expect(text).toContain('#3  "other\\u001b"');
});
