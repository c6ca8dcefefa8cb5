/** What the linear kernel does with a sine, against the sweep of the network times the transfer of the hold. */

import { standardAir } from '@airspring/core/air';
import { driver, lossyInductor } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { branch, compileNetwork } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { stepResponse } from '@airspring/core/response';
import {
  compileLinear,
  firstOrderHold,
  type Hold,
  holdTransfer,
  type LinearOptions,
  type Simulated,
  zeroOrderHold,
} from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';
import { closed, vented, withoutInductance } from './boxes.js';

type Complex = readonly [re: number, im: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];

const RATE = 48_000;
const IMAGES = 4000;

/** What a probe of the network is at many frequencies, per volt. */
function swept({ network }: Simulated, probe: string, frequencies: readonly number[]): readonly Complex[] {
  const compiled = compileNetwork(network);
  const columns = compiled.probes.map(() => complexColumn(frequencies.length));
  compiled.sweep(Float64Array.from(frequencies), columns);
  const column = columns[compiled.probes.indexOf(probe)]!;
  return frequencies.map((_, i) => [column.re[i]!, column.im[i]!]);
}

/** An output as the probe that it comes from, and what it is multiplied by at ω. */
const origin = (output: string): readonly [probe: string, by: (omega: number) => Complex] => {
  if (output === 'pressure') return ['radiatedFlow', (omega) => [0, (omega * standardAir.density) / (2 * Math.PI)]];
  if (output === 'displacement') return ['coneVelocity', (omega) => [0, -1 / omega]];
  return [output, () => [1, 0]];
};

/**
 * The samples of an output at a sine of the drive: the sweep times the hold, at the frequency of the sine and at all its images.
 * The terms fall at least as 1/k², so that what is left beyond image K is a/(K + ½): told by the sums up to two such K.
 */
function expected(system: Simulated, output: string, frequency: number, hold: Hold): Complex {
  const [probe, by] = origin(output);
  const at = (k: number) => frequency + k * RATE;
  const orders = Array.from({ length: 2 * IMAGES + 1 }, (_, i) => i - IMAGES);
  const columns = swept(
    system,
    probe,
    orders.map((k) => Math.abs(at(k))),
  );
  const terms = orders.map((k, i): Complex => {
    const [x, y] = columns[i]!;
    const value: Complex = at(k) < 0 ? [x, -y] : [x, y];
    const { re, im } = holdTransfer(hold, at(k), RATE);
    return times(times(value, by(2 * Math.PI * at(k))), [re, im]);
  });
  const sumUpTo = (most: number): Complex => {
    let [re, im] = [0, 0];
    // From the far images to the near ones, so that small terms keep their digits.
    for (let k = most; k >= 0; k--) {
      for (const [x, y] of k === 0 ? [terms[IMAGES]!] : [terms[IMAGES - k]!, terms[IMAGES + k]!]) {
        re += x;
        im += y;
      }
    }
    return [re, im];
  };
  const [[a, b], [c, d]] = [sumUpTo(IMAGES / 2), sumUpTo(IMAGES)];
  const [near, far] = [IMAGES / 2 + 0.5, IMAGES + 0.5];
  return [(c * far - a * near) / (far - near), (d * far - b * near) / (far - near)];
}

/** The sine of an output once it is steady, by the kernel run in blocks of unlike lengths. */
function simulated(system: Simulated, options: Omit<LinearOptions, 'sampleRate'>, frequency: number, seconds = 4) {
  const { run, start, outputs } = compileLinear(system, { ...options, sampleRate: '48 kHz' });
  const period = Math.round(RATE / frequency);
  const total = Math.ceil((seconds * RATE) / period) * period;
  const drive = Float64Array.from({ length: total }, (_, n) => Math.cos((2 * Math.PI * n) / period));
  const out = outputs.map(() => new Float64Array(total));
  const states = start();
  for (let from = 0, block = 1; from < total; from += block, block = (block * 7 + 3) % 1000 || 1) {
    const part = (column: Float64Array) => column.subarray(from, Math.min(total, from + block));
    run(states, part(drive), out.map(part));
  }
  return outputs.map((_, i): Complex => {
    let [re, im] = [0, 0];
    for (let n = total - period; n < total; n++) {
      const angle = (2 * Math.PI * n) / period;
      re += (2 / period) * out[i]![n]! * Math.cos(angle);
      im -= (2 / period) * out[i]![n]! * Math.sin(angle);
    }
    return [re, im];
  });
}

const outputs = ['pressure', 'displacement', 'ventAirSpeed', 'current', 'coneVelocity', 'radiatedFlow'];

