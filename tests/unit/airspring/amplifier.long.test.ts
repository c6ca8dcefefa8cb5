import { biquads, butterworthShape, highPass } from '@airspring/core/filter';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { type Brief, retrofit } from 'airspring';
import { expect, test } from 'vitest';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { conflictOf } from '../../../packages/airspring/src/search/conflict.js';
import { keepable } from '../../../packages/airspring/src/standing/fields.js';
import { answerTo, bestOf, demo, possible, put, searchFor } from '../../arbitrary/brief.js';

const withAmplifier = (amplifier: object) => ({ ...demo, amplifier }) as Brief;

/** What conflicts in a brief that cannot be met; the nearest one that can takes longer to find. */
function conflictIn(brief: Brief): string[] {
  expect(possible(brief)).toBe(false);
  return conflictOf(searchFor(brief)).wishes.map(({ path }) => path);
}

test('watts into a load are the voltage √(P R) and the current √(P/R) of a sine', () => {
  const watts = searchFor(withAmplifier({ power: '100 W', into: '8 Ω' })).job.amplifier;
  expect(watts.voltage).toBeCloseTo(28.2843, 4);
  expect(watts.current).toBeCloseTo(3.5355, 4);
  const [one, other] = [
    { power: '100 W', into: '8 Ω' },
    { voltage: '28.284271247 V', current: '3.5355339059 A' },
  ].map((amplifier) => bestOf(withAmplifier(amplifier)));
  expect(one?.box.outer).toEqual(other?.box.outer);
  expect(one?.loudness.level).toBeCloseTo(other?.loudness.level as number, 6);
});

test('too few watts are told as watts, and ten times as many are enough', () => {
  expect(conflictIn(withAmplifier({ power: '2 W', into: '4 Ω' }))).toContain('amplifier.power');
  expect(possible(withAmplifier({ power: '20 W', into: '4 Ω' }))).toBe(true);
});

test('the least load is kept: no box of this driver is a load of 8 Ω, and each is one of 6 Ω', () => {
  expect(conflictIn(withAmplifier({ voltage: '25 V', leastLoad: '8 Ω' }))).toEqual(['amplifier.leastLoad']);
  const box = bestOf(withAmplifier({ voltage: '25 V', leastLoad: '6 Ω' }));
  const { least, nominal } = box.impedance.load;
  expect(nominal).toBe(6);
  expect(least.value).toBeGreaterThan(0.8 * 6);
  const margin = box.margins.find(({ path }) => path === 'amplifier.leastLoad');
  expect(Number.parseFloat(margin?.value ?? '')).toBeCloseTo(least.value / 0.8, 1);
  const { value } = box.atWantedLevel.driveVoltageRms;
  expect(box.atWantedLevel.power?.value).toBeCloseTo(value ** 2 / 6, 9);
});

test('a filter that is there already is counted in the response that the search finds', () => {
  const filter = { order: 2, corner: '15 Hz', Q: 0.5 };
  const { wanted } = searchFor(demo).job;
  const box = bestBoxes(searchFor(withAmplifier({ voltage: '25 V', filter })), 1)[0];
  if (!box) throw new Error('no box');
  const grid = logarithmicGrid(10, 120, 20_000);
  const { levelHalfSpace } = respond(box.variant.system(box.point), grid);
  // Two equal real poles: |H| = f²/(f² + f0²).
  const heard = levelHalfSpace.map((level, i) => level + 20 * Math.log10(grid[i]! ** 2 / (grid[i]! ** 2 + 15 ** 2)));
  const reference = bestOf(withAmplifier({ voltage: '25 V', filter })).response.referenceLevel;
  const fallen = heard.findLastIndex((level) => level < reference - wanted.fall);
  expect(box.demand.cutoff).toBeCloseTo(grid[fallen]!, 1);
});

test('f3 is told with and without the filter, and the cone is safe behind it', () => {
  const bare = bestOf(withAmplifier({ voltage: '28 V' }));
  const { response, protection, amplifier, curves } = bestOf(
    withAmplifier({ voltage: '28 V', filter: { order: 4, corner: '24 Hz' } }),
  );
  expect(amplifier.filter).toBe('High-pass of order 4 at 24 Hz, Butterworth');
  expect(response.f3).toBeGreaterThan(response.unfiltered?.f3 as number);
  expect(bare.protection.atFullVoltage.lowestSafeFrequency).toBeGreaterThan(10);
  expect(protection.atFullVoltage.lowestSafeFrequency).toBeUndefined();
  expect(protection.atFullVoltage.lowestWithoutFilter).toBeGreaterThan(10);
  const flat = curves.displacementPeak[0] as number;
  expect(flat).toBeLessThan((bare.curves.displacementPeak[0] as number) / 10);
});

