import { completeDriver, group } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { isInputError } from '@airspring/core/fault';
import { logarithmicGrid } from '@airspring/core/quantity';
import { features, respond } from '@airspring/core/response';
import { retrofit, retrofitPage, retrofitText } from 'airspring';
import { describe, expect, test } from 'vitest';
import { demoStanding, retrofitted } from '../../arbitrary/standing.js';

const { drivers, standing: demoBox, ...others } = demoStanding;
/** Everything is kept: what is told of the drivers does not depend on what could be changed. */
const standing = { ...demoBox, keep: ['box', 'drivers', 'wiring', 'holes', 'tuning'] };
const { wirings: _, Le: _le, ...sheet } = drivers[0]!;
const whole = completeDriver(sheet as never);
if (!whole.ok) throw new Error('the sheet is whole');
const { driver, parameters } = whole;

/** A brief whose drivers are told by the impedance that they have in a box of 22 L, tuned to 34 Hz; it says how much its box leaks. */
function measuredIn(
  wiring: { series?: number; parallel?: number; isobaric?: boolean },
  change: object = {},
  QL = 1e4,
  box: object = { QL },
) {
  const drivers = group(driver, wiring);
  const system = ventedBox({ drivers, netVolume: '22 L', fb: '34 Hz', QL });
  const { impedanceMaxima, impedanceMinima } = features(system, { from: '5 Hz', to: '300 Hz' });
  const [lower, upper] = impedanceMaxima as [(typeof impedanceMaxima)[0], (typeof impedanceMaxima)[0]];
  const at = 1.15 * upper.frequency;
  const flank = respond(system, logarithmicGrid(at, at + 1, 2)).impedance[0]!;
  return {
    ...others,
    box,
    drivers: [{ name: 'unknown', coneDiameter: `${2e3 * Math.sqrt(driver.Sd / Math.PI)} mm`, wirings: [wiring] }],
    standing: {
      ...standing,
      measured: {
        peaks: [`${lower.frequency} Hz`, `${upper.frequency} Hz`],
        tuning: `${impedanceMinima.find(({ frequency }) => frequency > lower.frequency)!.frequency} Hz`,
        peakImpedance: `${Math.max(lower.value, upper.value)} Ω`,
        flank: { frequency: `${at} Hz`, impedance: `${flank} Ω` },
        Re: `${drivers.equivalent.Re} Ω`,
        ...change,
      },
    },
  };
}

