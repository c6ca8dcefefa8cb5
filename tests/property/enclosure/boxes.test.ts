import { standardAir } from '@airspring/core/air';
import { group } from '@airspring/core/driver';
import {
  boxCompliance,
  type ClosedBoxInput,
  closedBox,
  type Drivers,
  equivalentDriver,
  infiniteBaffle,
  type System,
  type VentedBoxInput,
  ventedBox,
} from '@airspring/core/enclosure';
import { compile, compilePlan, valuesOf } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { expect } from 'vitest';
import { closedBoxArbitrary, ventedBoxArbitrary, withoutCoil } from '../../arbitrary/box.js';
import { absurdDriverArbitrary, accepted, driverArbitrary } from '../../arbitrary/driver.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import { byPlan, byPolynomials, worst } from '../../circuit/compare.js';
import { allFinite, answered } from '../answered.js';

const grid = frequencyGrid(Array.from({ length: 40 }, (_, i) => 5 * 1.13 ** i));
const close = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
const alike = (a: System, b: System, tolerance: number, probes = ['radiatedFlow', 'coneVelocity', 'current']) => {
  const [x, y] = [byPolynomials(a.network, grid), byPolynomials(b.network, grid)];
  for (const name of probes) expect(worst(x[name]!, y[name]!)).toBeLessThan(tolerance);
};
const without = <T extends object, K extends string>(record: T, ...names: K[]) =>
  Object.fromEntries(Object.entries(record).filter(([name]) => !names.includes(name as K))) as unknown as Omit<T, K>;

test.prop([ventedBoxArbitrary])('a vent of boundless mass closes the box', (input) => {
  const { drivers, netVolume } = input;
  const shut = ventedBox({ drivers, netVolume, fb: si('frequency', 1e-3) });
  alike(closedBox({ drivers, netVolume }) as System, shut as System, 1e-5);
});
test.prop([closedBoxArbitrary])('a box of boundless volume is a wall', ({ drivers, sourceResistance = '0 ohm' }) => {
  // 1000 m³, filled to yield a thousand times as much.
  const huge = closedBox({ drivers, sourceResistance, netVolume: si('volume', 1000), fillGain: 1e3 });
  alike(huge as System, infiniteBaffle({ drivers, sourceResistance }) as System, 1e-4);
});
test.prop([closedBoxArbitrary])('the resonance in a wall is that of the driver in free air', ({ drivers }) => {
  const { equivalent } = infiniteBaffle({ drivers }).spec.drivers;
  const ws = 1 / Math.sqrt(equivalent.Mms * equivalent.Cms);
  const cone = withoutCoil(equivalent);
  const at = byPolynomials(infiniteBaffle({ drivers: cone }).network, Float64Array.of(ws / (2 * Math.PI)));
  // Mass and spring cancel: what is left is the damping, and the velocity is in phase with the drive.
  close(at.coneVelocity!.re[0]!, cone.Bl / cone.Re / (cone.Rms + cone.Bl ** 2 / cone.Re), 1e-9);
  expect(Math.abs(at.coneVelocity!.im[0]!)).toBeLessThan(1e-9 * at.coneVelocity!.re[0]!);
});
test.prop([ventedBoxArbitrary])('losses of boundless quality are none', (input) => {
  const bare = without(input, 'QL', 'QA', 'QP');
  // Where the tuning is on the grid the cone stands still but for 3/Q, which is compared with a floor of 1e-6.
  alike(ventedBox({ ...bare, QL: 1e9, QA: 1e9, QP: 1e9 }) as System, ventedBox(bare) as System, 3e-9 / 1e-6);
});
test.prop([closedBoxArbitrary])('the same for a closed box', (input) => {
  const bare = without(input, 'QL', 'QA');
  alike(closedBox({ ...bare, QL: 1e9, QA: 1e9 }) as System, closedBox(bare) as System, 1e-5);
});
test.prop([closedBoxArbitrary])('filling is a larger box, as long as nothing leaks', (input) => {
  const bare = without(input, 'QL', 'QA', 'fillGain');
  const larger = closedBox({ ...bare, netVolume: si('volume', 1.3 * (bare.netVolume as number)) });
  alike(closedBox({ ...bare, fillGain: 1.3 }) as System, larger as System, 1e-12);
});

