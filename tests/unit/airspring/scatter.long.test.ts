/** What builds of a design will scatter: told where it is asked for, as plain data and in a builder's words. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { si } from '@airspring/core/quantity';
import { levelGradient } from '@airspring/core/response';
import { type Brief, design, type Met, reportText } from 'airspring';
import { describe, expect, test, vi } from 'vitest';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import travelling from '../../../packages/airspring/briefs/travelling-thunder.json' with { type: 'json' };
import { run } from '../../../packages/airspring/src/command/run.js';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { demo, demoRadiator, met, searchFor } from '../../arbitrary/brief.js';

// They search.
vi.setConfig({ testTimeout: 60_000 });

const wanted = { ...demo.wanted, lowest: '45 Hz' } as Brief['wanted'];
const closed = { ...demo, wanted, box: { kinds: ['closed'] } } as Brief;
/** Of one diameter: what builds scatter does not depend on how many boxes were tried. */
const vent = { ...demo.vent, smallest: '70 mm', largest: '70 mm', bends: 0 };
const vented = { ...demo, wanted, vent, box: { ...demo.box, kinds: ['vented'] } } as Brief;
const radiator = {
  ...closed,
  wanted: { ...demo.wanted, level: '84 dB', lowest: '32 Hz' },
  space: { ...demo.space, width: '700 mm', height: '700 mm', volume: '120 L', exactly: ['depth'] },
  box: { kinds: ['radiator'] },
  radiators: [demoRadiator],
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
  [
    'vented with waves',
    { ...vented, vent: { ...vent, waves: true } },
    ['Cms', 'Bl', 'Mms', 'Re', 'Cab', 'vent.length'],
  ],
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

  test('the middle of the band of levels is the level of the design', () => {
    for (const { scatter, curves } of designs) {
      const { frequencies, low, middle, high } = scatter!.level!;
      const drive = 20 * Math.log10(curves.driveVoltageRms);
      const at = (f: number) => frequencies.findIndex((one) => one >= f);
      expect(new Set([low, middle, high].map(({ length }) => length))).toEqual(new Set([frequencies.length]));
      frequencies.forEach((_, i) => {
        expect(low[i]!).toBeLessThan(middle[i]!);
        expect(middle[i]!).toBeLessThan(high[i]!);
      });
      curves.frequencies.forEach((f, i) => {
        if (f < 20 || f > 190) return;
        const k = at(f);
        const between = [k - 1, k].map((one) => middle[one]!).sort((a, b) => a - b);
        expect(curves.levelHalfSpace[i]! - drive).toBeGreaterThan(between[0]! - 0.2);
        expect(curves.levelHalfSpace[i]! - drive).toBeLessThan(between[1]! + 0.2);
      });
    }
  });

  test('the width of the band of levels is what the slopes of the level say', () => {
    const search = searchFor(brief);
    for (const { kind, box, vent, scatter } of designs) {
      // Of the other kinds the numbers of a point do not stand in the design.
      if (kind === 'radiator') continue;
      const variant = search.variants.find((one) => one.kind.name === kind)!;
      const system = variant.system([box.netVolume, ...(vent ? [vent.fb, vent.diameter] : [])]);
      const { frequencies, low, high } = scatter!.level!;
      for (const i of [60, 120, 180]) {
        const slopes = levelGradient(system, si('frequency', frequencies[i]!));
        if (!slopes.ok) throw new Error('no slopes');
        const variance = scatter!.assumed.reduce((sum, one) => {
          const share = 'within' in one ? one.within / Math.sqrt(3) : one.standardDeviation;
          return sum + (slopes.byElement[one.name]! * share) ** 2;
        }, 0);
        // 5 and 95 % of a normal distribution; those of 500 builds are known within a tenth.
        expect((high[i]! - low[i]!) / (2 * 1.645 * Math.sqrt(variance))).toBeGreaterThan(0.85);
        expect((high[i]! - low[i]!) / (2 * 1.645 * Math.sqrt(variance))).toBeLessThan(1.15);
      }
    }
  });

  test('is plain data', () => expect(JSON.parse(JSON.stringify(designs))).toEqual(designs));
});

test('the report tells it in two paragraphs, in words that a builder knows', () => {
  const answer = scattered(vented);
  const text = flat(reportText(answer, demo.units));
  expect(text).toMatch(/Of 500 builds of this box, nine of ten have their f3 between \d+\.\d Hz and \d+\.\d Hz\./);
  expect(text).toMatch(
    /Nine of ten play from [\d.]+ dB softer to [\d.]+ dB louder than the middle one at [\d.]+ Hz, and from [\d.]+ dB softer/,
  );
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

describe('a band-pass, whose f3 is counted from its maximum', () => {
  const thunder = {
    ...travelling,
    box: { kinds: ['band-pass'] },
    partition: { across: ['width'] },
  } as unknown as Brief;
  const { designs } = scattered(thunder);

  test('its builds lie on both sides of its f3, and the shares name its chambers', () => {
    for (const { scatter, response } of designs) {
      const { f3, causes } = scatter!;
      if (!f3.ok) throw new Error(f3.because[0]?.text);
      expect(f3.low).toBeLessThan(response.f3!);
      expect(f3.high).toBeGreaterThan(response.f3!);
      expect(causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
      expect(causes.map(({ name }) => name)).toContain('Cab rear');
    }
  });

  test('the report says how many builds play what is wanted', () => {
    expect(flat(reportText(scattered(thunder), demo.units))).toMatch(/of them play the wanted level|All of them play/);
  });
});

test.each([
  ['closed', closed],
  ['vented', vented],
])('%s: builds play about as loud as the design, which no limit lets play less than is wanted', (_, brief) => {
  for (const { scatter, loudness } of scattered(brief).designs) {
    const { low, middle, high, kept } = scatter!.greatest!;
    expect(low).toBeLessThan(loudness.level);
    expect(high).toBeGreaterThan(loudness.level);
    expect(middle).toBeCloseTo(loudness.level, 0);
    // Half of the builds or more keep what the middle one keeps.
    expect(kept >= 0.5).toBe(middle >= Number.parseFloat(brief.wanted.level));
  }
});
