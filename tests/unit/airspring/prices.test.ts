/** What each wish at its limit costs: told where it is asked for, and found again by asking for the eased brief. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Brief, type Design, design, reportText } from 'airspring';
import { describe, expect, test, vi } from 'vitest';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { run } from '../../../packages/airspring/src/command/run.js';
import { demo, put } from '../../arbitrary/brief.js';

// They search.
vi.setConfig({ testTimeout: 120_000 });

const wanted = { ...demo.wanted, lowest: '45 Hz' } as Brief['wanted'];
const closed = { ...demo, wanted, box: { kinds: ['closed'] } } as Brief;
/** The bench with straight vents of one diameter, so that a price is a short search. */
const bench = {
  ...demo,
  wanted: { ...demo.wanted, lowest: '36 Hz' },
  vent: { ...demo.vent, smallest: '70 mm', largest: '70 mm', bends: 0 },
} as Brief;
/** So little room that width, volume and cut-off bind together, in inches. */
const tight = {
  ...closed,
  space: { ...demo.space, width: '11.5 in', volume: '1 ft³' },
  wanted: { ...wanted, lowest: '60 Hz', level: '90 dB' },
  units: { length: 'in', volume: 'ft³' },
} as Brief;

function designsOf(brief: Brief, prices = true): readonly Design[] {
  const answer = design(brief, { prices });
  if (!answer.ok) throw new Error(answer.because.join(' '));
  return answer.designs;
}

test('nothing is told that was not asked for, and asking changes nothing else', () => {
  const plain = designsOf(closed, false);
  expect(plain.every((one) => !('prices' in one))).toBe(true);
  expect(designsOf(closed).map(({ prices: _, ...rest }) => rest)).toEqual(plain);
});

describe.each([
  ['a closed box', closed],
  ['a closed box in inches', tight],
  ['a bench with vents', bench],
])('%s', (_, brief) => {
  const designs = designsOf(brief);

  test('the wishes that are told are those that the margins show at their limits', () => {
    for (const { margins, prices } of designs) {
      const bound = margins.filter(({ relative }) => relative > -0.005).map(({ path }) => path);
      // A driver is as it is, and below its smallest vent a search does not look.
      const given = /^drivers|\.smallest$/;
      expect(prices!.map(({ path }) => path)).toEqual(bound.filter((path) => !given.test(path)));
    }
    expect(designs[0]!.prices!.length).toBeGreaterThan(0);
  });

  test('no wish gains less than nothing by giving way', () => {
    for (const { gained } of designs.flatMap(({ prices }) => prices!)) expect(gained).toBeGreaterThanOrEqual(0);
  });

  test('the eased brief, asked for by itself, has the box that is told', () => {
    const [first] = designs;
    for (const { path, from, to, with: told, without, gained } of first!.prices!) {
      const eased = put(brief, path, to);
      if (!from.endsWith('(default)')) {
        const [section, field] = path.split('.') as [keyof Brief, string];
        expect((brief[section] as Record<string, string>)[field]).toBe(from);
      }
      const [best] = designsOf(eased, false);
      const found = { depth: best!.response.depth, level: best!.loudness.level, volume: best!.box.outerVolume };
      if (gained === 0) expect(told).toEqual(without);
      else {
        expect(found.depth / told.depth).toBeCloseTo(1, 3);
        expect(found.level).toBeCloseTo(told.level, 1);
        expect(found.volume).toBeCloseTo(told.volume, 9);
      }
    }
  });

  test('is plain data', () => expect(JSON.parse(JSON.stringify(designs))).toEqual(designs));
});

test('a step is a round one in the unit of the brief', () => {
  const steps = Object.fromEntries(designsOf(tight).flatMap(({ prices }) => prices!.map(({ path, to }) => [path, to])));
  expect(steps['space.width'] ?? '12 in').toBe('12 in');
  expect(steps['space.volume'] ?? '1.05 ft³').toBe('1.05 ft³');
  expect(Object.keys(steps).length).toBeGreaterThan(0);
});

test('an edge that must be as long as the space does not give way', () => {
  const exact = { ...closed, space: { ...closed.space, exactly: ['width'] } } as Brief;
  for (const { prices } of designsOf(exact)) expect(prices!.map(({ path }) => path)).not.toContain('space.width');
});

test('the report tells it in a table, or that nothing costs anything', () => {
  const answer = design(closed, { prices: true });
  if (!answer.ok) throw new Error('not met');
  expect(reportText(answer, demo.units)).toContain('WHAT EACH WISH COSTS');
  const free = { ...answer, designs: answer.designs.map((one) => ({ ...one, prices: [] })) };
  expect(reportText(free, demo.units).replace(/\s+/g, ' ')).toContain('none of them costs anything');
  expect(reportText(design(closed), demo.units)).not.toContain('WHAT EACH WISH COSTS');
});

test('the command takes it as an option, for boxes that are new', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
  const write = (name: string, brief: object) => writeFileSync(join(folder, name), JSON.stringify(brief));
  write('closed.json', closed);
  write('standing.json', oldThunderBox);
  expect((await run(['design', 'closed.json', '--prices'], folder)).out).toContain('WHAT EACH WISH COSTS');
  const { status, error } = await run(['design', 'standing.json', '--prices'], folder);
  expect([status, error]).toEqual([2, '--prices is for briefs about a new box\n']);
});
