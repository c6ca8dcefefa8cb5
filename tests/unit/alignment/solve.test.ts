import { bessel, butterworth, chebyshev, ofTotalQ, quasiThirdOrder, solveAlignment } from '@airspring/core/alignment';
import { closedFamily, closedResonance, ventedFamily } from '@airspring/core/enclosure';
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
  expect(reason(found)).toBe('A total Q of 0.327 is above 0.300, the highest that Qtc 0.3 takes with these losses.');
});

test('a driver beyond the range of an alignment is told the end of that range', () => {
  const wide = physical({ ...sheet, Qes: 0.9 }, paperAir);
  expect(reason(solveAlignment(quasiThirdOrder, ventedFamily, { drivers: wide, QL: 7 }, { air }))).toBe(
    'A total Q of 0.763 is above 0.405, the highest that QB3 takes with these losses.',
  );
});

test('a fixed alignment names the Q that it takes', () => {
  expect(reason(solveAlignment(bessel(4), ventedFamily, { drivers: driver, QL: 7 }, { air }))).toBe(
    'BE4 takes a total Q of 0.331 with these losses; the driver has 0.327.',
  );
});

test('of an assisted alignment every class is told', () => {
  const options = { air, highPass: { order: 2 } } as const;
  expect(reason(solveAlignment(butterworth(6), ventedFamily, { drivers: driver }, options))).toMatch(
    /^B6 takes a total Q of (0\.299|0\.408|0\.518) or (0\.299|0\.408|0\.518) or (0\.299|0\.408|0\.518) with these losses/,
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
    'QB3 needs 3 numbers that it may choose; this box leaves 1: the parameter of the alignment.',
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
  expect(refused({ QA: 20 })).toMatch(/ with these losses\.$/);
  // A leak makes a closed box a third-order one.
  expect(refused({ QL: 20 })).toMatch(/ without its losses\.$/);
});
