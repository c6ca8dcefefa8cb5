/** What is told of a driver that tells where it meets something hard: its margin, and what tones and programme do to it. */
import { filterLevel } from '@airspring/core/filter';
import { logarithmicGrid } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type Brief, design } from 'airspring';
import { describe, expect, test } from 'vitest';
import campfire from '../../../packages/airspring/briefs/campfire-box.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { closed } from '../../../packages/airspring/src/kind/closed.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { mechanicalOf } from '../../../packages/airspring/src/record/mechanical.js';
import { playingOf } from '../../../packages/airspring/src/record/playing.js';
import { phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { protectionText } from '../../../packages/airspring/src/words/play-text.js';
import { bestOf } from '../../arbitrary/brief.js';
import { faultsOf } from '../../refusal/faults.js';

const flat = (text: string) => text.replace(/\s+/g, ' ');
const [driver] = campfire.drivers;
const with_ = (Xmech: string, amplifier: object = {}) =>
  ({
    ...campfire,
    drivers: [{ ...driver, largeSignal: { Xmech } }],
    box: { kinds: ['closed'] },
    vent: undefined,
    amplifier: { ...campfire.amplifier, ...amplifier },
  }) as unknown as Brief;
const written = (brief: Brief) => JSON.parse(JSON.stringify(brief)) as Brief;

describe.each([
  ['without a filter', {}],
  ['behind a filter', { filter: { order: 2, corner: '30 Hz' } }],
])('%s', (_, filter) => {
  // So small that some tones drive the cone that far.
  const job = readBrief(written(with_('6.5 mm', { voltage: '25 V', ...filter })), standard);
  const variant = closed.variants(job as never, job.choices[0]!)[0]!;
  const playing = playingOf({ variant, point: [0.012], demand: { cutoff: 50, rise: 0 } } as never);
  const told = mechanicalOf(job, playing.system, playing.largeSignal?.Xmech)!;
  const travelAt = (frequencies: ArrayLike<number>) => {
    const { displacementPeak } = respond(playing.system, frequencies, { driveVoltageRms: '25 V' });
    const passed = job.amplifier.filter && filterLevel(job.amplifier.filter, Float64Array.from(frequencies) as never);
    return displacementPeak.map((travel, i) => travel * 10 ** ((passed?.[i] ?? 0) / 20));
  };
  const fine = logarithmicGrid(10, job.wanted.highest, 3000);

  test('no tone moves the cone farther than the one that is told', () => {
    const most = Math.max(...travelAt(fine));
    expect(told.tone.value / most).toBeCloseTo(1, 4);
    expect(travelAt([told.tone.frequency])[0]).toBeCloseTo(told.tone.value, 12);
  });
  test('from the frequency that is told upwards no tone reaches it, and just below one does', () => {
    expect(told.from).toBeDefined();
    const above = fine.filter((f) => f > told.from! * 1.0001);
    expect(Math.max(...travelAt(above))).toBeLessThan(told.Xmech);
    expect(travelAt([told.from! * 0.999])[0]).toBeGreaterThan(told.Xmech);
  });
  test('programme that just clips moves it as its spectrum says, which is less than its worst tone does', () => {
    // Equal power at tones in equal ratios, whose peaks together stand above the rms as those of the voltage do.
    const before = travelAt(fine).map((travel) => travel ** 2);
    const passed = job.amplifier.filter ? filterLevel(job.amplifier.filter, fine).map((dB) => 10 ** (dB / 10)) : [1];
    const mean = (column: ArrayLike<number>) => Array.from(column).reduce((sum, one) => sum + one, 0) / column.length;
    expect(told.programme / Math.sqrt(mean(before) / mean(passed))).toBeCloseTo(1, 2);
    expect(told.programme).toBeLessThan(told.tone.value / Math.sqrt(mean(passed)));
  });
});

test('a driver that does not tell it is told nothing of it', () => {
  const job = readBrief(written({ ...with_('9 mm'), drivers: [driver] } as never), standard);
  const variant = closed.variants(job as never, job.choices[0]!)[0]!;
  const { system, largeSignal } = playingOf({ variant, point: [0.012], demand: {} } as never);
  expect(mechanicalOf(job, system, largeSignal?.Xmech)).toBeUndefined();
});

test('the report has its margin beside that of Xmax, and flips with it', () => {
  const one = bestOf({ ...campfire, drivers: [{ ...driver, largeSignal: { Xmech: '9 mm' } }] });
  const path = 'drivers[0].largeSignal.Xmech';
  const margin = one.margins.find((each) => each.path === path)!;
  expect(margin.limit).toBe('9 mm');
  expect(margin.relative).toBeCloseTo(one.atWantedLevel.displacementPeak.value / 0.009 - 1, 9);
  const { tone, programme } = one.mechanical!;
  const sayFor = (Xmech: number, from?: number) => {
    const mechanical = { ...one.mechanical!, Xmech, ...(from && { from }) };
    return flat(protectionText({ ...one, mechanical }, phrasing({})).join(' '));
  };
  const mm = (metres: number) => `${Number((metres * 1e3).toPrecision(3))} mm`;
  expect(sayFor(2 * tone.value)).toContain('upwards does that: the worst moves the cone by');
  expect(sayFor(2 * tone.value)).toContain('so that 50 % stay free.');
  expect(sayFor(1.1 * tone.value)).toContain('less than the 20 % that are usual');
  expect(sayFor(0.9 * tone.value, 20)).toContain('tones below 20.0 Hz can drive the cone against it');
  expect(sayFor(0.012)).toContain('12 mm (Xmech), one way, 6.0 dB beyond Xmax.');
  expect(sayFor(0.012)).toContain(`moves it by about ${mm(programme)}`);
});

test('a cone cannot meet something hard before Xmax', () => {
  const short = () => design(written(with_('5 mm')));
  expect(faultsOf(short)).toMatchObject([
    { code: 'inconsistent', path: 'drivers[0].largeSignal.Xmech', got: '5 mm', expected: 'at least Xmax, 6 mm' },
  ]);
});