test('the high-pass that is named keeps the cone safe and costs the least; coefficients are told for a sample rate', () => {
  const told = bestOf(withAmplifier({ voltage: '28 V', sampleRate: '48 kHz' }));
  const { highPass: named, driveVoltageRms, lowestSafeFrequency } = told.protection.atFullVoltage;
  if (!named) throw new Error('a filter below the band is enough');
  expect(lowestSafeFrequency).toBeLessThanOrEqual(30);
  expect(named.corner).toBeLessThanOrEqual(30);
  expect(named.corner * 10).toBeCloseTo(Math.round(named.corner * 10), 9);
  expect(driveVoltageRms).toBe(28);
  expect(named.sampleRate).toBe(48_000);
  const filter = highPass(butterworthShape(named.order), si('frequency', named.corner));
  expect(named.sections).toEqual(biquads(filter, { sampleRate: '48 kHz' }).sections);
  // The travel that the curves tell, at 28 V and behind a Butterworth filter: within Xmax, and beyond it with a lower corner.
  const { frequencies, displacementPeak, driveVoltageRms: drawn } = told.curves;
  const travel = (corner: number) =>
    Math.max(
      ...frequencies.map(
        (f, i) => (displacementPeak[i]! * 28) / drawn / Math.sqrt(1 + (corner / f) ** (2 * named.order)),
      ),
    );
  expect(travel(named.corner)).toBeLessThanOrEqual(told.drivers.Xmax!);
  expect(travel(named.corner - 0.2)).toBeGreaterThan(told.drivers.Xmax!);
  expect(bestOf(withAmplifier({ voltage: '28 V' })).protection.atFullVoltage.highPass).toEqual({
    order: named.order,
    corner: named.corner,
    costAtLowest: named.costAtLowest,
    delayAtLowest: named.delayAtLowest,
    riseOfF3: named.riseOfF3,
  });
});

test('limits may be judged from a higher frequency than the response, and then the box plays louder', () => {
  const loud = put(demo, 'wanted.level', '104 dB');
  expect(possible(loud)).toBe(false);
  const box = bestOf(put(loud, 'wanted.safeFrom', '42 Hz'));
  expect(box.response.cutoff).toBeLessThanOrEqual(30);
  expect(box.loudness.stretches[0]?.from).toBeCloseTo(42, 9);
  expect(box.response.depth).toBeGreaterThan(30);
  expect(box.loudness.level).toBeGreaterThanOrEqual(104 - 1e-3);
});

test('limits may be judged from a lower frequency as well', () => {
  const box = bestOf(put(demo, 'wanted.safeFrom', '26 Hz'));
  expect(box.loudness.stretches[0]?.from).toBeCloseTo(26, 9);
  expect(box.loudness.level).toBeGreaterThanOrEqual(92 - 1e-3);
});

test('a box that stands: watts, a load that is too low for the amplifier, and a filter', () => {
  // Without saws there are fewer changes.
  const brief = (amplifier: object) => ({ ...oldThunderBox, workshop: { holeSaws: [] }, amplifier });
  const { now, rows } = retrofit(brief({ power: '50 W', into: '4 Ω', leastLoad: '4 Ω' }));
  expect(now.account.nominalLoad).toBe(4);
  expect(now.account.wanted.power).toBeCloseTo(now.account.wanted.drive.value ** 2 / 4, 9);
  for (const row of rows) if (row.ok) expect(row.account.leastLoad.value).toBeGreaterThan(0.8 * 4);
  const bare = now.account;
  // What it does now does not depend on what may change.
  const filtered = brief({ voltage: '20 V', filter: { order: 2, corner: '40 Hz' } });
  const behind = retrofit({ ...filtered, standing: { ...filtered.standing, keep: keepable } }).now.account;
  expect(behind.reachUnfiltered).toBeCloseTo(bare.reach as number, 6);
  expect(behind.reach).toBeGreaterThan(bare.reach as number);
  expect(behind.flat.travel.value).toBeLessThan(bare.flat.travel.value);
  expect(behind.flat.airSpeed?.value).toBeLessThan(bare.flat.airSpeed?.value as number);
});

test('a change that lowers the load below what the amplifier takes is refused with both numbers', () => {
  const drivers = [{ ...oldThunderBox.drivers[0], wirings: [{ series: 2 }] }];
  const keep = ['box', 'drivers', 'holes', 'tuning'];
  const standing = { ...oldThunderBox.standing, keep };
  const { rows } = retrofit({ ...oldThunderBox, drivers, standing, amplifier: { voltage: '20 V', leastLoad: '8 Ω' } });
  const wiring = rows.find(({ change }) => change === 'another wiring');
  expect(wiring?.ok).toBe(false);
  expect(JSON.stringify(wiring)).toContain('The impedance would fall to');
});

test('a nearest brief is found as well where quantities are written without a blank', () => {
  const brief = { ...withAmplifier({ power: '3W', into: '8Ω' }), wanted: { ...demo.wanted, level: '99dB' } };
  const answer = answerTo(brief);
  if (answer.ok || !answer.nearest) throw new Error('no nearest brief');
  const power = answer.nearest.changes.find(({ path }) => path === 'amplifier.power');
  const level = answer.nearest.changes.find(({ path }) => path === 'wanted.level');
  expect(power ?? level).toBeDefined();
  for (const { from } of answer.nearest.changes) expect(from).toMatch(/^\d+(W|dB| )/);
  expect(possible(answer.nearest.brief)).toBe(true);
});
