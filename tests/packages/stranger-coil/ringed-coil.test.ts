/** A stranger's coil, from public imports only: by its laws, in boxes, in limits and in briefs. */
import { completeDriver, type Driver, freeAirImpedance, group } from '@airspring/core/driver';
import { closedBox, closedFamily, mixedBox, systemOf, ventedBox } from '@airspring/core/enclosure';
import { coilLaws } from '@airspring/core/laws';
import { greatestLevel, heatLimit, travelLimit } from '@airspring/core/limit';
import { lumpedFit, netlist } from '@airspring/core/network';
import { complexGradient, features, referenceLevel, respond, stepResponse } from '@airspring/core/response';
import { briefFields, briefJsonSchema, design, type Met, standardCoils } from 'airspring';
import { expect, test } from 'vitest';
import { demo } from '../../arbitrary/brief.js';
import { ringed, ringedCoil } from './ringed-coil.js';

const sheet = completeDriver({
  ...{ fs: '27 Hz', Qts: 0.36, Qes: 0.4, Vas: '62 L', Sd: '330 cm²', Re: '5.6 Ω', Xmax: '9 mm', Pe: '200 W' },
  coil: ringedCoil(0.05, 12),
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
const { coil: _, ...bare } = driver;
const box = systemOf(closedFamily, { drivers: driver, netVolume: '40 L' });

test('it obeys the laws of coils', () => {
  expect(coilLaws(ringedCoil(0.05, 12)).filter(({ holds }) => !holds)).toEqual([]);
});

test('it is heard in boxes made by every door, and the reference leaves it out', () => {
  const plain = closedBox({ drivers: bare, netVolume: '40 L' });
  expect(respond(box, [2000]).levelHalfSpace[0]!).toBeLessThan(respond(plain, [2000]).levelHalfSpace[0]! - 1);
  expect(respond(closedBox({ drivers: driver, netVolume: '40 L' }), [50])).toEqual(respond(box, [50]));
  expect(referenceLevel(box)).toBeCloseTo(referenceLevel(plain), 9);
  const [own, without] = [features(box), features(plain)];
  expect(own.referenceLevel).toBeCloseTo(without.referenceLevel, 9);
  expect(own.f3).not.toBeCloseTo(without.f3!, 2);
  expect(own.impedanceMaxima).toHaveLength(1);
});

test('far from resonance the terminals show Re and what the formula says', () => {
  const { re, im } = freeAirImpedance(driver, [20_000]);
  const out = new Float64Array(2);
  ringedCoil(0.05, 12).impedance([0.05, 12], 2 * Math.PI * 20_000, out);
  expect(re[0]).toBeCloseTo(5.6 + out[0]!, 2);
  expect(Math.abs(im[0]! - out[1]!)).toBeLessThan(0.05);
});

test('gradients by its parameters are those of differences', () => {
  const flow = (one: Driver) => {
    const found = complexGradient(closedBox({ drivers: one, netVolume: '40 L' }), 'radiatedFlow', '300 Hz');
    if (!found.ok) throw new Error('no gradient');
    return found;
  };
  const { byElement } = flow(driver);
  const step = 1e-4;
  for (const [name, up, down] of [
    ['coil.K', ringedCoil(0.05 * (1 + step), 12), ringedCoil(0.05 * (1 - step), 12)],
    ['coil.R', ringedCoil(0.05, 12 * (1 + step)), ringedCoil(0.05, 12 * (1 - step))],
  ] as const) {
    const [a, b] = [flow({ ...bare, coil: up }).value, flow({ ...bare, coil: down }).value];
    expect(byElement[name]!.re / ((a.re - b.re) / (2 * step))).toBeCloseTo(1, 6);
    expect(byElement[name]!.im / ((a.im - b.im) / (2 * step))).toBeCloseTo(1, 6);
  }
});

test('limits, groups and boxes of unlike drivers take it', () => {
  const loudest = (drivers: Driver) =>
    greatestLevel(
      closedBox({ drivers, netVolume: '80 L' }),
      [...travelLimit(drivers), ...heatLimit(drivers)],
      [40, 400],
    );
  const [own, without] = [loudest(driver), loudest(bare)];
  expect(own.binding).toEqual(without.binding);
  expect(own.driveVoltageRms[1]).toBeGreaterThan(without.driveVoltageRms[1]!);
  const two = group(driver, { parallel: 2 }).equivalent.coil!;
  expect(two.parameters).toEqual({ K: 0.025, R: 6 });
  const unlike = mixedBox({
    drivers: {
      parallel: [
        { name: 'one', driver },
        { name: 'other', driver: bare },
      ],
    },
    chambers: { all: { netVolume: '80 L', fb: '30 Hz' } },
  });
  expect(features(unlike).referenceLevel).toBeCloseTo(
    features(ventedBox({ drivers: group(bare, { parallel: 2 }), netVolume: '80 L', fb: '30 Hz' })).referenceLevel,
    9,
  );
});

test('the step response is fitted and says how well; the netlist says what could be written', () => {
  const { fit, pressure } = stepResponse(ventedBox({ drivers: driver, netVolume: '60 L', fb: '28 Hz' }), {
    until: '50 ms',
    points: 51,
  });
  expect(fit!.greatestError).toBeLessThan(1e-4);
  expect(Math.max(...pressure)).toBeGreaterThan(0.05);
  expect(netlist(box.network)).toContain('* coil: given over frequency, not written; its lumpedFit can be written');
  const lumped = lumpedFit(box.network, { from: 5, to: 5000 });
  expect(lumped.ok && netlist(lumped.network)).not.toContain('not written');
});

test('a brief asks for it where it is passed in, and is refused where it is not', () => {
  const coils = [...standardCoils, ringed];
  const { Le: __, ...sheet } = demo.drivers[0] as Record<string, unknown>;
  const wanted = { lowest: '45 Hz', highest: '120 Hz', level: '88 dB', fall: '6 dB' };
  const brief = (coil?: unknown) => ({
    ...demo,
    wanted,
    drivers: [{ ...sheet, ...(coil !== undefined && { coil }) }],
    box: { kinds: ['closed'] },
  });
  const own = design(brief({ ringed: { K: 0.4, R: '12 Ω' } }), { coils }) as Met;
  const without = design(brief()) as Met;
  expect(own.designs[0]!.loudness.level).not.toBeCloseTo(without.designs[0]!.loudness.level, 3);
  const faults = (run: () => unknown) => {
    try {
      run();
      return [];
    } catch (error) {
      return (error as { faults: { path: string }[] }).faults.map(({ path }) => path);
    }
  };
  expect(faults(() => design(brief({ ringed: { K: 0.4, R: '12 mm' } }), { coils }))).toEqual([
    'drivers[0].coil.ringed.R',
  ]);
  expect(faults(() => design(brief({ ringed: { K: 0.4, R: '12 Ω' } })))).toEqual(['drivers[0].coil.ringed']);
  expect(briefFields({ coils }).map(({ path }) => path)).toContain('drivers[].coil.ringed.K');
  expect(JSON.stringify(briefJsonSchema({ coils }))).toContain('"ringed"');
});
