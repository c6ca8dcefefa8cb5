import { completeDriver } from '@airspring/core/driver';
import { capacitorBox, closedResonance } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, referenceLevel, respond } from '@airspring/core/response';
import { type Brief, design, reportText } from 'airspring';
import { describe, expect, test } from 'vitest';
import drum from '../../../packages/airspring/briefs/story-drum.json' with { type: 'json' };
import { placeOf, preferredAt, series } from '../../../packages/airspring/src/kind/preferred-values.js';
import { compileDemand } from '../../../packages/airspring/src/search/compiled-demand.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { bestOf, metByWeights, possible, searchFor } from '../../arbitrary/brief.js';
import { faultsOf } from '../../refusal/faults.js';

const brief = drum as unknown as Brief;
const flat = (text: string) => text.replace(/\s+/g, ' ');
const answer = metByWeights(brief, 2);
const first = answer.designs[0]!;
const sheet = completeDriver({
  fs: '38 Hz',
  Qts: 0.5,
  Qes: 0.58,
  Vas: '22 L',
  Sd: '136 cm²',
  Re: '5.6 Ω',
  Le: '0.4 mH',
  Xmax: '5 mm',
});
if (!sheet.ok) throw new Error('the driver of the brief');
const numberOf = ({ numbers }: typeof first, what: string) =>
  (numbers.find((one) => one.what.startsWith(what))!.value[0] as readonly [number, string])[0];
const boxOf = (netVolume: number, capacitance: number) =>
  capacitorBox({
    drivers: sheet.driver,
    netVolume: si('volume', netVolume),
    seriesCapacitance: si('capacitance', capacitance),
    sourceResistance: '0.1 Ω',
  });

test('a small closed box behind a capacitor reaches where no closed or vented box of the space does', () => {
  expect(first.kind).toBe('capacitor');
  const { capacitor: _, ...rest } = drum;
  expect(possible({ ...rest, box: { kinds: ['closed', 'vented'] } } as unknown as Brief)).toBe(false);
});

test('each design plays as core says of a closed box behind that capacitor', () => {
  for (const one of answer.designs) {
    const capacitance = numberOf(one, 'capacitance in series');
    const system = boxOf(one.box.netVolume, capacitance);
    const found = cutoff(system, { drop: 3, to: '200 Hz' });
    expect(found.ok && Math.abs(found.frequency - one.response.cutoff)).toBeLessThan(0.01);
    const { levelHalfSpace } = respond(system, logarithmicGrid(si('frequency', 15), si('frequency', 200), 1500));
    const rise = Math.max(...levelHalfSpace) - referenceLevel(system);
    expect(rise).toBeLessThan(1.5 + 0.02);
    expect(Math.abs(rise - one.response.greatestRise)).toBeLessThan(0.02);
    const { fc } = closedResonance({ drivers: sheet.driver, netVolume: si('volume', one.box.netVolume) });
    expect(numberOf(one, 'resonance in the box')).toBeCloseTo(fc, 9);
    expect(series.E6.map((digits) => digits * 10)).toContain(Math.round(capacitance * 1e6));
  }
});

test('the demand of the search is that of the compiled system, at values of the series and between them', () => {
  const search = searchFor({ ...brief, box: { kinds: ['capacitor'] } });
  const variant = search.variants[0]!;
  const demand = compileDemand(search.job, variant);
  for (const [netVolume, capacitance] of [
    [0.004, 330e-6],
    [0.006, 512e-6],
    [0.009, 3300e-6],
  ] as const) {
    const out = emptyDemand(variant);
    demand([netVolume, capacitance], out);
    const system = boxOf(netVolume, capacitance);
    const found = cutoff(system, { drop: 3, to: '200 Hz' });
    expect(found.ok && Math.abs(found.frequency - out.cutoff)).toBeLessThan(0.01);
    const band = logarithmicGrid(si('frequency', 62), si('frequency', 200), 2000);
    const { levelHalfSpace } = respond(system, band);
    const drive = 10 ** ((88 - Math.min(...levelHalfSpace)) / 20);
    expect(Math.abs(out.voltage / drive - 1)).toBeLessThan(1e-3);
  }
});

