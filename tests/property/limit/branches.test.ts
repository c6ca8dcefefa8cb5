/** The states of a system with a nonlinear driver: one where it is linear, an odd number else, and whatever is asked is answered or refused. */
import type { DriverGroup } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { branchesAtLevel } from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { respond, respondAtLevel } from '@airspring/core/response';
import { expect } from 'vitest';
import { absurdSystemArbitrary, closedBoxArbitrary, systemArbitrary, ventedBoxArbitrary } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import { faultsOf } from '../../refusal/faults.js';
import { allFinite, answered } from '../answered.js';

const grid = frequencyGrid(Array.from({ length: 6 }, (_, i) => 12 * 1.7 ** i));
const volts = fc.double({ min: 0.01, max: 60, noNaN: true }).map((x) => si('voltageRms', x));
const upTo = si('displacementPeak', 0.012);
const ported = ventedBoxArbitrary.map((input) => ventedBox({ ventArea: si('area', 0.004), ...input }) as System);
/** Even curves over their value at rest. */
const even = (least: number, most: number) =>
  fc.tuple(fc.double({ min: least, max: most, noNaN: true }), fc.double({ min: 0, max: most, noNaN: true }));
const curveOf = ([second, fourth]: readonly [number, number], atRest: number) => ({
  coefficients: [atRest, 0, (atRest * second) / upTo ** 2, 0, (atRest * fourth) / upTo ** 4],
  upTo,
});

test.prop([systemArbitrary, volts], { numRuns: 20 })(
  'a linear driver has one state: that of the sweep',
  (system, drive) => {
    const swept = respond(system, grid, { driveVoltageRms: drive });
    const cones = Object.keys(system.network.topology.probes).filter((name) => name.startsWith('coneVelocity'));
    expect(cones).toEqual(['coneVelocity']);
    branchesAtLevel(system, grid, { driveVoltageRms: drive }).forEach(({ branches, beyond }, i) => {
      expect([branches.length, beyond]).toEqual([1, false]);
      const [one] = branches;
      expect(one!.stable).toBe(true);
      expect(one!.displacementPeak / swept.displacementPeak[i]!).toBeCloseTo(1, 6);
      expect(one!.currentRms / swept.currentRms[i]!).toBeCloseTo(1, 6);
      expect(one!.levelHalfSpace).toBeCloseTo(swept.levelHalfSpace[i]!, 5);
    });
  },
);

test.prop([ported, volts, fc.double({ min: 0.01, max: 8, noNaN: true })], { numRuns: 20 })(
  'a linear driver in a box whose vent loses has one state: that of the loss at level',
  (system, drive, outward) => {
    const loss = quadraticLoss({ outward });
    const expected = respondAtLevel(system, grid, { driveVoltageRms: drive, loss });
    branchesAtLevel(system, grid, { driveVoltageRms: drive, loss }).forEach(({ branches, beyond }, i) => {
      expect([branches.length, beyond]).toEqual([1, false]);
      const [one] = branches;
      expect(one!.displacementPeak / expected.displacementPeak[i]!).toBeCloseTo(1, 6);
      expect(one!.currentRms / expected.currentRms[i]!).toBeCloseTo(1, 6);
      expect(one!.levelHalfSpace).toBeCloseTo(expected.levelHalfSpace[i]!, 5);
    });
  },
);

test.prop([systemArbitrary, volts, even(-0.8, 0.2), even(0, 4)], { numRuns: 30 })(
  'states that stay and states that do not take turns, the least of them stays',
  (system, drive, motor, spring) => {
    const { Bl, Cms } = (system.spec as { drivers: DriverGroup }).drivers.equivalent;
    const curves = { Bl: curveOf(motor, Bl), stiffness: curveOf(spring, 1 / Cms) };
    for (const { branches, beyond } of branchesAtLevel(system, grid, { driveVoltageRms: drive, ...curves })) {
      branches.forEach(({ stable, displacementPeak }, k) => {
        expect(stable).toBe(k % 2 === 0);
        expect(displacementPeak).toBeGreaterThan(branches[k - 1]?.displacementPeak ?? 0);
        expect(displacementPeak).toBeLessThanOrEqual(upTo);
      });
      expect(branches.length % 2 === 1).toBe(!beyond);
    }
  },
);

test.prop([absurdSystemArbitrary, volts, fc.array(fc.double(), { maxLength: 6 }), fc.boolean()], { numRuns: fuzzRuns })(
  'any curve is answered or refused',
  (system, driveVoltageRms, coefficients, isMotor) => {
    const one = { coefficients, upTo } as const;
    answered(() =>
      allFinite(branchesAtLevel(system, grid, { driveVoltageRms, ...(isMotor ? { Bl: one } : { stiffness: one }) })),
    );
  },
);

test.prop([closedBoxArbitrary], { numRuns: 5 })('a loss is refused in a box without a vent', (input) => {
  const loss = quadraticLoss({ outward: 1.5 });
  const asked = () => branchesAtLevel(closedBox(input), grid, { driveVoltageRms: '1 V', loss });
  expect(faultsOf(asked)).toMatchObject([{ code: 'inconsistent', path: 'system' }]);
});

test.prop([systemArbitrary], { numRuns: 5 })('a curve that falls to zero is refused where it stands', (system) => {
  const falling = { coefficients: [10, 0, -20 / upTo ** 2], upTo };
  for (const name of ['Bl', 'stiffness'])
    expect(faultsOf(() => branchesAtLevel(system, grid, { driveVoltageRms: '1 V', [name]: falling }))).toMatchObject([
      { code: 'not-positive', path: `options.${name}.coefficients` },
    ]);
});
