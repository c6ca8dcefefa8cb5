/** Gradients of results: against differences, closed forms, and where two extrema tie. */
import { standardAir } from '@airspring/core/air';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { butterworthShape, highPass } from '@airspring/core/filter';
import { compile } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import {
  type CutoffOptions,
  cutoff,
  cutoffGradient,
  type Gradient,
  greatestGradient,
  levelCrossings,
  levelGradient,
  respond,
} from '@airspring/core/response';
import { expect, test as plain } from 'vitest';
import {
  absurdSystemArbitrary,
  bassFrequency,
  closedBoxArbitrary,
  systemArbitrary,
  withoutCoil,
} from '../../arbitrary/box.js';
import { accepted } from '../../arbitrary/driver.js';
import { cases, fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { type Numbered, networkOf, part, withValue } from '../../arbitrary/network-of.js';
import { fc, test } from '../../arbitrary/property.js';
import { driver, seamVented, withEddy } from '../../circuit/seam-cases.js';
import { allFinite, answered } from '../answered.js';

const changed = (system: System, name: string, factor: number): System => ({
  ...system,
  network: withValue(system.network, name, (system.network.values[name] as number) * factor),
});
/** ∂result/∂ln of each element by central differences, the square of the width taken out. */
function differences(system: System, names: readonly string[], result: (system: System) => number) {
  return names.map((name) => {
    const quotient = (h: number) =>
      (result(changed(system, name, Math.exp(h))) - result(changed(system, name, Math.exp(-h)))) / (2 * h);
    return (4 * quotient(1e-3) - quotient(2e-3)) / 3;
  });
}
const elementsOf = (system: System) =>
  system.network.topology.elements.filter(({ kind }) => kind !== 'source' && kind !== 'law').map(({ name }) => name);
function compared(system: System, gradient: Gradient, result: (system: System) => number, tolerance: number) {
  const names = elementsOf(system);
  const most = Math.max(...names.map((name) => Math.abs(gradient.byElement[name] ?? 0)));
  differences(system, names, result).forEach((slope, i) => {
    expect(Math.abs((gradient.byElement[names[i]!] ?? 0) - slope), names[i]).toBeLessThan(tolerance * most);
  });
}

test.prop([systemArbitrary, bassFrequency], { numRuns: cases(25) })(
  'level: by every element, the air and frequency',
  (system, f) => {
    const gradient = levelGradient(system, f);
    if (!gradient.ok) throw new Error('undamped');
    const level = (system: System, f: number) => respond(system, [f]).levelHalfSpace[0]!;
    expect(gradient.value).toBeCloseTo(level(system, f), 9);
    compared(system, gradient, (one) => level(one, f), 1e-7);
    const h = 1e-4;
    const slope = (level(system, f * (1 + h)) - level(system, f * (1 - h))) / (Math.log1p(h) - Math.log1p(-h));
    expect(Math.abs(gradient.byFrequency - slope)).toBeLessThan(1e-4 * (1 + Math.abs(slope)));
    // Level is 20 log10 of something proportional to the density alone: 20/ln 10 dB by its logarithm.
    expect(gradient.byElement['air.density']).toBeCloseTo(20 / Math.LN10, 12);
  },
);

test.prop([systemArbitrary], { numRuns: cases(12) })('cut-off: by every element', (system) => {
  const gradient = cutoffGradient(system);
  if (!gradient.ok) return;
  // Where the response lies flat along the half power, a step of 0.2 % may end at another crossing.
  const steep = levelGradient(system, si('frequency', gradient.value));
  if (!steep.ok || steep.byFrequency < 3) return;
  const at = (one: System) => {
    const found = cutoff(one);
    return found.ok ? (found.frequency as number) : Number.NaN;
  };
  expect(at(system)).toBe(gradient.value);
  compared(system, gradient, at, 1e-4);
});

const references = [
  { reference: 'maximum' },
  { reference: { frequency: '90 Hz' } },
  { reference: { level: '70 dB' } },
  { filter: highPass(butterworthShape(2), '25 Hz') },
  { filter: highPass(butterworthShape(2), '25 Hz'), reference: 'maximum' },
] as const satisfies readonly CutoffOptions[];
test.prop([closedBoxArbitrary, fc.constantFrom(...references)], { numRuns: cases(20) })(
  'cut-off: from any reference, behind a filter as well',
  (box, options) => {
    const system = closedBox(box) as System;
    const gradient = cutoffGradient(system, options);
    if (!gradient.ok) return;
    const crossings = levelCrossings(system, options);
    const steep = levelGradient(system, si('frequency', gradient.value));
    if (crossings.length > 1 || !steep.ok || steep.byFrequency < 3) return;
    const at = (one: System) => {
      const found = cutoff(one, options);
      return found.ok ? (found.frequency as number) : Number.NaN;
    };
    expect(at(system)).toBe(gradient.value);
    compared(system, gradient, at, 1e-3);
  },
);

test.prop([closedBoxArbitrary])(
  'cut-off of a closed box: its f3 is fc g(Q), and g is known',
  ({ drivers: given, netVolume }) => {
    const drivers = withoutCoil(given as Parameters<typeof withoutCoil>[0]);
    const system = closedBox({ drivers, netVolume }) as System;
    const gradient = cutoffGradient(system);
    if (!gradient.ok) return;
    const { Sd, Mms, Cms, Rms, Re, Bl } = drivers;
    const Cab = system.network.values.Cab as number;
    const stiffness = 1 / Cms + Sd ** 2 / Cab;
    const air = Sd ** 2 / Cab / stiffness; // share of the air in the stiffness
    const damping = Rms + Bl ** 2 / Re;
    const wc = Math.sqrt(stiffness / Mms);
    const Q = (wc * Mms) / damping;
    // (f3/fc)² = a/2 + √(a²/4 + 1), a = 1/Q² − 2
    const a = 1 / Q ** 2 - 2;
    const root = Math.sqrt(a * a + 4);
    const g2 = (a + root) / 2;
    const f3 = (wc / (2 * Math.PI)) * Math.sqrt(g2);
    expect(Math.abs(gradient.value / f3 - 1)).toBeLessThan(1e-7);
    // ∂ln f3/∂ln Q = (1/2g²)·½(1 + a/√(a² + 4))·(−2/Q²)
    const byQ = -((1 + a / root) / 2) / (g2 * Q ** 2);
    const expected: Record<string, number> = {
      Mms: f3 * (-0.5 + byQ * 0.5), // fc by −½; Q = √(k M)/damping by ½
      Cms: -f3 * (1 - air) * (0.5 + byQ * 0.5),
      Cab: -f3 * air * (0.5 + byQ * 0.5),
      Sd: 2 * f3 * air * (0.5 + byQ * 0.5),
      Rms: (-f3 * byQ * Rms) / damping,
      Bl: (-2 * f3 * byQ * (damping - Rms)) / damping,
      Re: (f3 * byQ * (damping - Rms)) / damping,
    };
    const most = Math.max(...Object.values(expected).map(Math.abs));
    for (const [name, slope] of Object.entries(expected)) {
      expect(Math.abs(gradient.byElement[name]! - slope), name).toBeLessThan(1e-6 * most);
    }
  },
);

const band = { from: '15 Hz', to: '150 Hz' } as const;
test.prop([systemArbitrary], { numRuns: cases(8) })(
  'greatest: by every element, where no other extremum is near',
  (system) => {
    const options = { probe: 'coneVelocity', integrated: true, ...band } as const;
    const gradient = greatestGradient(system, options);
    if (!gradient.ok) throw new Error('undamped');
    if (gradient.oneSided) return;
    const greatest = (one: System) => {
      const found = greatestGradient(one, options);
      return found.ok ? found.value : Number.NaN;
    };
    compared(system, gradient, greatest, 1e-4);
  },
);

/** A band-pass that is the same at f and f0²/f: above critical coupling it has two peaks, exactly alike. */
function twoPeaks(shift: number): System {
  const [f0, R] = [50, 1];
  const w = 2 * Math.PI * f0;
  const X = 4; // series and shunt reactances in ohms and siemens: wide coupling
  const elements: Numbered[] = [
    { kind: 'source', name: 'drive', nodes: ['in', 'ground'] },
    part('resistor', 'before', ['in', 'a'], R),
    part('inductor', 'series L', ['a', 'b'], X / w),
    part('capacitor', 'series C', ['b', 'out'], (1 + shift) / (X * w)),
    part('inductor', 'shunt L', ['out', 'ground'], 1 / (X * w)),
    part('capacitor', 'shunt C', ['out', 'ground'], X / w),
    part('resistor', 'after', ['out', 'ground'], 3),
  ];
  const network = networkOf(elements, { out: { of: 'potential', node: 'out' } });
  return { family: 'two peaks', spec: {}, air: standardAir, network, compile };
}
plain('two equal peaks are flagged as a kink, unequal ones are not', () => {
  const options = { probe: 'out', from: '10 Hz', to: '250 Hz' } as const;
  const tied = greatestGradient(twoPeaks(0), options);
  expect(tied).toMatchObject({ ok: true, oneSided: true });
  const [more, less] = [greatestGradient(twoPeaks(0.05), options), greatestGradient(twoPeaks(-0.05), options)];
  for (const one of [more, less]) {
    expect(one.ok).toBe(true);
    expect(one).not.toHaveProperty('oneSided');
  }
  // A kink: the greatest grows to both sides, or falls to both, by slopes that differ.
  if (!tied.ok || !more.ok || !less.ok) throw new Error('undamped');
  const [up, down] = [(more.value - tied.value) / 0.05, (tied.value - less.value) / 0.05];
  expect(Math.abs(up - down)).toBeGreaterThan(0.1 * Math.max(Math.abs(up), Math.abs(down)));
});
plain('by an element that both peaks share, the one-sided gradient holds to both sides', () => {
  const options = { probe: 'out', from: '10 Hz', to: '250 Hz' } as const;
  const tied = greatestGradient(twoPeaks(0), options);
  if (!tied.ok) throw new Error('undamped');
  const value = (factor: number) => {
    const found = greatestGradient(changed(twoPeaks(0), 'after', factor), options);
    return found.ok ? found.value : Number.NaN;
  };
  expect(tied.byElement.after).toBeCloseTo((value(1.001) - value(1 / 1.001)) / (2 * Math.log(1.001)), 6);
});

test.prop([absurdSystemArbitrary, accepted('frequency')], { numRuns: Math.ceil(fuzzRuns / 5) })(
  'any accepted magnitude is answered',
  (system, f) => {
    answered(() => allFinite(levelGradient(system, f)));
    answered(() => allFinite(cutoffGradient(system)));
    answered(() => allFinite(greatestGradient(system, { probe: 'coneVelocity', from: '20 Hz', to: '100 Hz' })));
  },
);

plain(
  'what the reference leaves out is no number of it: by the inductance and the leak, also where they are nothing',
  () => {
    const drivers = { ...driver, Le: si('inductance', 1e-3) };
    const whole = ventedBox({ drivers, netVolume: '45 L', fb: '28 Hz', QL: 7 });
    const at = (Le: number, leak: number) => {
      const values = { ...whole.network.values, Le, leak };
      const found = cutoff({ ...whole, network: { ...whole.network, values } });
      return found.ok ? (found.frequency as number) : Number.NaN;
    };
    for (const [Le, conductance] of [
      [1e-3, 1 / (whole.network.values.leak as number)],
      [0, 0],
    ] as const) {
      const values = { ...whole.network.values, Le, leak: 1 / conductance };
      const gradient = cutoffGradient({ ...whole, network: { ...whole.network, values } });
      if (!gradient.ok) throw new Error('no cut-off');
      const slope = (value: (h: number) => number, h: number) =>
        (-11 * value(0) + 18 * value(h) - 9 * value(2 * h) + 2 * value(3 * h)) / (6 * h);
      const byLe = slope((h) => at(Le + h, 1 / conductance), 1e-5);
      const byLeak = slope((h) => at(Le, 1 / (conductance + h)), 1e-8);
      expect(gradient.byNumber.Le! / byLe).toBeCloseTo(1, 5);
      expect(gradient.byNumber.leak! / byLeak).toBeCloseTo(1, 4);
    }
  },
);

plain('cut-off beside a coil law, by every number of it too', () => {
  const law = [0.02, 0.7] as const;
  const boxed = (K: number, n: number): System => ({
    ...seamVented,
    compile,
    network: withEddy(seamVented.network, [K, n]),
  });
  const gradient = cutoffGradient(boxed(...law));
  if (!gradient.ok) throw new Error('no cut-off');
  const at = (one: System) => {
    const found = cutoff(one);
    return found.ok ? (found.frequency as number) : Number.NaN;
  };
  expect(at(boxed(...law))).toBe(gradient.value);
  compared(boxed(...law), gradient, at, 1e-6);
  const quotient = (h: number) => [
    (at(boxed(law[0] * Math.exp(h), law[1])) - at(boxed(law[0] * Math.exp(-h), law[1]))) / (2 * h),
    (at(boxed(law[0], law[1] * Math.exp(h))) - at(boxed(law[0], law[1] * Math.exp(-h)))) / (2 * h),
  ];
  const [narrow, wide] = [quotient(1e-3), quotient(2e-3)];
  ['eddy Bl.K', 'eddy Bl.n'].forEach((name, k) => {
    const expected = (4 * narrow[k]! - wide[k]!) / 3;
    expect(gradient.byElement[name]! / expected, name).toBeCloseTo(1, 6);
  });
});
