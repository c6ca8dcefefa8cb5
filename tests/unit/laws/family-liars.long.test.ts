/** Each planted liar of a family is found by the law that is named for it; the honest ones beside them are not accused. */
import { type Air, standardAir } from '@airspring/core/air';
import { closedFamily, type Family, mixedFamily, ventedFamily } from '@airspring/core/enclosure';
import { familyLaws } from '@airspring/core/laws';
import { describe, expect, test } from 'vitest';
import { brokenLaws, brokenUpTo, driver, mixed, reasons, rescaledVented, vented } from './boxes.js';
import { honestCloth, honestLine, mixedLiars, ventedLiars } from './liars.js';

const frequencies = [29];

describe('honest ones with elements over frequency', () => {
  test('cloth', () => {
    expect(reasons(familyLaws({ family: honestCloth, spec: vented, frequencies }))).toEqual([]);
  });
  test('a vent as a line: it is not tuned as a mass, and told so by no law', () => {
    expect(reasons(familyLaws({ family: honestLine, spec: vented, frequencies }))).toEqual([]);
  });
  test('drivers and volumes that are handed in', () => {
    const trial = {
      family: honestCloth,
      spec: vented,
      drivers: [driver],
      chambers: [{ netVolume: 0.045, fb: 29, ventArea: 0.0044, QL: 7, QA: 60, QP: 80 }],
    };
    expect(brokenLaws(familyLaws(trial))).toEqual([]);
    expect(brokenLaws(familyLaws({ ...trial, chambers: [{ netVolume: 0.046 }] }))).toEqual([
      'the air of a box is the stated volume',
    ]);
    expect(brokenLaws(familyLaws({ ...trial, drivers: [{ ...driver, Bl: 14 as typeof driver.Bl }] }))).toContain(
      'the network has the numbers of the driver',
    );
  });
});

test('the law of tunings says which numbers it compared', () => {
  const detail = (trial: Parameters<typeof familyLaws>[0]) =>
    familyLaws(trial).find(({ law }) => law === 'tuning and losses are as stated')?.detail;
  expect(detail({ family: ventedFamily, spec: vented } as never)).toMatch(/^fb of Cab, QL of Cab/);
  const bare = { drivers: driver, netVolume: '40 L' };
  expect(detail({ family: closedFamily, spec: bare } as never)).toMatch(/^nothing to try: no fb/);
});

test('the law of losses names the frequency at which a quality factor holds', () => {
  const detail = (trial: Parameters<typeof familyLaws>[0]) =>
    familyLaws(trial).find(({ law }) => law === 'tuning and losses are as stated')?.detail;
  /** A leak that is 2 % too tight. */
  const tight = <Spec, Input>(family: Family<Spec, Input>) => ({
    ...family,
    values: (spec: Spec, air: Air, set: (name: string, ...numbers: number[]) => void) =>
      family.values(spec, air, (name, ...numbers) =>
        set(name, ...numbers.map((x) => (name === 'leak' ? 1.02 * x : x))),
      ),
  });
  expect(detail({ family: tight(ventedFamily), spec: vented } as never)).toMatch(
    /^QL of Cab is 7\.14\d* at 29 Hz, the stated fb, and 7 is stated$/,
  );
  // With Vas = ρc²Sd²Cms the resonance in the box is fs √(1 + Vas/Vb).
  const spec = { drivers: driver, netVolume: '40 L', QL: 10 };
  const { density, speedOfSound } = standardAir;
  const ratio = (density * speedOfSound ** 2 * driver.Sd ** 2 * driver.Cms) / 0.04;
  const fc = Math.sqrt((1 + ratio) / (driver.Mms * driver.Cms)) / (2 * Math.PI);
  expect(detail({ family: tight(closedFamily), spec } as never)).toMatch(
    new RegExp(`^QL of Cab is 10\\.2\\d* at ${fc.toPrecision(4)} Hz, the resonance of its cone, and 10 is stated$`),
  );
});

test.each(ventedLiars)('%s: %s', (_, law, family) => {
  expect(brokenUpTo(law, { family, spec: vented, rescaled: rescaledVented, frequencies })).toContain(law);
});

const accusedOfHonestMixed = brokenLaws(familyLaws({ family: mixedFamily, spec: mixed, frequencies }));
test.each(mixedLiars)('%s: %s', (_, law, family) => {
  expect(brokenUpTo(law, { family, spec: mixed, frequencies })).toContain(law);
  expect(accusedOfHonestMixed).toEqual([]);
});
