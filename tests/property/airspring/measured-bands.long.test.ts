/** Drivers told by the impedance of their box: what the ranges say, against readings drawn within what they may be off. */
import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { isInputError } from '@airspring/core/fault';
import { logarithmicGrid } from '@airspring/core/quantity';
import { features, respond } from '@airspring/core/response';
import { type Retrofit, type RowDone, retrofit } from 'airspring';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepable } from '../../../packages/airspring/src/standing/fields.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { demoStanding } from '../../arbitrary/standing.js';

const [{ wirings: _, Le: _le, ...sheet }] = demoStanding.drivers as [(typeof demoStanding.drivers)[0]];

/** What is read at boxes of many drivers and tunings. */
const boxes = fc.record({
  fs: fc.integer({ min: 30, max: 60 }),
  Qts: fc.double({ min: 0.25, max: 0.5, noNaN: true }),
  fb: fc.integer({ min: 28, max: 48 }),
  QL: fc.constantFrom(5, 7, 15, 1e4),
  parallel: fc.constantFrom(1, 2),
});

interface Readings {
  readonly peaks: readonly [number, number];
  readonly tuning: number;
  readonly peakImpedance: number;
  readonly flank: readonly [frequency: number, impedance: number];
  readonly Re: number;
  readonly cone: number;
  readonly air: number;
}

function readingsOf({ fs, Qts, fb, QL, parallel }: typeof boxes extends fc.Arbitrary<infer T> ? T : never): Readings {
  const completed = completeDriver({ ...sheet, fs: `${fs} Hz`, Qts, Qes: Qts * 1.15 } as never);
  if (!completed.ok) throw new Error('the sheet is whole');
  const { driver } = completed;
  const drivers = group(driver, { parallel });
  const system = ventedBox({ drivers, netVolume: '22 L', fb: `${fb} Hz`, QL });
  const { impedanceMaxima, impedanceMinima } = features(system, { from: '5 Hz', to: '300 Hz' });
  const [lower, upper] = impedanceMaxima as [(typeof impedanceMaxima)[0], (typeof impedanceMaxima)[0]];
  const at = 1.15 * upper.frequency;
  return {
    peaks: [lower.frequency, upper.frequency],
    tuning: impedanceMinima.find(({ frequency }) => frequency > lower.frequency)!.frequency,
    peakImpedance: Math.max(lower.value, upper.value),
    flank: [at, respond(system, logarithmicGrid(at, at + 1, 2)).impedance[0]!],
    Re: drivers.equivalent.Re,
    cone: 2 * Math.sqrt(driver.Sd / Math.PI),
    air: 0.022,
  };
}

const within = { frequency: '0.3 Hz', length: '2 mm', impedance: 0.03, air: '0.7 L' };

const briefOf = ({ peaks, tuning, peakImpedance, flank, Re, cone, air }: Readings, parallel: number) => ({
  ...demoStanding,
  drivers: [{ name: 'unknown', coneDiameter: `${cone * 1e3} mm`, wirings: [{ parallel }] }],
  standing: {
    ...demoStanding.standing,
    air: `${air * 1e3} L`,
    measured: {
      peaks: peaks.map((peak) => `${peak} Hz`),
      tuning: `${tuning} Hz`,
      peakImpedance: `${peakImpedance} Ω`,
      flank: { frequency: `${flank[0]} Hz`, impedance: `${flank[1]} Ω` },
      Re: `${Re} Ω`,
      within,
    },
  },
});

/** Only what the box does now: nothing may change, so that no change is worked out. */
function onlyNow(read: Readings, parallel: number) {
  const brief = briefOf(read, parallel);
  return { ...brief, standing: { ...brief.standing, keep: keepable } };
}

/** The same from readings that are off by nothing, in a box that is known to leak so much: no range is told. */
function withoutRange(read: Readings, parallel: number, QL?: number) {
  const brief = onlyNow(read, parallel);
  const { within: _, ...measured } = brief.standing.measured;
  return { ...brief, ...(QL !== undefined && { box: { QL } }), standing: { ...brief.standing, measured } };
}

/** The numbers of a box that leaks so much; `undefined` where its peak is too high for that. */
function numbersAt(read: Readings, parallel: number, QL: number) {
  try {
    return numbersOf(retrofit(withoutRange(read, parallel, QL)).now);
  } catch (error) {
    if (!isInputError(error) || !error.faults.every(({ path }) => path === 'box.QL')) throw error;
    return undefined;
  }
}

/** Every reading moved by a share of what it may be off, from −1 to 1. */
const moved = (read: Readings, [a, b, c, d, e, f, g, h, i]: readonly number[]): Readings => ({
  peaks: [read.peaks[0] + 0.3 * a!, read.peaks[1] + 0.3 * b!],
  tuning: read.tuning + 0.3 * c!,
  peakImpedance: read.peakImpedance * (1 + 0.03 * d!),
  flank: [read.flank[0] + 0.3 * e!, read.flank[1] * (1 + 0.03 * f!)],
  Re: read.Re * (1 + 0.03 * g!),
  cone: read.cone + 2e-3 * h!,
  air: read.air + 0.7e-3 * i!,
});

/** Half of the draws are corners, where a range is most easily left. */
const shares = fc.oneof(
  fc.array(fc.constantFrom(-1, 1), { minLength: 10, maxLength: 10 }),
  fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 10, maxLength: 10 }),
);

