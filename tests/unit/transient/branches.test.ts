/** Where a resonance leans over, a simulation stays on the branch that it comes from: those that core finds. */
import { driver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { branchesAtLevel } from '@airspring/core/limit';
import { compileNonlinear, forceFactorCurve, stiffnessCurve } from '@airspring/transient/simulation';
import { expect, test } from 'vitest';

const drivers = driver({
  Sd: '330 cm²',
  Mms: '40 g',
  Cms: '0.5 mm/N',
  Rms: '0.4 kg/s',
  Re: '5.6 Ω',
  Bl: '2.5 T·m',
});
const box = closedBox({ drivers, netVolume: '120 L' });
const reach = '12 mm';
const [motor, spring] = [
  [0, -0.3],
  [0, 2],
] as const;
const inMetres = (shape: readonly number[], atRest: number) =>
  [1, ...shape].map((value, power) => (atRest * value) / 0.012 ** power);
const curves = {
  Bl: { coefficients: inMetres(motor, 2.5), upTo: reach },
  stiffness: { coefficients: inMetres(spring, 2000), upTo: reach },
} as const;
const [rate, f, volts] = [8000, 60, 10];

/** The fundamental of the travel, m peak, after a sweep from another frequency that ends at f. */
function sweptFrom(start: number): number {
  const { start: begin, run } = compileNonlinear(box, {
    sampleRate: '8 kHz',
    outputs: ['displacement'],
    forceFactor: forceFactorCurve({ reach, coefficients: [...motor] }),
    stiffness: stiffnessCurve({ reach, coefficients: [...spring] }),
  });
  const [sweep, hold] = [5 * rate, 2 * rate];
  let phase = 0;
  const drive = Float64Array.from({ length: sweep + hold }, (_, n) => {
    phase += (2 * Math.PI * (n < sweep ? start + ((f - start) * n) / sweep : f)) / rate;
    return volts * Math.SQRT2 * Math.sin(phase);
  });
  const out = new Float64Array(drive.length);
  run(begin(), drive, [out]);
  // Whole periods at the end.
  const last = out.subarray(out.length - rate);
  const part = (of: (angle: number) => number) =>
    (2 / last.length) * last.reduce((sum, x, n) => sum + x * of((2 * Math.PI * f * n) / rate), 0);
  return Math.hypot(part(Math.sin), part(Math.cos));
}

test('swept upwards it stays on the upper branch, swept downwards on the lower one', () => {
  const [{ branches }] = branchesAtLevel(box, [f], { driveVoltageRms: '10 V', ...curves }) as [
    ReturnType<typeof branchesAtLevel>[number],
  ];
  expect(branches.map(({ stable }) => stable)).toEqual([true, false, true]);
  const [lower, , upper] = branches as [(typeof branches)[0], unknown, (typeof branches)[0]];
  expect(upper.displacementPeak).toBeGreaterThan(2 * lower.displacementPeak);
  // One sine stands for a travel with harmonics.
  expect(Math.abs(sweptFrom(45) / upper.displacementPeak - 1)).toBeLessThan(0.015);
  expect(Math.abs(sweptFrom(85) / lower.displacementPeak - 1)).toBeLessThan(0.002);
});
