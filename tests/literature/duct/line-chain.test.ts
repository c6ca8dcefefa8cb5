import { compileLine, compileOpenLine, type Radiation, roundSection } from '@airspring/core/duct';
import { complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import { tubeAir as air } from '../tube-air.js';
import fixture from './line-chain.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

const check = checkIn(air);

/** Constants at 300 K, as in the published expansions. */
const chainOf = (a: number, L: number) =>
  compileLine({ section: roundSection({ diameter: si('length', 2 * a) }), length: si('length', L) }, air);

/** B/D: the impedance of the line with nothing at its far end. */
function openAtFarEnd(a: number, L: number, f: number): { re: number; im: number } {
  const out = { A: complexColumn(1), B: complexColumn(1), C: complexColumn(1), D: complexColumn(1) };
  chainOf(a, L)(Float64Array.of(f), out);
  const [br, bi, dr, di] = [out.B.re[0]!, out.B.im[0]!, out.D.re[0]!, out.D.im[0]!];
  const unit = 1 / (dr * dr + di * di);
  return { re: (br * dr + bi * di) * unit, im: (bi * dr - br * di) * unit };
}

/** The same through the open line, both its ends without any load. */
const nothing: Radiation = Object.assign((_o: unknown, _k: number, out: Float64Array) => void out.fill(0), {
  sources: ['own'],
});
function unloaded(a: number, L: number, f: number): { re: number; im: number } {
  const end = { opening: { radius: a }, radiation: nothing };
  const [re, im] = [new Float64Array(1), new Float64Array(1)];
  compileOpenLine({ chain: chainOf(a, L), inner: end, outer: end, count: 2 }, air)(Float64Array.of(f), re, im);
  const size = (re[0]! ** 2 + im[0]! ** 2) / 2;
  return { re: re[0]! / size, im: -im[0]! / size };
}

check('duct.line.chain.re', {
  formula: 'duct/compileLine',
  source: {
    key: 'mpmath',
    locator: 'input impedance Z tanh ΓL of a lossy tube that ends in nothing (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.025, 0.05, 0.05, 0.0125], unit: 'm' },
    L: { value: [0.15, 0.2, 0.2, 0.1], unit: 'm' },
    f: { value: [40, 30, 700, 80], unit: 'Hz' },
  },
  got: ({ a, L, f }) => openAtFarEnd(a, L, f).re,
  expected: relations['duct.line.chain.re'],
  unit: 'Pa·s/m³',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.chain.im', {
  formula: 'duct/compileLine',
  source: {
    key: 'mpmath',
    locator: 'input impedance Z tanh ΓL of a lossy tube that ends in nothing (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.025, 0.05, 0.05, 0.0125], unit: 'm' },
    L: { value: [0.15, 0.2, 0.2, 0.1], unit: 'm' },
    f: { value: [40, 30, 700, 80], unit: 'Hz' },
  },
  got: ({ a, L, f }) => openAtFarEnd(a, L, f).im,
  expected: relations['duct.line.chain.im'],
  unit: 'Pa·s/m³',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.open-line.re', {
  formula: 'duct/compileOpenLine',
  source: {
    key: 'mpmath',
    locator: 'input impedance Z tanh ΓL of a lossy tube that ends in nothing (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.025, 0.05, 0.05, 0.0125], unit: 'm' },
    L: { value: [0.15, 0.2, 0.2, 0.1], unit: 'm' },
    f: { value: [40, 30, 700, 80], unit: 'Hz' },
  },
  got: ({ a, L, f }) => unloaded(a, L, f).re,
  expected: relations['duct.open-line.re'],
  unit: 'Pa·s/m³',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.open-line.im', {
  formula: 'duct/compileOpenLine',
  source: {
    key: 'mpmath',
    locator: 'input impedance Z tanh ΓL of a lossy tube that ends in nothing (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.025, 0.05, 0.05, 0.0125], unit: 'm' },
    L: { value: [0.15, 0.2, 0.2, 0.1], unit: 'm' },
    f: { value: [40, 30, 700, 80], unit: 'Hz' },
  },
  got: ({ a, L, f }) => unloaded(a, L, f).im,
  expected: relations['duct.open-line.im'],
  unit: 'Pa·s/m³',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

/** Each element of the chain by itself: the input impedance above is a quotient of two, which a common factor leaves. */
const rows = fixture.rows;
for (const element of ['A', 'B', 'C'] as const) {
  for (const part of ['re', 'im'] as const) {
    check(`duct.line.chain.${element}.${part}`, {
      formula: 'duct/compileLine',
      source: { key: 'mpmath', locator: 'line constants by Bessel functions with 40 digits; script line-chain.py' },
      status: 'derived',
      kind: 'program',
      given: {
        a: { value: rows.map((row) => row.a), unit: 'm' },
        L: { value: rows.map((row) => row.L), unit: 'm' },
        f: { value: rows.map((row) => row.f), unit: 'Hz' },
      },
      got: ({ a, L, f }) => {
        const out = { A: complexColumn(1), B: complexColumn(1), C: complexColumn(1), D: complexColumn(1) };
        chainOf(a, L)(Float64Array.of(f), out);
        return out[element][part][0]!;
      },
      expected: rows.map((row) => row[`${element}.${part}`]),
      unit: { A: '1', B: 'Pa·s/m³', C: 'm³/(Pa·s)' }[element],
      tolerance: { relative: 1e-14, why: 'double precision; the smaller part carries the rounding of the larger' },
    });
  }
}
