/** Fills of fibre, and walls that take more or less than smooth round ones. */
import {
  conicalTaper,
  type DuctNumbers,
  ductElement,
  ductValues,
  exponentialTaper,
  type LineSection,
  lineConstants,
  roundSection,
  wedgeTaper,
  withFill,
  withoutLoss,
  withWallLoss,
} from '@airspring/core/duct';
import { complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import lines from '../enclosure/lines.json' with { type: 'json' };
import { tubeAir as air } from '../tube-air.js';
import horns from './horns.json' with { type: 'json' };
import straight from './line-chain.json' with { type: 'json' };

const check = checkIn(air);

const program = { status: 'derived', kind: 'program' } as const;
const round = (a: number) => roundSection({ diameter: si('length', 2 * a) });
const constants = (section: LineSection, f: number) => {
  const { attenuation, phaseVelocity, impedance } = lineConstants({ section, frequency: si('frequency', f) }, air);
  return { attenuation, phaseVelocity, ...impedance };
};

const units = { attenuation: 'Np/m', phaseVelocity: 'm/s', re: 'Pa·s/m³', im: 'Pa·s/m³' } as const;
for (const [formula, id, rows] of [
  ['duct/withFill', 'duct.fill', lines.constants.filter(({ sigma }) => sigma > 0)],
  ['duct/withWallLoss', 'duct.wall-loss', lines.constants.filter(({ sigma }) => sigma === 0)],
] as const) {
  for (const [what, unit] of Object.entries(units)) {
    const name = what as keyof typeof units;
    check(`${id}.${name}`, {
      ...program,
      formula,
      source: {
        key: 'scipy',
        locator: 'special.jve: impedance and admittance of a length (zwikker1949); script lines.py',
      },
      given: {
        a: { value: rows.map(({ a }) => a), unit: 'm' },
        loss: { value: rows.map(({ loss }) => loss), unit: '1' },
        sigma: { value: rows.map(({ sigma }) => sigma), unit: 'Pa·s/m²' },
        f: { value: rows.map(({ f }) => f), unit: 'Hz' },
      },
      got: ({ a, loss, sigma, f }) => {
        const section = withWallLoss(round(a), loss);
        return constants(withFill(section, { flowResistivity: si('flowResistivity', sigma) }, air), f)[name];
      },
      expected: rows.map((row) => row[name]),
      unit,
      tolerance: { relative: 1e-14, why: 'double precision; the smaller part carries the rounding of the larger' },
    });
  }
}

/** f ρ/σ over the range that both laws share. */
const X = [0.01, 0.02, 0.05, 0.1, 1 / (2 * Math.PI)];
for (const [name, law, tolerance] of [
  ['attenuation', (k: number, x: number) => k * 0.189 * x ** -0.595, 0.18],
  ['phaseVelocity', (_k: number, x: number) => air.speedOfSound / (1 + 0.0978 * x ** -0.7), 0.13],
] as const) {
  check(`duct.fill.measured.${name}`, {
    formula: 'duct/withFill',
    source: { key: 'delany1970', locator: 'power laws of fibrous materials, 0.01 ≤ ρf/σ ≤ 1' },
    status: 'memory',
    kind: 'standard',
    given: { X: { value: X, unit: '1' } },
    got: ({ X }) => {
      const section = withFill(withoutLoss(round(0.1)), { flowResistivity: si('flowResistivity', 2000) }, air);
      return constants(section, (X * 2000) / air.density)[name];
    },
    expected: X.map((x) => law((2 * Math.PI * x * 2000) / air.density / air.speedOfSound, x)),
    unit: units[name],
    tolerance: { relative: tolerance, why: 'power laws through measurements that scatter; a model of still fibres' },
  });
}

const chainOf = (numbers: DuctNumbers, f: number, taper = conicalTaper) => {
  const values = Float64Array.from(ductValues(numbers, air));
  const out = { A: complexColumn(1), B: complexColumn(1), C: complexColumn(1), D: complexColumn(1) };
  ductElement('duct', ['near', 'far'], taper).fill(values, 0, Float64Array.of(f), out);
  return [out.A, out.B, out.C, out.D].flatMap(({ re, im }) => [re[0]!, im[0]!]);
};
const [narrow, wide, throat, mouth] = [0.03, 0.05, 0.02, 0.06].map((a) => Math.PI * a * a) as [
  number,
  number,
  number,
  number,
];
for (const [formula, id, numbers, taper, profile] of [
  ['duct/ductValues', 'duct.element.cone', { area: narrow, endArea: wide, length: 0.2 }, conicalTaper, 'cone'],
  ['duct/conicalTaper', 'duct.taper.cone', { area: narrow, endArea: wide, length: 0.2 }, undefined, 'cone'],
  [
    'duct/exponentialTaper',
    'duct.taper.exponential',
    { area: throat, endArea: mouth, length: 0.3 },
    undefined,
    'exponential',
  ],
] as const) {
  const row = horns.find((one) => one.profile === profile && one.f === 400)!;
  const tapers = { cone: conicalTaper, exponential: exponentialTaper };
  const entry = row.chain[1]![1]!;
  check(id, {
    ...program,
    formula,
    source: {
      key: 'scipy',
      locator: 'solve_ivp and special.jve: horn equation with the wall losses of the local radius; script horns.py',
    },
    given: { f: { value: 400, unit: 'Hz' } },
    got: ({ f }) => chainOf({ ...numbers, wallLoss: 1, flowResistivity: 0 }, f, taper ?? tapers[profile])[3]!,
    expected: entry,
    unit: 'Pa·s/m³',
    tolerance: { relative: 1e-5, why: 'twenty steps' },
  });
}
const uniform = straight.rows.map(({ a, L, f }, i) => ({ a, L, f, i }));
for (const [at, name] of ['A.re', 'A.im', 'B.re', 'B.im', 'C.re', 'C.im', 'A.re', 'A.im'].entries()) {
  check(`duct.element.uniform.${'AABBCCDD'[at]}.${at % 2 === 0 ? 're' : 'im'}`, {
    ...program,
    formula: 'duct/ductElement',
    source: { key: 'mpmath', locator: 'uniform lossy tube, 40 digits; script line-chain.py' },
    given: { row: { value: uniform.map(({ i }) => i), unit: '' } },
    got: ({ row }) => {
      const { a, L, f } = uniform[row]!;
      const area = Math.PI * a * a;
      return chainOf({ area, endArea: area, length: L, wallLoss: 1, flowResistivity: 0 }, f)[at]!;
    },
    expected: straight.rows.map((row) => row[name as 'A.re']),
    unit: name.startsWith('A') ? '1' : name.startsWith('B') ? 'Pa·s/m³' : 'm³/(Pa·s)',
    tolerance: { relative: 3e-14, why: 'rounding; the smaller part carries that of the larger' },
  });
}
check('duct.taper.wedge', {
  formula: 'duct/wedgeTaper',
  source: { key: 'scipy', locator: 'linspace between two areas' },
  ...program,
  given: { share: { value: [0, 0.25, 0.5, 1], unit: '1' } },
  got: ({ share }) => wedgeTaper(0.02, 0.05, share),
  expected: [0.02, 0.0275, 0.035, 0.05],
  unit: 'm²',
  tolerance: { relative: 1e-15, why: 'double precision' },
});
