/** What builds of a design will scatter: told where it is asked for, as plain data and in a builder's words. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Brief, design, type Met, reportText } from 'airspring';
import { describe, expect, test, vi } from 'vitest';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { run } from '../../../packages/airspring/src/command/run.js';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { demo, demoRadiator, met } from '../../arbitrary/brief.js';

// They search.
vi.setConfig({ testTimeout: 60_000 });

const wanted = { ...demo.wanted, lowest: '45 Hz' } as Brief['wanted'];
const closed = { ...demo, wanted, box: { kinds: ['closed'] } } as Brief;
const vented = { ...demo, wanted, box: { ...demo.box, kinds: ['vented'] } } as Brief;
const radiator = {
  ...closed,
  wanted: { ...demo.wanted, level: '84 dB', lowest: '32 Hz' },
  space: { ...demo.space, width: '700 mm', height: '700 mm', volume: '120 L' },
  box: { kinds: ['radiator'] },
  radiators: [{ ...demoRadiator, counts: [1, 2] }],
} as Brief;

/** The answer with its scatter, worked out once. */
const scattered = memory((brief: Brief): Met => {
  const answer = design(brief, { scatter: true });
  if (!answer.ok) throw new Error(answer.because.join(' '));
  return answer;
});
const flat = (text: string): string => text.replace(/\s+/g, ' ');

test('nothing is told that was not asked for, and asking changes nothing else', () => {
  const plain = met(closed).designs;
  expect(plain.every((one) => !('scatter' in one))).toBe(true);
  expect(scattered(closed).designs.map(({ scatter: _, ...rest }) => rest)).toEqual(plain);
});

describe.each([
  ['closed', closed, ['Cms', 'Bl', 'Mms', 'Re', 'Cab']],
  ['vented', vented, ['Cms', 'Bl', 'Mms', 'Re', 'Cab', 'vent']],
  ['radiator', radiator, ['Cms', 'Bl', 'Mms', 'Re', 'Cab', 'radiatorCompliance', 'radiatorMass']],
] as const)('%s', (_, brief, names) => {
  const { designs } = scattered(brief);

  test('the band holds the f3 of the design, and the shares are whole, the greatest first', () => {
    for (const { scatter, response } of designs) {
      const { f3, causes, assumed, builds } = scatter!;
      expect(builds).toBe(500);
      expect(assumed.map(({ name }) => name)).toEqual(names);
      expect(causes.map(({ name }) => name).sort()).toEqual([...names].sort());
      expect(causes.map(({ share }) => share)).toEqual(causes.map(({ share }) => share).sort((a, b) => b - a));
      expect(causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
      if (!f3.ok) throw new Error(f3.because[0]?.text);
      expect(f3.low).toBeLessThan(response.f3!);
      expect(f3.high).toBeGreaterThan(response.f3!);
      expect(f3.middle / response.f3!).toBeGreaterThan(0.98);
      expect(f3.middle / response.f3!).toBeLessThan(1.02);
    }
  });

  test('is plain data', () => expect(JSON.parse(JSON.stringify(designs))).toEqual(designs));
});

test('the report tells it in two paragraphs, in words that a builder knows', () => {
  const answer = scattered(vented);
  const text = flat(reportText(answer, demo.units));
  expect(text).toMatch(/Of 500 builds of this box, nine of ten have their f3 between \d+\.\d Hz and \d+\.\d Hz\./);
  expect(text).toMatch(/What matters most, by its share of the variance: the [a-z() ]+ \(\d+ %\)/i);
  expect(text).toContain('Assumed by common practice: as standard deviations the compliance of the suspension 8 %,');
  expect(text).toContain('at most the resistance of the voice coil ±3 %, the air in the box ±2 % and the vent ±3 %.');
  expect(reportText(met(vented), demo.units)).not.toContain('builds of this box');
});

test('where the slopes mislead, the report says so', () => {
  const answer = scattered(vented);
  const told = (...paths: string[]) => {
    const warnings = paths.map((path) => ({ code: 'outside-validity', path, got: 2, expected: '' }) as const);
    const designs = answer.designs.map((one) => ({ ...one, scatter: { ...one.scatter!, warnings } }));
    return flat(reportText({ ...answer, designs }, demo.units));
  };
  expect(told()).not.toMatch(/rough order|more than one frequency/);
  expect(told('firstOrder')).toContain('take the shares as a rough order only');
  expect(told('crossings')).toContain('by 3 dB at more than one frequency');
});

test('the command takes it as an option, for boxes that are new', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
  const write = (name: string, brief: object) => writeFileSync(join(folder, name), JSON.stringify(brief));
  write('closed.json', closed);
  write('standing.json', oldThunderBox);
  expect(
    JSON.parse((await run(['design', 'closed.json', '--scatter', '--json'], folder)).out).designs[0].scatter.builds,
  ).toBe(500);
  expect((await run(['design', 'closed.json', '--scatter'], folder)).out).toContain('Of 500 builds');
  expect((await run(['design', 'closed.json'], folder)).out).not.toContain('Of 500 builds');
  const { status, error } = await run(['design', 'standing.json', '--scatter'], folder);
  expect([status, error]).toEqual([2, '--scatter is for briefs about a new box\n']);
});

test('of a box whose f3 is counted from its maximum the report says that nothing is worked out', () => {
  const thunder = JSON.parse(
    readFileSync(new URL('../../../packages/airspring/briefs/travelling-thunder.json', import.meta.url), 'utf8'),
  );
  const answer = scattered(thunder);
  expect(answer.designs[0]!.scatter!.f3.ok).toBe(false);
  const text = flat(reportText(answer, demo.units));
  expect(text).toContain('is not worked out, since its f3 is counted from its greatest level.');
  expect(text).not.toContain('Assumed by common practice: .');
});
