import { standardAir } from '@airspring/core/air';
import { driverParameters, type PassiveRadiator, passiveRadiator } from '@airspring/core/driver';
import {
  addedMassForTuning,
  boxCompliance,
  closedBox,
  equivalentDriver,
  type PassiveRadiatorBoxSpec,
  passiveRadiatorBox,
  passiveRadiatorFamily,
  passiveRadiatorTuning,
  type System,
  ventedBox,
} from '@airspring/core/enclosure';
import { compilePlan, valuesOf } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns } from '@airspring/core/response';
import { expect } from 'vitest';
import { withoutCoil } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import {
  absurdPassiveRadiatorBoxArbitrary,
  passiveRadiatorArbitrary,
  passiveRadiatorBoxArbitrary,
} from '../../arbitrary/passive-radiator-box.js';
import { fc, test } from '../../arbitrary/property.js';
import { worst } from '../../circuit/compare.js';
import { allFinite, answered } from '../answered.js';

const grid = frequencyGrid(Array.from({ length: 40 }, (_, i) => 5 * 1.13 ** i));
const close = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
const swept = (system: System, at: Float64Array = grid) => probeColumns(compiledSystem(system), at);
const alike = (a: System, b: System, tolerance: number, probes = ['radiatedFlow', 'coneVelocity', 'current']) => {
  const [x, y] = [swept(a), swept(b)];
  for (const name of probes) expect(worst(x[name]!, y[name]!)).toBeLessThan(tolerance);
};
const volume = fc
  .double({ min: Math.log(2e-3), max: Math.log(0.5), noNaN: true })
  .map((x) => si('volume', Math.exp(x)));
const howMany = fc.integer({ min: 1, max: 4 });
const tuningOf = ({ netVolume, radiator, count, addedMass }: PassiveRadiatorBoxSpec) =>
  passiveRadiatorTuning({ netVolume, radiator, count, addedMass });

test.prop([passiveRadiatorBoxArbitrary])('a spec is an input of its own family, and survives JSON', (input) => {
  const made = passiveRadiatorBox(input);
  expect(passiveRadiatorFamily.read(made.spec)).toEqual(made.spec);
  const bare = passiveRadiatorBox({ ...input, drivers: withoutCoil(equivalentDriver(input.drivers)) });
  expect(passiveRadiatorBox(JSON.parse(JSON.stringify(bare.spec)) as PassiveRadiatorBoxSpec)).toEqual(bare);
});

test.prop([passiveRadiatorBoxArbitrary])('n radiators are one of n times the area, mass and stiffness', (input) => {
  const { spec } = passiveRadiatorBox(input);
  const { radiator, count, addedMass } = spec;
  const one = {
    Sd: count * radiator.Sd,
    Mms: count * radiator.Mms,
    Cms: radiator.Cms / count,
    Rms: count * radiator.Rms,
  } as PassiveRadiator;
  const joined = passiveRadiatorBox({ ...spec, radiator: one, count: 1, addedMass: si('mass', count * addedMass) });
  const probes = ['radiatedFlow', 'coneVelocity', 'current', 'radiatorVelocity'];
  alike(passiveRadiatorBox(spec) as System, joined as System, 1e-9, probes);
});
test.prop([passiveRadiatorBoxArbitrary])('added mass is mass', (input) => {
  const { spec } = passiveRadiatorBox(input);
  const { radiator, addedMass } = spec;
  const heavier = { ...radiator, Mms: si('mass', radiator.Mms + addedMass) };
  const other = passiveRadiatorBox({ ...spec, radiator: heavier, addedMass: si('mass', 0) });
  alike(passiveRadiatorBox(spec) as System, other as System, 1e-12);
});