test.each([
  ['zero order', zeroOrderHold],
  ['first order', firstOrderHold],
  [
    'a hold of ones own: the mean of both samples',
    { name: 'mean', start: [0.5, 0.5], rise: [0, 0], sources: [] } as Hold,
  ],
])('equals the sweep times its hold: %s', (_, hold) => {
  for (const frequency of [20, 100, 1000]) {
    const got = simulated(vented, { outputs, hold }, frequency);
    outputs.forEach((output, i) => {
      const [re, im] = expected(vented, output, frequency, hold);
      const off = Math.hypot(got[i]![0] - re, got[i]![1] - im) / Math.hypot(re, im);
      expect(off, `${output} at ${frequency} Hz`).toBeLessThan(1e-9);
    });
  }
});

/** Two equal resonators: their motions coincide, so that no sum of modes is enough. */
const twins: Simulated = {
  air: standardAir,
  network: {
    topology: {
      elements: [
        { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] },
        branch('resistor', 'R1', ['drive', 'one'], { stands: 'impedance' }),
        branch('capacitor', 'C1', ['one', 'ground']),
        { kind: 'motor', name: 'buffer', electrical: ['one', 'ground'], mechanical: ['two', 'ground'] },
        branch('damper', 'R2', ['two', 'ground']),
        branch('mass', 'M2', ['two', 'ground']),
      ],
      probes: { coneVelocity: { of: 'potential', node: 'two' }, charged: { of: 'potential', node: 'one' } },
      outlets: [],
    },
    // (1/R1 + s C1)(R2 + s M2) + Bl² = (s + 2)(s + 4) + 1 = (s + 3)².
    values: { R1: 0.5, C1: 1, buffer: 1, R2: 4, M2: 1 },
  },
};

test('motions that coincide are stepped by their states, with the same result', () => {
  const outputs = ['coneVelocity', 'charged'];
  for (const hold of [zeroOrderHold, firstOrderHold]) {
    const got = simulated(twins, { outputs, hold }, 1000, 10);
    outputs.forEach((output, i) => {
      const [re, im] = expected(twins, output, 1000, hold);
      expect(Math.hypot(got[i]![0] - re, got[i]![1] - im) / Math.hypot(re, im), output).toBeLessThan(1e-9);
    });
  }
});

test('the pressure after a step is that of the exact step response', () => {
  const { run, start } = compileLinear(closed, { outputs: ['pressure'], hold: zeroOrderHold, sampleRate: '48 kHz' });
  const pressure = new Float64Array(4801);
  run(start(), new Float64Array(4801).fill(1), [pressure]);
  const exact = stepResponse(closed, { until: '0.1 s', points: 4801 }).pressure;
  const most = Math.max(...exact);
  expect(Math.max(...pressure.map((p, i) => Math.abs(p - exact[i]!))) / most).toBeLessThan(1e-11);
});

test('a run by blocks is the run at once, and runs do not disturb each other', () => {
  const { run, start } = compileLinear(vented, { outputs: ['pressure'], sampleRate: '48 kHz' });
  const drive = Float64Array.from({ length: 1000 }, (_, n) => Math.sin(n * n));
  const [whole, parts, other] = [1, 2, 3].map(() => new Float64Array(1000)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  run(start(), drive, [whole]);
  const [one, two] = [start(), start()];
  for (let n = 0; n < 1000; n++) {
    run(one, drive.subarray(n, n + 1), [parts.subarray(n, n + 1)]);
    run(two, drive.subarray(999 - n, 1000 - n), [other.subarray(n, n + 1)]);
  }
  expect(parts).toEqual(whole);
  expect(other).not.toEqual(whole);
});

test('what cannot be is refused with its path', () => {
  const refusal = (options: object) => faultsOf(() => compileLinear(vented, options as LinearOptions));
  expect(refusal({ sampleRate: '48 kHz', outputs: ['pressure', 'presure'] })).toMatchObject([
    { code: 'unknown-field', path: 'outputs[1]', got: 'presure' },
  ]);
  for (const outputs of [[], 'pressure', {}])
    expect(refusal({ sampleRate: '48 kHz', outputs: outputs as never })).toMatchObject([
      { code: 'empty', path: 'outputs' },
    ]);
  expect(refusal({ sampleRate: '48 mm', outputs: ['pressure'] })).toMatchObject([{ path: 'linear.sampleRate' }]);
  const eddy = driver({ ...withoutInductance, coil: lossyInductor({ K: 0.02, exponent: 0.7 }) });
  const lossy = closedBox({ drivers: eddy, netVolume: '40 L' });
  expect(faultsOf(() => compileLinear(lossy, { sampleRate: '48 kHz', outputs: ['pressure'] }))).toMatchObject([
    { code: 'inconsistent', path: 'network', remedy: expect.stringContaining('lumpedFit') },
  ]);
});
