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

/** A brief whose drivers are told by the impedance that they have in a box of 22 L, its dip at 34 Hz. */
function measuredIn(wiring: { series?: number; parallel?: number; isobaric?: boolean }, change: object = {}, QL = 1e5) {
  const drivers = group(driver, wiring);
  const system = ventedBox({ drivers, netVolume: '22 L', fb: '34 Hz', QL });
  const { impedanceMaxima } = features(system, { from: '5 Hz', to: '300 Hz' });
  const [lower, upper] = impedanceMaxima as [(typeof impedanceMaxima)[0], (typeof impedanceMaxima)[0]];
  const at = 1.15 * upper.frequency;
  const flank = respond(system, logarithmicGrid(at, at + 1, 2)).impedance[0]!;
  return {
    ...others,
    drivers: [{ name: 'unknown', coneDiameter: `${2e3 * Math.sqrt(driver.Sd / Math.PI)} mm`, wirings: [wiring] }],
    standing: {
      ...standing,
      measured: {
        peaks: [`${lower.frequency} Hz`, `${upper.frequency} Hz`],
        tuning: '34 Hz',
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

  test('leaks of the box leave the truth within its range, but for the loss of the suspension', () => {
    const { measuredDrivers } = retrofitted(measuredIn({ parallel: 2 }, {}, 15));
    for (const { field, from, to } of measuredDrivers!.values) {
      if (field === 'Qms' || field === 'Rms' || field === 'Vas') continue;
      const truth = field in parameters ? parameters[field as 'fs'] : (driver[field as 'Mms'] as number);
      expect(from, field).toBeLessThanOrEqual(truth);
      expect(to, field).toBeGreaterThanOrEqual(truth);
    }
  });

  test('ranges grow with what the readings may be off, and close where they are exact', () => {
    const width = (within: object) => {
      const { values } = retrofitted(measuredIn({ parallel: 2 }, { within })).measuredDrivers!;
      return values.map(({ from, to }) => to - from);
    };
    const exact = width({ frequency: '0 Hz', length: '0 mm', impedance: 0, air: '0 L' });
    for (const one of exact) expect(one).toBe(0);
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