test.prop([passiveRadiatorBoxArbitrary])('heavy without bounds, it closes the box', (input) => {
  // The quality factors of either box hold at its own resonance: boxes without losses are compared.
  const { QL: _1, QA: _2, ...spec } = passiveRadiatorBox({ ...input, addedMass: si('mass', 1e4) }).spec;
  const { drivers, netVolume, sourceResistance } = spec;
  // What the radiators let out is to what the air takes in as their mass is to its spring, (fb/f)².
  const { fb } = tuningOf(spec);
  const at = grid.filter((f) => f > 100 * fb);
  fc.pre(at.length > 0);
  const [a, b] = [passiveRadiatorBox(spec), closedBox({ drivers, netVolume, sourceResistance })];
  for (const [name, column] of Object.entries(swept(b as System, at)))
    expect(worst(column, swept(a as System, at)[name]!)).toBeLessThan(100 * (fb / at[0]!) ** 2);
});

test.prop([passiveRadiatorBoxArbitrary])('without a suspension it is a vent of the mass of the radiators', (input) => {
  const { spec } = passiveRadiatorBox(input);
  const { netVolume, drivers, sourceResistance, count, addedMass } = spec;
  const losses = { ...(spec.QL && { QL: spec.QL }), ...(spec.QA && { QA: spec.QA }) };
  const free = { ...spec.radiator, Cms: si('compliance', 10), Rms: si('mechanicalResistance', 1e-6) };
  const box = passiveRadiatorBox({ ...spec, radiator: free });
  const mass = (free.Mms + addedMass) / (count * free.Sd ** 2);
  const fb = 1 / (2 * Math.PI * Math.sqrt(mass * boxCompliance(netVolume, 1, standardAir)));
  const vented = ventedBox({ drivers, netVolume, sourceResistance, fb: si('frequency', fb), ...losses });
  const { complianceRatio, notch } = tuningOf(box.spec);
  close(tuningOf(box.spec).fb, fb, 1 / complianceRatio);
  const at = grid.filter((f) => f > 100 * notch);
  fc.pre(complianceRatio > 1e4 && at.length > 0);
  const [a, b] = [swept(box as System, at), swept(vented as System, at)];
  // The spring of 10 m/N is to the mass as (notch/f)², and shows where the box amplifies it.
  const stiff = (notch / at[0]!) ** 2 + 1 / complianceRatio;
  for (const name of ['radiatedFlow', 'coneVelocity', 'current'])
    expect(worst(b[name]!, a[name]!)).toBeLessThan(100 * stiff);
});

test.prop([passiveRadiatorBoxArbitrary])(
  'as good as lossless: at the tuning the cone stands still, at the notch nothing leaves the box',
  (input) => {
    const { spec } = passiveRadiatorBox(input);
    const { netVolume, count, addedMass } = spec;
    const radiator = { ...spec.radiator, Rms: si('mechanicalResistance', 1e-6) };
    const drivers = withoutCoil(spec.drivers.driver);
    const box = passiveRadiatorBox({ drivers, netVolume, radiator, count, addedMass });
    const { fb, notch } = tuningOf(box.spec);
    const columns = swept(box as System, Float64Array.of(notch, fb));
    const size = (name: string, i: number) => Math.hypot(columns[name]!.re[i]!, columns[name]!.im[i]!);
    const { Sd, Bl, Re } = drivers;
    // p Sd = Bl e/Re holds the cone; flow into the air is ωb Cab p.
    const flow = (2 * Math.PI * fb * boxCompliance(netVolume, 1, standardAir) * Bl) / (Re * Sd);
    close(size('radiatedFlow', 1), flow, 1e-3);
    expect(size('coneVelocity', 1) * Sd).toBeLessThan(1e-3 * flow);
    // At the notch the radiators take in what the cone puts out.
    const out = count * radiator.Sd * size('radiatorVelocity', 0);
    close(out, Sd * size('coneVelocity', 0), 1e-3);
    expect(size('radiatedFlow', 0)).toBeLessThan(1e-3 * out);
  },
);

