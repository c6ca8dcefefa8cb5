/** Whatever is asked of a vent that loses by its speed is answered or refused; and what the answers claim holds for any box. */
import { type FlowLoss, quadraticLoss } from '@airspring/core/duct';
import type { System } from '@airspring/core/enclosure';
import { InputError } from '@airspring/core/fault';
import { quietLimits, ventOnsets } from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { compileAtLevel, respond, respondAtLevel, ventThirdHarmonic } from '@airspring/core/response';
import { ventLoss, ventNoise } from '@airspring/core/vent';
import { expect } from 'vitest';
import { systemArbitrary } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

const grid = frequencyGrid(Array.from({ length: 24 }, (_, i) => 8 * 1.13 ** i));
/** For what compiles a box at each frequency anew. */
const few = frequencyGrid(grid.filter((_, i) => i % 3 === 0));
const hasVent = (system: System) => 'ventAirSpeed' in system.network.topology.probes;
const vented = systemArbitrary.filter(hasVent);
const coefficient = fc.double({ min: 0.01, max: 10, noNaN: true });
const volts = fc.double({ min: 0.01, max: 200, noNaN: true });
const quadratic = (K: number) => quadraticLoss({ outward: si('ratio', K) });

test.prop([vented, coefficient, volts])(
  'the resistance fits the speed, which is no more than without the loss; more drive never slows the air',
  (system, K, drive) => {
    const loss = quadratic(K);
    const kernel = compileAtLevel(system, grid);
    const [at, more] = [kernel.at(loss, drive), kernel.at(loss, 1.3 * drive)];
    const free = respond(system, grid, { driveVoltageRms: si('voltageRms', drive) }).airSpeedPeak!;
    const area = 1 / (system.network.values.perVentArea as number);
    grid.forEach((f, i) => {
      const speed = at.airSpeedPeak[i]!;
      expect(speed).toBeLessThanOrEqual(free[i]! * (1 + 1e-9));
      const resistance = loss.resistance(speed, f, system.air) / area;
      expect(Math.abs(at.ventResistance[i]! - resistance)).toBeLessThanOrEqual(1e-7 * resistance);
      expect(more.airSpeedPeak[i]!).toBeGreaterThanOrEqual(speed * (1 - 1e-12));
    });
  },
);

test.prop([vented, coefficient, fc.double({ min: 20, max: 300, noNaN: true })])(
  'at the drive of an onset the air has its speed',
  (system, K, millimetres) => {
    const vent = { diameter: si('length', millimetres / 1000) };
    const loss = quadratic(K);
    const { quiet, noisy } = ventOnsets(system, vent, few, { loss });
    for (const [columns, wanted] of [
      [quiet, 0],
      [noisy, -1],
    ] as const) {
      few.forEach((f, i) => {
        const frequency = si('frequency', f);
        const { onsets } = ventNoise({ vent, frequency, airSpeedPeak: si('airSpeedPeak', 1) }, { air: system.air });
        const driveVoltageRms = si('voltageRms', Math.max(1e-6, Math.min(1e5, columns.driveVoltageRms[i]!)));
        if (driveVoltageRms !== columns.driveVoltageRms[i]) return;
        const at = respondAtLevel(system, [f], { driveVoltageRms, loss });
        const speed = onsets.at(wanted)!.airSpeedPeak;
        expect(Math.abs(at.airSpeedPeak[0]! / speed - 1)).toBeLessThan(1e-6);
        expect(Math.abs(at.levelHalfSpace[0]! - columns.levelHalfSpace[i]!)).toBeLessThan(1e-5);
      });
    }
  },
);

const anything = fc.anything();
const answeredOrRefused = (ask: () => readonly unknown[]) => {
  try {
    for (const value of ask()) expect(Number.isNaN(value)).toBe(false);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
  }
};

test.prop([fc.record({ vent: fc.oneof(anything, fc.record({ diameter: anything, length: anything })) })], {
  numRuns: fuzzRuns,
})('a vent of anything has losses and onsets, or is refused', (input) => {
  answeredOrRefused(() => ventLoss(input as never).parts.flatMap(({ low, nominal, high }) => [low, nominal, high]));
  answeredOrRefused(() => quietLimits(input.vent as never).map(({ greatestRms }) => greatestRms));
  answeredOrRefused(() =>
    ventNoise({ ...input, frequency: '30 Hz', airSpeedPeak: '9 m/s' } as never).onsets.map((one) => one.airSpeedPeak),
  );
});

test.prop([vented, anything, fc.array(fc.double(), { maxLength: 3 }), fc.oneof(anything, volts)], {
  numRuns: fuzzRuns,
})('a response at a level of anything is answered or refused', (system, loss, frequencies, driveVoltageRms) => {
  const options = { driveVoltageRms, loss: typeof loss === 'object' ? loss : quadratic(1) } as unknown as {
    driveVoltageRms: never;
    loss: FlowLoss;
  };
  answeredOrRefused(() => [...respondAtLevel(system, frequencies, options).levelHalfSpace]);
  answeredOrRefused(() => [...ventThirdHarmonic(system, frequencies, options)]);
});