describe('a driver without a sheet', () => {
  test.each([[{}], [{ parallel: 2 }], [{ series: 2 }], [{ parallel: 2, isobaric: true }]])(
    'comes back from the impedance of its box: %o',
    (wiring) => {
      const { measuredDrivers } = retrofitted(measuredIn(wiring));
      const found = Object.fromEntries(measuredDrivers!.values.map(({ field, value }) => [field, value]));
      for (const field of ['fs', 'Qes', 'Qms', 'Qts'] as const) {
        expect(found[field]! / parameters[field], field).toBeCloseTo(1, 3);
      }
      for (const field of ['Mms', 'Cms', 'Bl', 'Re', 'Sd', 'Rms'] as const) {
        expect(found[field]! / (driver[field] as number), field).toBeCloseTo(1, 3);
      }
    },
  );

  const exact = { frequency: '0 Hz', length: '0 mm', impedance: 0, air: '0 L' };

  test.each([1e4, 15, 7, 5])('a box with a QL of %d has the truth within the ranges, though none is stated', (QL) => {
    const { measuredDrivers } = retrofitted(measuredIn({ parallel: 2 }, { within: exact }, QL, {}));
    for (const { field, value, from, to } of measuredDrivers!.values) {
      const truth = field in parameters ? parameters[field as 'fs'] : (driver[field as 'Mms'] as number);
      expect(from, field).toBeLessThanOrEqual(truth * (1 + 1e-5));
      expect(to, field).toBeGreaterThanOrEqual(truth * (1 - 1e-5));
      if (QL === 7) expect(value / truth, field).toBeCloseTo(1, 4);
    }
    expect(measuredDrivers!.leaks).toEqual({ QL: 7, least: expect.closeTo(5, 10), assumed: true });
  });

  test('the report computes a box with the peaks and the dip that were measured', () => {
    const brief = measuredIn({ parallel: 2 }, {}, 12, {});
    const { now, assumed } = retrofitted(brief);
    const [lower, upper] = brief.standing.measured.peaks.map(Number.parseFloat);
    expect(now.impedance.maxima.map(({ frequency }) => frequency)).toEqual([
      expect.closeTo(lower!, 3),
      expect.closeTo(upper!, 3),
    ]);
    expect(assumed.flat().join('')).toContain('a QL of 7');
  });

  test('a peak that is too high for the leaks that are usual has less of them assumed, and refuses those that are stated', () => {
    const { peakImpedance } = measuredIn({ parallel: 2 }).standing.measured;
    const high = { peakImpedance: `${3 * Number.parseFloat(peakImpedance)} Ω` };
    const { measuredDrivers, assumed } = retrofitted(measuredIn({ parallel: 2 }, high, 1e4, {}));
    const { QL, least, lessThanUsual } = measuredDrivers!.leaks;
    expect(lessThanUsual).toBe(true);
    expect(least).toBeGreaterThan(7);
    expect(QL).toBeCloseTo(2 * least, 8);
    expect(assumed.flat().join('')).toContain(`a QL of ${QL.toPrecision(3)}: its peak is too high for the 7`);
    expect(() => retrofit(JSON.parse(JSON.stringify(measuredIn({ parallel: 2 }, high, 1e4, { QL: 7 }))))).toThrow(
      /box\.QL.*at least/s,
    );
  });

  test('the report says which leaks it counts', () => {
    const text = (box: object) =>
      retrofitText(retrofitted(measuredIn({ parallel: 2 }, {}, 1e4, box))).replace(/\s+/g, ' ');
    expect(text({})).toContain('every box from one without leaks to one with a QL of 5');
    expect(text({ QL: 12 })).toContain('every box from one without leaks to one with a QL of 12');
    expect(text({ QL: 1e4 })).toContain('The brief says that the box does not leak');
  });

  test('ranges grow with what the readings may be off, and close where they are exact', () => {
    const width = (within: object) => {
      const { values } = retrofitted(measuredIn({ parallel: 2 }, { within })).measuredDrivers!;
      return values.map(({ from, to }) => to - from);
    };
    for (const one of width(exact)) expect(one).toBe(0);
    const [fine, coarse] = [width({ frequency: '0.2 Hz' }), width({ frequency: '1 Hz' })];
    expect(coarse[0]! / fine[0]!).toBeCloseTo(5, 1);
    expect(width({ length: '6 mm' })[5]!).toBeGreaterThan(1.9 * width({ length: '3 mm' })[5]!);
  });

  test('says what stays open, and judges no limit on it', () => {
    const brief = measuredIn({ parallel: 2 });
    const answer = retrofitted({ ...brief, standing: { ...brief.standing, keep: demoBox.keep } });
    const text = retrofitText(answer).replace(/\s+/g, ' ');
    expect(text).toContain('This stays open: the travel of the cone (Xmax)');
    expect(text).toContain('How far the cone may travel is not known');
    expect(answer.now.account.lowestSafe).toBeUndefined();
    expect(retrofitPage(answer)).toContain('What the impedance tells of the drivers');
  });

  test('the check by eye stands behind its cautions', () => {
    const text = retrofitText(retrofitted(measuredIn({ parallel: 2 })));
    const at = (words: string) => text.indexOf(words);
    expect(at('Check the tuning by eye')).toBeLessThan(at('! Low level, ears, fingers'));
    expect(at('! Low level, ears, fingers')).toBeLessThan(at('Turn the amplifier right down'));
    expect(text.replace(/\s+/g, ' ')).toContain('the cone nearly stands still');
  });

  test.each([
    ['standing.measured.peakImpedance', { peakImpedance: '1 Ω' }, 'more than Re'],
    ['standing.measured.flank.impedance', { flank: { frequency: '90 Hz', impedance: '2 Ω' } }, 'between Re'],
    ['standing.measured.flank', { flank: undefined }, 'one more reading'],
    ['standing.measured.Re', { Re: undefined }, 'ohmmeter'],
    ['standing.measured.within', { within: { frequency: '20 Hz' } }, 'differ by more'],
    ['standing.measured.tuning', { tuning: undefined }, 'the dip'],
  ])('a fault at its place: %s', (path, change, says) => {
    const brief = JSON.parse(JSON.stringify(measuredIn({ parallel: 2 }, change)));
    try {
      retrofit(brief);
      expect.unreachable();
    } catch (error) {
      if (!isInputError(error)) throw error;
      expect(error.faults.find((fault) => fault.path === path)?.expected).toContain(says);
    }
  });

  test('neither a sheet nor a measurement is told with both ways out', () => {
    const brief = JSON.parse(JSON.stringify(measuredIn({ parallel: 2 })));
    delete brief.standing.measured;
    expect(() => retrofit(brief)).toThrow(/the data of its sheet, or the impedance of its box/);
  });

  test('a sheet still needs what only a sheet tells', () => {
    const brief = { ...demoStanding, drivers: [{ ...drivers[0], Xmax: undefined }] };
    expect(() => retrofit(JSON.parse(JSON.stringify(brief)))).toThrow(/drivers\[0\]\.Xmax/);
  });
});