test.prop([passiveRadiatorArbitrary, volume, howMany, fc.double({ min: 0.1, max: 1, noNaN: true })])(
  'the mass for a tuning leads to that tuning, and more of it to a lower one',
  (radiator, netVolume, count, ratio) => {
    const bare = passiveRadiatorTuning({ netVolume, radiator, count });
    const fb = si('frequency', bare.fb * ratio);
    const found = addedMassForTuning({ netVolume, radiator, count, fb });
    if (!found.ok) throw new Error('mass lowers any tuning');
    const { ok: _, addedMass, ...tuning } = found;
    close(tuning.fb, fb, 1e-12);
    expect(passiveRadiatorTuning({ netVolume, radiator, count, addedMass })).toEqual(tuning);
    close(tuning.fb / tuning.notch, Math.sqrt(1 + tuning.complianceRatio), 1e-12);
    const more = passiveRadiatorTuning({ netVolume, radiator, count, addedMass: si('mass', addedMass + 0.001) });
    expect(more.fb).toBeLessThan(tuning.fb);
    close(more.complianceRatio, tuning.complianceRatio, 1e-15);
  },
);
test.prop([passiveRadiatorArbitrary, volume, howMany, fc.double({ min: 1.001, max: 5, noNaN: true })])(
  'no mass raises a tuning, and the volume that is told gives it',
  (radiator, netVolume, count, ratio) => {
    const fb = si('frequency', passiveRadiatorTuning({ netVolume, radiator, count }).fb * ratio);
    const found = addedMassForTuning({ netVolume, radiator, count, fb });
    const text = found.ok ? '' : (found.because[0]?.text ?? '');
    const litres = Number(/A box of ([\d.]+) L/.exec(text)?.[1]);
    close(passiveRadiatorTuning({ netVolume: si('volume', litres / 1000), radiator, count }).fb, fb, 0.01);
  },
);

test.prop([passiveRadiatorArbitrary])('fs, Vas and Qms lead back to the same radiator', (radiator) => {
  const { fs, Vas, Qms } = driverParameters({ ...radiator, Re: '1 ohm', Bl: '1 T·m' });
  const again = passiveRadiator({ Sd: radiator.Sd, fs, Vas, Qms });
  for (const name of ['Mms', 'Cms', 'Rms'] as const) close(again[name], radiator[name], 1e-12);
});

test.prop([passiveRadiatorBoxArbitrary, fc.double({ min: 0.2, max: 5, noNaN: true })])(
  'lengths times a and the air as stiff: tuning and notch over a, as in any acoustics',
  (input, a) => {
    const { spec } = passiveRadiatorBox(input);
    const { radiator, netVolume, count, addedMass } = spec;
    const scaled = passiveRadiatorTuning({
      netVolume: si('volume', netVolume * a ** 3),
      radiator: {
        Sd: si('coneArea', radiator.Sd * a ** 2),
        Mms: si('mass', radiator.Mms * a ** 3),
        Cms: si('compliance', radiator.Cms / a),
        Rms: radiator.Rms,
      },
      count,
      addedMass: si('mass', addedMass * a ** 3),
    });
    const { fb, notch } = tuningOf(spec);
    close(scaled.fb, fb / a, 1e-12);
    close(scaled.notch, notch / a, 1e-12);
  },
);

test.prop([absurdPassiveRadiatorBoxArbitrary], { numRuns: fuzzRuns })(
  'any accepted magnitudes make a network of finite numbers that elimination solves, or are refused',
  (input) => {
    const system = answered<System>(() => passiveRadiatorBox(input) as System);
    if (system === undefined) return;
    allFinite(system);
    const { netVolume, radiator } = system.spec as PassiveRadiatorBoxSpec;
    allFinite(passiveRadiatorTuning({ netVolume, radiator }));
    allFinite(addedMassForTuning({ netVolume, radiator, fb: '30 Hz' }));
    answered(() => {
      const { slots, probes, network } = compilePlan(system.network.topology);
      const out = probes.map(() => complexColumn(1));
      if (network(valuesOf(slots, system.network.values)).sweep(Float64Array.of(40), out) < 0) allFinite(out);
    });
  },
);
