import type { DriverGroup } from '@airspring/core/driver';
import type { System } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  currentLimit,
  greatestLevel,
  heatLimit,
  type Limit,
  limitChanges,
  lowestSafeFrequency,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { expect } from 'vitest';
import { systemArbitrary } from '../../arbitrary/box.js';
import { fc, test } from '../../arbitrary/property.js';

const grid = frequencyGrid(Array.from({ length: 40 }, (_, i) => 10 * 1.08 ** i));
const close = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
const limitsOf = (system: System): readonly Limit[] => {
  const { drivers } = system.spec as { drivers: DriverGroup };
  const vent = 'ventAirSpeed' in system.network.topology.probes ? [airSpeedLimit('12 m/s')] : [];
  return [...travelLimit(drivers), ...heatLimit(drivers), ...vent, voltageLimit('40 V'), currentLimit('9 A')];
};

test.prop([systemArbitrary], { numRuns: 25 })(
  'at the greatest drive the limit that binds is met, and no other is passed',
  (system) => {
    const limits = limitsOf(system);
    const { drivers } = system.spec as { drivers: DriverGroup };
    const { driveVoltageRms, levelHalfSpace, binding, least } = greatestLevel(system, limits, grid);
    grid.forEach((f, i) => {
      const at = respond(system, [f], { driveVoltageRms: si('voltageRms', driveVoltageRms[i]!) });
      close(levelHalfSpace[i]!, at.levelHalfSpace[0]!, 1e-10);
      const used: Record<string, number> = {
        'amplifier voltage': driveVoltageRms[i]! / 40,
        'amplifier current': at.currentRms[0]! / 9,
        ...(drivers.driver.Xmax && { travel: at.displacementPeak[0]! / drivers.driver.Xmax }),
        ...(drivers.driver.Pe && { heat: Math.sqrt((at.currentRms[0]! ** 2 * drivers.driver.Re) / drivers.driver.Pe) }),
        ...(at.airSpeedPeak && { vent: at.airSpeedPeak[0]! / Math.SQRT2 / 12 }),
      };
      expect(Object.keys(used).sort()).toEqual(limits.map(({ name }) => name).sort());
      for (const share of Object.values(used)) expect(share).toBeLessThanOrEqual(1 + 1e-9);
      close(used[binding[i]!]!, 1, 1e-9);
    });
    expect(least.levelHalfSpace).toBe(Math.min(...levelHalfSpace));
  },
);

test.prop([systemArbitrary, fc.double({ min: 1.01, max: 10, noNaN: true })])(
  'wider limits by a factor are as much more drive',
  (system, factor) => {
    const limits = limitsOf(system);
    const wider = limits.map((limit) => ({ ...limit, greatestRms: limit.greatestRms * factor }));
    const [a, b] = [greatestLevel(system, limits, grid), greatestLevel(system, wider, grid)];
    a.driveVoltageRms.forEach((drive, i) => close(b.driveVoltageRms[i]!, drive * factor, 1e-12));
    expect(b.binding).toEqual(a.binding);
  },
);

test.prop([systemArbitrary, fc.double({ min: 0.5, max: 60, noNaN: true })])(
  'from the lowest safe frequency up a drive is safe, and there it is just so',
  (system, volts) => {
    const limits = limitsOf(system);
    const found = lowestSafeFrequency(system, limits, { driveVoltageRms: si('voltageRms', volts) });
    if (!found.ok) {
      const [{ code }] = found.because as unknown as [{ code: string }];
      const [bottom, top] = greatestLevel(system, limits, [2, 200]).driveVoltageRms;
      if (code === 'above-at-end') expect(top!).toBeLessThan(volts);
      else expect([code, bottom! >= volts]).toEqual(['safe-throughout', true]);
      return;
    }
    close(greatestLevel(system, limits, [found.frequency]).driveVoltageRms[0]!, volts, 1e-6);
    // On a grid of its own: a dip narrower than a hundredth of the band would be missed by both.
    const above = grid.filter((f) => f > found.frequency * 1.001 && f < 200);
    if (above.length > 0)
      greatestLevel(system, limits, above).driveVoltageRms.forEach((drive) =>
        expect(drive).toBeGreaterThan(volts * (1 - 1e-3)),
      );
  },
);

test.prop([systemArbitrary], { numRuns: 40 })(
  'where the limit changes the two allow the same drive, and each binds on its own side',
  (system) => {
    const limits = limitsOf(system);
    const alone = (name: string, f: number) =>
      greatestLevel(
        system,
        limits.filter((limit) => limit.name === name),
        [f],
      ).driveVoltageRms[0]!;
    const changes = limitChanges(system, limits, { from: '10 Hz', to: '200 Hz' });
    const ends = [10, ...changes.map(({ frequency }) => frequency as number), 200];
    changes.forEach(({ frequency, below, above, driveVoltageRms }, i) => {
      expect(below).not.toBe(above);
      if (i > 0) expect(below).toBe(changes[i - 1]!.above);
      close(alone(below, frequency), alone(above, frequency), 1e-9);
      close(alone(below, frequency), driveVoltageRms, 1e-9);
      // A thousandth of a hertz away, or half way to the next change.
      const away = (to: number) => frequency + Math.sign(to - frequency) * Math.min(1e-3, Math.abs(to - frequency) / 2);
      const { binding } = greatestLevel(system, limits, [away(ends[i]!), away(ends[i + 2]!)]);
      expect(binding).toEqual([below, above]);
    });
    // Between two changes one limit binds; of two that are equal but for rounding either may.
    const { binding, driveVoltageRms } = greatestLevel(system, limits, grid);
    grid.forEach((f, i) => {
      const next = changes.findIndex(({ frequency }) => frequency > f);
      const known = next < 0 ? changes.at(-1)?.above : changes[next]!.below;
      if (known !== undefined && f < 200 && known !== binding[i]) close(alone(known, f), driveVoltageRms[i]!, 1e-8);
    });
  },
);
