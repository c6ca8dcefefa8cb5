import {
  bandPass,
  bessel,
  boxesThatSuit,
  butterworth,
  candidate,
  chebyshev,
  lowShelf,
  nearestAlignments,
  ofTotalQ,
  quasiThirdOrder,
  sixthOrderBandPass,
  solveAlignment,
  superBoomBox,
} from '@airspring/core/alignment';
import { group } from '@airspring/core/driver';
import {
  capacitorBoxFamily,
  closedFamily,
  closedResonance,
  fourthOrderBandPass,
  fourthOrderBandPassFamily,
  parallelBandPassFamily,
  passiveRadiatorFamily,
  seriesBandPassFamily,
  ventedFamily,
} from '@airspring/core/enclosure';
import { frequencyGrid } from '@airspring/core/quantity';
import { referenceLevel, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';

const sheet = { fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 };
const driver = physical(sheet, paperAir);
const air = paperAir;
const reason = (result: ReturnType<typeof solveAlignment>) => (result.ok ? 'a box' : result.because[0]?.text);

test('a closed box of any Qtc above that of the driver', () => {
  const found = solveAlignment(ofTotalQ(0.8), closedFamily, { drivers: driver }, { air });
  expect(found.ok && closedResonance(found.system.spec, air).Qtc).toBeCloseTo(0.8, 10);
});

test('a closed box cannot lower the Q of a driver, and says so with both numbers', () => {
  const found = solveAlignment(ofTotalQ(0.3), closedFamily, { drivers: driver }, { air });
  expect(reason(found)).toBe('A total Q of 0.327 is above 0.300, the highest that Qtc 0.3 takes without losses.');
});

test('a driver beyond the range of an alignment is told the end of that range', () => {
  const wide = physical({ ...sheet, Qes: 0.9 }, paperAir);
  expect(reason(solveAlignment(quasiThirdOrder, ventedFamily, { drivers: wide, QL: 7 }, { air }))).toBe(
    'A total Q of 0.763 is above 0.404, the highest that QB3 takes at QL 7.',
  );
});

test('a fixed alignment names the Q that it takes', () => {
  expect(reason(solveAlignment(bessel(4), ventedFamily, { drivers: driver, QL: 7 }, { air }))).toBe(
    'BE4 takes a total Q of 0.331 at QL 7; the driver has 0.327.',
  );
});

test('of an assisted alignment every class is told', () => {
  const options = { air, highPass: { order: 2 } } as const;
  expect(reason(solveAlignment(butterworth(6), ventedFamily, { drivers: driver }, options))).toMatch(
    /^B6 takes a total Q of (0\.299|0\.408|0\.518) or (0\.299|0\.408|0\.518) or (0\.299|0\.408|0\.518) without losses/,
  );
});

test('another order is refused by name', () => {
  expect(reason(solveAlignment(butterworth(3), ventedFamily, { drivers: driver }, { air }))).toBe(
    'B3 has order 3; the response of this box has order 4.',
  );
});

test('a box with nothing to choose is told what is open', () => {
  const fixed = { drivers: driver, netVolume: '40 L', fb: '30 Hz' } as const;
  expect(reason(solveAlignment(quasiThirdOrder, ventedFamily, fixed, { air }))).toBe(
    'QB3 needs 3 numbers that it may choose; this box leaves 1: the parameter B.',
  );
});

test('with a coil or a loss in the vent the box deviates as little as it can, and says by how much', () => {
  const coil = { ...driver, Le: 1.5e-3 as never };
  for (const input of [
    { drivers: coil, QL: 7 },
    { drivers: driver, QL: 7, QP: 40 },
  ]) {
    const found = solveAlignment(quasiThirdOrder, ventedFamily, input, { air });
    const plain = solveAlignment(quasiThirdOrder, ventedFamily, { drivers: driver, QL: 7 }, { air });
    if (!found.ok || !plain.ok) throw new Error('no box');
    expect(plain.deviation!.greatest).toBeLessThan(1e-9);
    expect(found.deviation!.greatest).toBeGreaterThan(1e-5);
    expect(found.deviation!.rms).toBeLessThan(0.4);
  }
});

test('a ripple of the driver lies between the ends of its range', () => {
  const wide = physical({ ...sheet, Qes: 0.6 }, paperAir);
  const found = solveAlignment(chebyshev(4), ventedFamily, { drivers: wide, QL: 7 }, { air });
  expect(found.ok && found.parameters.ripple).toBeGreaterThan(0.05);
});

test('a band-pass of two far tops has its edges outside of them, however wide it is', () => {
  const strong = physical({ ...sheet, Qes: 0.09 }, air);
  for (const Q of [0.1, 0.3, 0.5]) {
    const found = solveAlignment(bandPass({ S: 0.1, Q }), fourthOrderBandPassFamily, { drivers: strong }, { air });
    if (!found.ok || !found.f3.ok || !found.upper?.ok) throw new Error(reason(found));
    // |p² + 2Sp + 1|² over p = j y is twice its least value 4S²(1 − S²), at y² = 1 − 2S² + √(4S²(1 − S²)), and y = 2SQ (x − 1/x).
    const least = 4 * 0.1 ** 2 * (1 - 0.1 ** 2);
    const half = Math.sqrt(1 - 2 * 0.1 ** 2 + Math.sqrt(least)) / (2 * 2 * 0.1 * Q);
    const x = half + Math.hypot(half, 1);
    expect(found.upper.frequency / found.frequency!).toBeCloseTo(x, 2);
    expect(found.frequency! / found.f3.frequency).toBeCloseTo(x, 2);
  }
});

test('a shape that droops over three octaves has its f3, where its two sections are half power down', () => {
  const strong = physical({ ...sheet, Qes: 0.08 }, air);
  const found = solveAlignment(superBoomBox, ventedFamily, { drivers: strong }, { air });
  if (!found.ok) throw new Error(reason(found));
  // |G|² = ½ of two equal sections is √2 x² = (1 − x)² + x/Q², over x = (f/f₀)².
  const b = 1 / found.parameters.Q! ** 2 - 2;
  const x = (b + Math.sqrt(b * b + 4 * (Math.SQRT2 - 1))) / (2 * (Math.SQRT2 - 1));
  expect(Math.sqrt(x)).toBeGreaterThan(8);
  expect(found.f3.ok && found.f3.frequency / found.frequency!).toBeCloseTo(Math.sqrt(x), 8);
});

test('a coil that lets the level fall far above the corner leaves the box its f3', () => {
  const coil = { ...driver, Le: 5e-3 as never };
  const found = solveAlignment(quasiThirdOrder, ventedFamily, { drivers: coil, QL: 7 }, { air });
  if (!found.ok || !found.f3.ok) throw new Error('no f3');
  const { deviation, f3, system } = found;
  const { levelHalfSpace } = respond(system, frequencyGrid([f3.frequency]), { driveVoltageRms: '1 V' });
  expect(levelHalfSpace[0]).toBeCloseTo(referenceLevel(system) - 10 * Math.log10(2), 6);
  expect(f3.frequency).toBeLessThan(deviation!.to);
});

test('the band of the deviation lies around the frequency of the target', () => {
  const leaky = solveAlignment(butterworth(2), closedFamily, { drivers: driver, QL: 0.5 }, { air });
  if (!leaky.ok) throw new Error('no box');
  const { deviation, frequency, f3 } = leaky;
  expect(deviation!.from).toBeCloseTo(frequency! / 2, 9);
  expect(deviation!.to).toBeCloseTo(4 * frequency!, 9);
  expect(f3.ok && f3.frequency).toBeLessThan(2 * frequency!);
});

test('a reason says whether the losses of the box count in its numbers', () => {
  const wide = physical({ ...sheet, Qes: 0.85 }, paperAir);
  const refused = (losses: object) =>
    reason(solveAlignment(butterworth(2), closedFamily, { drivers: wide, ...losses }, { air }));
  expect(refused({ QA: 20 })).toMatch(/ at QA 20\.$/);
  // A leak makes a closed box a third-order one.
  expect(refused({ QL: 20 })).toMatch(/ without its losses\.$/);
});

const radiator = { Sd: '500 cm²', fs: '24 Hz', Vas: '60 L', Qms: 8 } as const;
const low = physical({ ...sheet, Qes: 0.26 }, paperAir);

test('a high-pass and a band-pass are told apart, by the orders of their falls', () => {
  expect(reason(solveAlignment(butterworth(4), fourthOrderBandPassFamily, { drivers: driver }, { air }))).toBe(
    'B4 has order 4; the response of this box has order 4, of which 2 are below its band.',
  );
  expect(reason(solveAlignment(bandPass({ Q: 0.6 }), ventedFamily, { drivers: driver }, { air }))).toBe(
    'BP4 has order 4, of which 2 are below its band; the response of this box has order 4.',
  );
});

test('a shape with one number too many says what to state', () => {
  expect(reason(solveAlignment(bandPass(), fourthOrderBandPassFamily, { drivers: driver }, { air }))).toMatch(
    /this box leaves 4: rearVolume, frontVolume, frontTuning, the parameter Q \(0\.1 to 3\)\. State one of them\.$/,
  );
  const held = solveAlignment(bandPass(), fourthOrderBandPassFamily, { drivers: driver, rearVolume: '20 L' }, { air });
  expect(held.ok && held.parameters.Q).toBeCloseTo(closedResonance({ drivers: driver, netVolume: '20 L' }, air).Qtc, 9);
});

test('a driver beyond a band-pass is told the highest that it takes', () => {
  const input = { drivers: driver, frontQL: 7 };
  expect(reason(solveAlignment(bandPass({ Q: 0.3 }), fourthOrderBandPassFamily, input, { air }))).toMatch(
    /^A total Q of 0\.327 is above 0\.\d+, the highest that BP4 takes at frontQL 7\.$/,
  );
});

test('a leak of the closed chamber, or a coil, makes a band-pass deviate as little as it can', () => {
  const coil = { ...driver, Le: 1e-3 as never };
  for (const input of [
    { drivers: driver, rearQL: 10 },
    { drivers: coil, frontQL: 10 },
  ]) {
    const found = solveAlignment(bandPass({ ripple: 0.5, Q: 0.7 }), fourthOrderBandPassFamily, input, { air });
    if (!found.ok) throw new Error('no box');
    expect(found.deviation!.greatest).toBeGreaterThan(1e-4);
    expect(found.deviation!.rms).toBeLessThan(0.5);
    expect(found.f3.ok && found.upper?.ok).toBe(true);
  }
});

test('a leak adds an order to a box with a radiator: the shape is met to a hundredth of a decibel', () => {
  const found = solveAlignment(
    quasiThirdOrder,
    passiveRadiatorFamily,
    { drivers: low, radiator, QL: 7, QA: 40 },
    { air },
  );
  if (!found.ok) throw new Error(found.because[0]?.text);
  expect(found.deviation!.rms).toBeLessThan(0.05);
  const plain = solveAlignment(quasiThirdOrder, passiveRadiatorFamily, { drivers: low, radiator, QA: 40 }, { air });
  if (!plain.ok) throw new Error(plain.because[0]?.text);
  expect(plain.deviation!.greatest).toBeLessThan(1e-9);
});

test('a shape that does not allow for a notch comes as near as it can', () => {
  const options = { air, addResistance: true };
  const lower = physical({ ...sheet, Qes: 0.2 }, paperAir);
  const found = solveAlignment(bessel(4), passiveRadiatorFamily, { drivers: lower, radiator }, options);
  if (!found.ok) throw new Error(found.because[0]?.text);
  expect(found.deviation!.greatest).toBeGreaterThan(1e-6);
  expect(found.deviation!.rms).toBeLessThan(0.01);
});

test('a radiator that is too heavy for an alignment is no answer', () => {
  const heavy = { ...radiator, fs: '8 Hz' } as const;
  expect(
    reason(solveAlignment(quasiThirdOrder, passiveRadiatorFamily, { drivers: low, radiator: heavy }, { air })),
  ).toMatch(/^The box of QB3 has addedMass -\d.* in SI units, which is less than none\.$/);
});

test('a capacitor in series makes a closed box of third order', () => {
  const found = solveAlignment(butterworth(3), capacitorBoxFamily, { drivers: driver }, { air });
  if (!found.ok || !found.f3.ok) throw new Error('no box');
  expect(found.deviation!.greatest).toBeLessThan(1e-9);
  expect(found.f3.frequency).toBeCloseTo(found.frequency!, 6);
});

test('boxes of every family stand in one list', () => {
  const rows = boxesThatSuit(driver, [
    candidate(lowShelf(3), ventedFamily, { QL: 7 }),
    candidate(quasiThirdOrder, passiveRadiatorFamily, { radiator: { ...radiator, Vas: '180 L' } }),
    candidate(bandPass({ Q: 0.6 }), fourthOrderBandPassFamily, { frontQL: 7 }),
    candidate(sixthOrderBandPass(), parallelBandPassFamily),
    candidate(sixthOrderBandPass(), seriesBandPassFamily),
    candidate(butterworth(3), capacitorBoxFamily),
  ]);
  expect(rows.map(({ result }) => reason(result))).toEqual(Array(6).fill('a box'));
});

test('a band-pass box is nearest to the shape that it has', () => {
  const shape = bandPass({ ripple: 1, Q: 0.7 });
  const found = solveAlignment(shape, fourthOrderBandPassFamily, { drivers: driver }, { air });
  if (!found.ok) throw new Error('no box');
  const near = nearestAlignments(found.system, [bandPass(), butterworth(4), shape, bandPass({ ripple: 1 })]);
  expect(near.map(({ alignment }) => alignment)).toEqual(['BP4', 'BP4', 'BP4']);
  expect(near[0]!.parameters.ripple).toBeCloseTo(1, 9);
  expect(near[0]!.deviation.rms).toBeLessThan(1e-5);
  expect(near[0]!.frequency / found.frequency!).toBeCloseTo(1, 4);
  const closed = fourthOrderBandPass(
    { drivers: driver, rearVolume: '20 L', frontVolume: '15 L', frontTuning: '60 Hz' },
    air,
  );
  expect(nearestAlignments(closed, [butterworth(4)])).toEqual([]);
});

test('more of the same driver do not suit a fixed shape, unless a resistance stands in front of their wiring', () => {
  const second = (found: ReturnType<typeof solveAlignment>) => (found.ok ? '' : found.because[1]!.text);
  const alone = second(solveAlignment(butterworth(4), ventedFamily, { drivers: driver }, { air }));
  expect(alone).toMatch(/More of the same driver have the same total Q, in any number and wiring\.$/);
  const four = { drivers: group(driver, { series: 2, parallel: 2 }) };
  expect(second(solveAlignment(butterworth(4), ventedFamily, four, { air }))).toBe(alone);
  const behind = { drivers: driver, sourceResistance: '0.4 Ω' } as const;
  const text = second(solveAlignment(butterworth(4), ventedFamily, behind, { air }));
  const times = Number(/one with ([\d.]+) times that would have it\.$/.exec(text)![1]);
  // A wiring is a whole number of coils in series over one in parallel; here a driver of another coil stands for it.
  const scaled = { ...driver, Re: driver.Re * times, Bl: driver.Bl * Math.sqrt(times) } as typeof driver;
  const wired = { drivers: scaled, sourceResistance: '0.4 Ω' } as const;
  const other = reason(solveAlignment(butterworth(4), ventedFamily, wired, { air }));
  const [, needed, has] = /total Q of (0\.\d+) .*; the driver has (0\.\d+)/.exec(other!)!;
  expect(Number(has)).toBeCloseTo(Number(needed), 2);
});