const numbersOf = ({ account: { reach, loudest, wanted } }: Pick<Retrofit['now'], 'account'>) => ({
  reach,
  level: loudest.level,
  airSpeed: wanted.airSpeed?.value,
});

// Each box takes seconds: few are drawn, unless very many cases are asked for.
const cases = fc.sample(boxes, {
  numRuns: Math.min(60, Math.max(fuzzRuns < 300 ? 3 : 5, Math.round(fuzzRuns / 400))),
  seed: 20261128,
});

test.each(cases)('drivers whose readings are off by less than stated stay inside the ranges told: %j', (box) => {
  const read = readingsOf(box);
  const { now } = retrofit(onlyNow(read, box.parallel));
  // Where corners tell of no driver there is no range to leave.
  if (now.bands === undefined) return;
  const told = now.bands;
  expect(numbersOf(retrofit(withoutRange(read, box.parallel)).now)).toEqual(numbersOf(now));
  for (const [name, value] of Object.entries(numbersOf(now))) {
    expect(told[name as keyof typeof told]?.from, name).toBeLessThanOrEqual(value ?? Infinity);
  }
  const truth = numbersAt(read, box.parallel, box.QL)!;
  for (const name of ['reach', 'level', 'airSpeed'] as const) {
    expect(truth[name] ?? Infinity, name).toBeGreaterThanOrEqual(told[name]!.from - 1e-3);
    expect(truth[name] ?? Infinity, name).toBeLessThanOrEqual((told[name]!.to ?? Infinity) + 1e-3);
  }
  for (const share of fc.sample(shares, { numRuns: fuzzRuns > 300 ? 40 : 8, seed: box.fs })) {
    // The last share is that of the leak: from none to a QL of 5.
    const found = numbersAt(moved(read, share), box.parallel, 1 / (1e-4 + ((1 + share[9]!) / 2) * (0.2 - 1e-4)));
    if (found === undefined) continue;
    for (const name of ['reach', 'level', 'airSpeed'] as const) {
      const { from, to = Infinity } = told[name]!;
      const value = found[name] ?? Infinity;
      // The greatest level is the least over tones and limits: the search may miss an end of it by a tenth of a decibel.
      const allowed = name === 'level' ? 0.15 : 1e-9 * value;
      expect(value, `${name} of ${share}`).toBeGreaterThanOrEqual(from - allowed);
      expect(value, `${name} of ${share}`).toBeLessThanOrEqual(to + allowed);
    }
  }
});

test.each(cases.slice(0, 3))(
  'a brief with the readings of a corner has the number at that end of its range: %j',
  (box) => {
    const read = readingsOf(box);
    const { now } = retrofit(onlyNow(read, box.parallel));
    if (now.bands === undefined) return;
    for (const name of ['reach', 'level', 'airSpeed'] as const) {
      const { from, to, corners } = now.bands[name]!;
      for (const [end, corner] of [
        [from, corners.from],
        [to ?? Infinity, corners.to],
      ] as const) {
        const there: Readings = {
          peaks: [corner.lowerPeak, corner.upperPeak],
          tuning: corner.dip,
          peakImpedance: corner.peakImpedance,
          flank: [corner.flankFrequency, corner.flankImpedance],
          Re: corner.Re,
          cone: corner.coneDiameter,
          air: corner.air,
        };
        const found =
          numbersOf(retrofit(withoutRange(there, box.parallel, Math.min(1e4, 1 / corner.leak))).now)[name] ?? Infinity;
        if (Number.isFinite(end)) expect(found / end, name).toBeCloseTo(1, 7);
        else expect(found).toBe(Infinity);
        // No reading is off by more than was told.
        expect(Math.abs(corner.dip - read.tuning)).toBeLessThanOrEqual(0.3 + 1e-9);
        expect(Math.abs(corner.Re / read.Re - 1)).toBeLessThanOrEqual(0.03 + 1e-9);
      }
      expect(corners.from).not.toEqual(corners.to);
    }
  },
);

test('ranges close where the readings are exact, grow with what they may be off, and do not depend on what may change', () => {
  const read = readingsOf({ fs: 42, Qts: 0.38, fb: 34, QL: 15, parallel: 2 });
  const widths = (by: number) => {
    const brief = { ...briefOf(read, 2), box: { QL: 1e4 } };
    const exact = { frequency: `${by} Hz`, length: `${4 * by} mm`, impedance: by / 10, air: `${2 * by} L` };
    const measured = { ...brief.standing.measured, within: exact };
    // Of the tubes for a flange, which tell no range, one saw is enough.
    const workshop = { holeSaws: ['57 mm'] };
    const standing = { ...brief.standing, measured };
    const { now, rows, first = -1 } = retrofit({ ...brief, workshop, standing });
    expect(retrofit({ ...brief, standing: { ...standing, keep: keepable } }).now).toEqual(now);
    const helped = rows[first] as RowDone;
    expect(rows.filter((row) => row.ok && row.bands)).toEqual([helped]);
    return [now, helped].flatMap(({ bands }) =>
      (['reach', 'level', 'airSpeed'] as const).map((name) => bands![name]!.to! - bands![name]!.from),
    );
  };
  const [none, fine, coarse] = [widths(0), widths(0.1), widths(0.3)];
  for (const [i, width] of none.entries()) {
    expect(width).toBeLessThan(1e-9);
    expect(fine[i]!).toBeGreaterThan(1e-3);
    expect(coarse[i]!).toBeGreaterThan(2 * fine[i]!);
  }
});
