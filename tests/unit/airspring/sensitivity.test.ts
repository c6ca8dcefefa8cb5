import { cutoff } from '@airspring/core/response';
import { reportText } from 'airspring';
import { expect, test } from 'vitest';
import campfire from '../../../packages/airspring/briefs/campfire-box.json' with { type: 'json' };
import { readingsOf } from '../../../packages/airspring/src/brief/sensitivity.js';
import { uncertainOf } from '../../../packages/airspring/src/record/estimate.js';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { metByWeights, searchFor } from '../../arbitrary/brief.js';

const { Vas: _, Re: __, ...bare } = campfire.drivers[0]!;
const briefOf = (more: object) => ({ ...campfire, drivers: [{ ...bare, ...more }] });

test('Vas from a sensitivity: the reference efficiency as it is printed, 9.6e-10 fs³ Vas / Qes with Vas in litres', () => {
  const efficiency = (9.6e-10 * 42 ** 3 * 14) / 0.43;
  const level = 112 + 10 * Math.log10((efficiency * 2.83 ** 2) / 3.4);
  const found = readingsOf({ fs: 42, Qes: 0.43, Re: 3.4, sensitivity: level, sensitivityAt: '2.83 V' });
  // The printed constants have two and three digits.
  expect(found?.usual.Vas).toBeGreaterThan(0.014 * 0.95);
  expect(found?.usual.Vas).toBeLessThan(0.014 * 1.05);
});

test('1 W into 8 Ω is 2.83 V, and 3 dB are a factor of two in Vas', () => {
  const vas = (more: object) => readingsOf({ fs: 42, Qes: 0.43, Re: 6, sensitivity: 88, ...more })?.usual.Vas as number;
  expect(vas({ sensitivityAt: '1 W', nominalImpedance: 8 }) / vas({ sensitivityAt: '2.83 V' })).toBeCloseTo(1, 2);
  expect(vas({ sensitivityAt: '1 W', nominalImpedance: 4 }) / vas({ sensitivityAt: '2.83 V' })).toBeCloseTo(2, 1);
  expect(vas({ sensitivityAt: '2.83 V', sensitivity: 91.0103 }) / vas({ sensitivityAt: '2.83 V' })).toBeCloseTo(2, 5);
});

test('the band of f3 is that of the same box with each driver in it, and Re that is not told widens it', () => {
  const told = { sensitivity: '87 dB', sensitivityAt: '2.83 V', nominalImpedance: '4 Ω' };
  const search = searchFor(briefOf(told));
  const box = bestBoxes(search, 1)[0];
  if (!box) throw new Error('no box');
  const uncertain = uncertainOf(search, box);
  const { estimated } = box.variant.choice;
  const f3 = [
    [estimated?.Vas.from, estimated?.Re?.from],
    [estimated?.Vas.value, estimated?.Re?.value],
    [estimated?.Vas.to, estimated?.Re?.to],
  ].map(([Vas, Re]) => {
    const other = searchFor(briefOf({ Vas: `${(Vas as number) * 1e3} L`, Re: `${Re} Ω` }));
    const variant = other.variants.find(({ kind }) => kind === box.variant.kind);
    const found = cutoff(variant!.system(box.point), { from: '5 Hz', to: '200 Hz' });
    return found.ok ? (found.frequency as number) : Number.NaN;
  });
  expect(uncertain?.f3?.from).toBeCloseTo(Math.min(...f3), 3);
  expect(uncertain?.f3?.to).toBeCloseTo(Math.max(...f3), 3);
  // Each end tells the Vas that gives it.
  const Vas = [estimated?.Vas.from, estimated?.Vas.value, estimated?.Vas.to] as number[];
  expect(uncertain?.f3?.Vas.from).toBeCloseTo(Vas[f3.indexOf(Math.min(...f3))]!, 6);
  expect(uncertain?.f3?.Vas.to).toBeCloseTo(Vas[f3.indexOf(Math.max(...f3))]!, 6);
  expect(uncertain?.ventLength?.to).toBeGreaterThan(uncertain?.ventLength?.from as number);
  const surer = searchFor(briefOf({ ...told, Re: '3.2 Ω' })).job.choices[0]?.estimated;
  expect(surer?.Re).toBeUndefined();
  expect((surer?.Vas.to as number) / (surer?.Vas.from as number)).toBeCloseTo(10 ** 0.4, 6);
});

test('the report says what was assumed, and a sensitivity beside a whole sheet is compared', () => {
  const brief = briefOf({ sensitivity: '87 dB', sensitivityAt: '1 W', nominalImpedance: '4 Ω', Re: '3.4 Ω' });
  const text = reportText(metByWeights(brief)).replaceAll(/\s+/g, ' ');
  expect(text).toContain('Vas was computed from the sensitivity, 87.0 dB at 1 W, 1 m and half space');
  expect(text).toContain('in this same box, f3 lies between');
  expect(text.replace(/\s+/g, ' ')).toMatch(
    /f3 lies between [\d.]+ Hz \(Vas [\d.]+ L\) and [\d.]+ Hz \(Vas [\d.]+ L\)/,
  );
  const whole = { ...campfire.drivers[0], sensitivity: '90 dB', sensitivityAt: '2.83 V' };
  const compared = reportText(metByWeights({ ...campfire, drivers: [whole] })).replaceAll(/\s+/g, ' ');
  expect(compared).toMatch(/states a sensitivity of 90.0 dB, and its other data lead to 8\d\.\d dB/);
});