test('the voltage and the current that the capacitor must bear, by its own circuit equation', () => {
  const text = flat(reportText(answer));
  const [, volts, amperes] = /reaches ([\d.]+) V peak, and the current through it ([\d.]+) A rms/.exec(text)!;
  const capacitance = numberOf(first, 'capacitance in series');
  const band = logarithmicGrid(si('frequency', 6.2), si('frequency', 200), 3000);
  const { impedance } = respond(boxOf(first.box.netVolume, capacitance), band);
  // The impedance of the box leaves the resistance of the source out.
  const across = [...band].map((f, i) => (14 * Math.SQRT2) / impedance[i]! / (2 * Math.PI * f * capacitance));
  expect(Number(volts) / Math.max(...across)).toBeCloseTo(1, 1);
  expect(Number(amperes) / (14 / Math.min(...impedance))).toBeCloseTo(1, 1);
  // A tone of almost no frequency puts the whole drive on the capacitor.
  expect(Number(volts)).toBeGreaterThanOrEqual(Math.max(...across, 14 * Math.SQRT2));
});

test('it is told with what to buy, and what not', () => {
  const text = reportText(answer);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  expect(flat(text)).toContain('is a closed box behind a capacitor for one "six-inch driver, invented"');
  expect(flat(text)).toMatch(/Connect a capacitor of [\d.]+ µF in series with the driver\. Buy a bipolar/);
  expect(flat(text)).toContain('a polarised electrolytic capacitor can burst');
  expect(flat(text)).toContain('every joint must be airtight');
});

describe('what a brief may say', () => {
  const faultOf = (capacitor: object, kinds = ['capacitor']) =>
    faultsOf(() => design({ ...drum, box: { kinds }, capacitor })).map(({ path, code }) => [path, code]);
  test.each([
    [{ smallest: '0.5 µF' }, 'capacitor.smallest', 'out-of-range'],
    [{ largest: '470 mH' }, 'capacitor.largest', 'unit'],
    [{ series: 'E13' }, 'capacitor.series', undefined],
    [{ smallest: '500 µF', largest: '600 µF', series: 'E6' }, 'capacitor.largest', 'inconsistent'],
    [{ smallest: '1000 µF', largest: '100 µF' }, 'capacitor.largest', 'inconsistent'],
    [{ greatest: '100 µF' }, 'capacitor.greatest', 'unknown-field'],
  ])('%j is refused at its path', (capacitor, path, code) => {
    const faults = faultOf(capacitor);
    expect(faults.map(([at]) => at)).toEqual([path]);
    if (code !== undefined) expect(faults[0]![1]).toBe(code);
  });
  test('its fields need its name', () => {
    expect(faultOf({ series: 'E6' }, ['closed']).map(([path]) => path)).toEqual(['capacitor']);
  });
  test('one capacitor alone is tried where both bounds are its value', () => {
    const one = bestOf({
      ...drum,
      box: { kinds: ['capacitor'] },
      capacitor: { smallest: '470 µF', largest: '470 µF' },
    });
    expect(numberOf(one, 'capacitance in series')).toBe(470e-6);
  });
});

describe('preferred values', () => {
  test('each series is a geometric progression, rounded as IEC 60063 does', () => {
    // The standard keeps some historic digits: 27, 33, 39, 47 and 82 in place of 26, 32, 38, 46 and 83.
    for (const decade of Object.values(series)) {
      for (const [k, digits] of decade.entries()) {
        expect(Math.abs(digits - 10 * 10 ** (k / decade.length))).toBeLessThan(1.5);
      }
    }
  });
  test('place and value are inverse, and the place grows with the value', () => {
    for (const decade of Object.values(series)) {
      for (let place = 0; place < 5 * decade.length; place++) {
        expect(placeOf(decade, preferredAt(decade, place, 1e-6), 1e-6)).toBe(place);
        expect(placeOf(decade, 1.04 * preferredAt(decade, place, 1e-6), 1e-6)).toBeGreaterThan(place);
        expect(placeOf(decade, 1.04 * preferredAt(decade, place, 1e-6), 1e-6)).toBeLessThan(place + 1);
      }
    }
  });
});