test.prop([ventedBoxArbitrary])(
  'exactly at fb without any loss the cone stands still and the vent plays alone',
  (input) => {
    const { drivers, netVolume, fb } = input as VentedBoxInput & { drivers: Parameters<typeof withoutCoil>[0] };
    const driver = withoutCoil(drivers);
    const { network, air } = ventedBox({ drivers: driver, netVolume, fb, ventArea: '1 m²' });
    const at = Float64Array.of(fb as number);
    const [ours, plan] = [byPolynomials(network, at), byPlan(network, at)];
    const size = (name: string) => Math.hypot(ours[name]!.re[0]!, ours[name]!.im[0]!);
    // p Sd = Bl e/Re holds the cone, and the flow through vent and air is ωb Cab p.
    const flow =
      (2 * Math.PI * (fb as number) * boxCompliance(netVolume as number, 1, air) * driver.Bl) / (driver.Re * driver.Sd);
    close(size('radiatedFlow'), flow, 1e-9);
    close(size('ventAirSpeed'), flow, 1e-9);
    expect(size('coneVelocity') * driver.Sd).toBeLessThan(1e-9 * flow);
    for (const name of ['radiatedFlow', 'current', 'ventAirSpeed'])
      expect(worst(ours[name]!, plan[name]!)).toBeLessThan(1e-9);
    allFinite(respond({ family: 'vented', spec: {}, air, network, compile }, at));
  },
);

test.prop([ventedBoxArbitrary])('the numbers of a vented box are those of the definitions', (input) => {
  const { network, air } = ventedBox(input);
  const { QL, QA, QP, fb, netVolume } = input as unknown as Record<string, number>;
  const { Cab, vent, leak, absorption, ventLoss } = network.values as Record<string, number>;
  const wb = 2 * Math.PI * fb!;
  close(Cab!, netVolume! / (air.density * air.speedOfSound ** 2), 1e-12);
  close(vent! * Cab! * wb ** 2, 1, 1e-12);
  for (const [got, Q, expected] of [
    [leak, QL, QL! / (wb * Cab!)],
    [absorption, QA, 1 / (wb * Cab! * QA!)],
    [ventLoss, QP, (wb * vent!) / QP!],
  ] as const) {
    if (Q === undefined) expect(got).toBeUndefined();
    else close(got!, expected, 1e-12);
  }
});

test.prop([
  driverArbitrary,
  fc.integer({ min: 1, max: 4 }),
  fc.integer({ min: 1, max: 4 }),
  fc.double({ min: 5e-3, max: 0.2, noNaN: true }),
])(
  'n drivers in n times the box move as one does in one, at their share of the voltage',
  (driver, series, parallel, volume) => {
    const n = series * parallel;
    const one = byPolynomials(closedBox({ drivers: driver, netVolume: si('volume', volume) }).network, grid)
      .coneVelocity!;
    const all = byPolynomials(
      closedBox({ drivers: group(driver, { series, parallel }), netVolume: si('volume', n * volume) }).network,
      grid,
    ).coneVelocity!;
    expect(worst(one, { re: all.re.map((x) => x * series), im: all.im.map((x) => x * series) })).toBeLessThan(1e-10);
  },
);

test.prop([closedBoxArbitrary, ventedBoxArbitrary])(
  'a spec without a coil model survives JSON and makes the same system again',
  (closedInput, ventedInput) => {
    const again = <Spec>(spec: Spec): Spec => JSON.parse(JSON.stringify(spec)) as Spec;
    const bare = (drivers: Drivers) => withoutCoil(equivalentDriver(drivers));
    const a = closedBox({ ...closedInput, drivers: bare(closedInput.drivers) });
    const b = ventedBox({ ...ventedInput, drivers: bare(ventedInput.drivers) });
    expect(closedBox(again(a.spec))).toEqual(a);
    expect(ventedBox(again(b.spec))).toEqual(b);
  },
);

const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
test.prop(
  [
    absurdDriverArbitrary,
    accepted('volume'),
    some(accepted('ratio')),
    some(accepted('ratio')),
    some(accepted('ratio')),
    accepted('frequency'),
    some(accepted('resistance')),
  ],
  { numRuns: fuzzRuns },
)(
  'any accepted magnitudes make a network of finite elements that elimination solves, or are refused',
  (drivers, netVolume, QL, QA, QP, fb, sourceResistance) => {
    const drop = (record: object) =>
      Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
    const shared = { drivers, netVolume, QL, QA, sourceResistance };
    for (const make of [
      () => closedBox({ ...(drop({ ...shared, fillGain: QP }) as unknown as ClosedBoxInput) }),
      () => ventedBox({ ...(drop({ ...shared, QP, fb }) as unknown as VentedBoxInput) }),
    ]) {
      const system = answered<System>(make);
      if (system === undefined) continue;
      allFinite(system);
      answered(() => {
        const { slots, probes, network } = compilePlan(system.network.topology);
        const out = probes.map(() => complexColumn(1));
        const { sweep } = network(valuesOf(slots, system.network.values));
        if (sweep(Float64Array.of(40), out) < 0) allFinite(out);
      });
    }
    allFinite(boxCompliance(netVolume, 1, standardAir));
  },
);
