import {
  compileLine,
  compileSteppedLine,
  conicalProfile,
  exponentialProfile,
  type Profile,
  roundSection,
  withoutLoss,
} from '@airspring/core/duct';
import { complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import { tubeAir as air } from '../tube-air.js';
import horns from './horns.json' with { type: 'json' };
import straight from './line-chain.json' with { type: 'json' };
import lossless from './lossless.json' with { type: 'json' };

const check = checkIn(air);

const profiles: Record<string, Profile> = {
  cone: conicalProfile({ innerDiameter: '60 mm', outerDiameter: '100 mm', length: '200 mm' }),
  exponential: exponentialProfile({ innerDiameter: '40 mm', outerDiameter: '120 mm', length: '300 mm' }),
};
const names = ['A', 'B', 'C', 'D'] as const;

/** The entries of the chain matrix. */
const chain = (profile: string, f: number, steps?: number) => chainOf(profiles[profile]!, f, steps);
function chainOf(profile: Profile, f: number, steps?: number): [number, number][] {
  const out = { A: complexColumn(1), B: complexColumn(1), C: complexColumn(1), D: complexColumn(1) };
  compileSteppedLine(profile, steps, air)(Float64Array.of(f), out);
  return names.map((name) => [out[name].re[0]!, out[name].im[0]!]);
}

for (const profile of ['cone', 'exponential']) {
  // At 900 Hz C goes through zero; the orders of the error below have that frequency as well.
  const rows = horns.filter((row) => row.profile === profile && row.f < 500);
  for (const [entry, unit] of [
    ['B', 'Pa·s/m³'],
    ['C', 'm³/(Pa·s)'],
  ] as const) {
    const at = names.indexOf(entry);
    check(`duct.stepped.${profile}.${entry}`, {
      formula: 'duct/compileSteppedLine',
      source: {
        key: 'scipy',
        locator: 'solve_ivp and special.jve: horn equation with the wall losses of the local radius',
      },
      status: 'derived',
      kind: 'program',
      given: { f: { value: rows.map(({ f }) => f), unit: 'Hz' } },
      got: ({ f }) => chain(profile, f)[at]![1],
      expected: rows.map((row) => row.chain[at]![1]!),
      unit,
      tolerance: { relative: 1e-3, why: 'sixty steps; the error falls as their square, see below' },
    });
  }
}

// Steps as long as the range allows, kh = 0.1 at 400 Hz.
for (const [profile, steps] of [
  ['cone', 15],
  ['exponential', 22],
] as const) {
  const row = horns.find((one) => one.profile === profile && one.f === 400)!;
  check(`duct.stepped.${profile}.coarse`, {
    formula: 'duct/compileSteppedLine',
    source: {
      key: 'scipy',
      locator: 'solve_ivp and special.jve: horn equation with the wall losses of the local radius',
    },
    status: 'derived',
    kind: 'program',
    given: { f: { value: 400, unit: 'Hz' }, steps: { value: steps, unit: '1' } },
    got: ({ f, steps }) => chain(profile, f, steps)[1]![1],
    expected: row.chain[1]![1]!,
    unit: 'Pa·s/m³',
    tolerance: { relative: 5e-3, why: 'a quarter to a third of sixty steps: the error grows with the square' },
  });
}

test('the error of every entry falls as the square of the steps', () => {
  for (const row of horns) {
    const worst = (steps: number) =>
      chain(row.profile, row.f, steps).map(([re, im], i) => {
        const [a, b] = row.chain[i] as [number, number];
        const sweep = horns.filter(({ profile }) => profile === row.profile);
        return Math.hypot(re - a, im - b) / Math.max(...sweep.map(({ chain }) => Math.hypot(...chain[i]!)));
      });
    const [coarse, fine] = [worst(40), worst(160)];
    coarse.forEach((error, i) => {
      expect(error / fine[i]!).toBeGreaterThan(14);
      expect(error / fine[i]!).toBeLessThan(18);
      expect(fine[i]!).toBeLessThan(1e-4);
    });
  }
});

test('a profile without a change is the uniform line', () => {
  const straight = conicalProfile({ innerDiameter: '75 mm', outerDiameter: '75 mm', length: '20 cm' });
  const f = Float64Array.of(5, 40, 300, 900);
  const columns = () => ({ A: complexColumn(4), B: complexColumn(4), C: complexColumn(4), D: complexColumn(4) });
  const [one, many] = [columns(), columns()];
  compileLine({ section: roundSection({ diameter: '75 mm' }), length: '20 cm' })(f, one);
  compileSteppedLine(straight)(f, many);
  for (const name of names) {
    for (let i = 0; i < 4; i++) {
      const off = Math.hypot(one[name].re[i]! - many[name].re[i]!, one[name].im[i]! - many[name].im[i]!);
      expect(off / Math.hypot(one[name].re[i]!, one[name].im[i]!)).toBeLessThan(1e-12);
    }
  }
});

for (const [entry, at] of [...names.entries()].map(([i, name]) => [name, i] as const)) {
  for (const [part, side] of [
    ['re', 0],
    ['im', 1],
  ] as const) {
    check(`duct.stepped.straight.${entry}.${part}`, {
      formula: 'duct/compileSteppedLine',
      source: { key: 'mpmath', locator: 'uniform lossy tube, 40 digits; script line-chain.py' },
      status: 'derived',
      kind: 'program',
      given: {
        a: { value: straight.rows.map(({ a }) => a), unit: 'm' },
        L: { value: straight.rows.map(({ L }) => L), unit: 'm' },
        f: { value: straight.rows.map(({ f }) => f), unit: 'Hz' },
      },
      got: ({ a, L, f }) => {
        const ends = { innerDiameter: si('length', 2 * a), outerDiameter: si('length', 2 * a) };
        return chainOf(conicalProfile({ ...ends, length: si('length', L) }), f, 20)[at]![side];
      },
      // A tube is the same from both ends: D is A.
      expected: straight.rows.map((row) => row[`${entry === 'D' ? 'A' : entry}.${part}` as 'A.re']),
      unit: entry === 'B' ? 'Pa·s/m³' : entry === 'C' ? 'm³/(Pa·s)' : '1',
      tolerance: { relative: 5e-14, why: 'rounding of twenty products; the smaller part carries that of the larger' },
    });
  }
}

for (const entry of ['B', 'C'] as const) {
  check(`duct.stepped.lossless.${entry}`, {
    formula: 'duct/compileSteppedLine',
    source: { key: 'scipy', locator: 'spherical waves in a cone (fletcher1998); script lossless.py' },
    status: 'derived',
    kind: 'program',
    given: { f: { value: lossless.cone.f, unit: 'Hz' } },
    got: ({ f }) => {
      const out = { A: complexColumn(1), B: complexColumn(1), C: complexColumn(1), D: complexColumn(1) };
      compileSteppedLine(profiles.cone!, 1000, air, withoutLoss)(Float64Array.of(f), out);
      // Without loss nothing is in phase.
      return out.B.re[0] === 0 && out.C.re[0] === 0 ? out[entry].im[0]! : Number.NaN;
    },
    expected: lossless.cone[entry],
    unit: entry === 'B' ? 'Pa·s/m³' : 'm³/(Pa·s)',
    tolerance: { relative: 1e-6, why: 'a thousand steps: the error falls as the square of their length' },
  });
}
