import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { type Radiation, withoutLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import { bracketedRoot, type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compileVentAdmittance, compileVentMouth } from '@airspring/core/vent';
import { listed, networkOf, partsOf } from '../../arbitrary/network-of.js';
import { byPlan } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import lossless from '../duct/lossless.json' with { type: 'json' };
import relations from '../duct/relations.json' with { type: 'json' };
import { tubeAir as lineAir } from '../tube-air.js';

const m = (value: number) => si('length', value);
const air = { ...standardAir, speedOfSound: si('speed', 343.2) };
const check = checkIn(air);

check('vent.line.fb', {
  formula: 'vent/compileVentAdmittance',
  source: {
    key: 'mpmath',
    locator:
      'sec. 307; the vent as a line, tan(kl) = S/(kV), one flush and one free end (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    L: { value: [0.12, 0.15, 0.2], unit: 'm' },
    a: { value: [0.025, 0.0375, 0.05], unit: 'm' },
  },
  got: ({ V, L, a }) => {
    const admittance = compileVentAdmittance({ vent: { diameter: m(2 * a), length: m(L) }, walls: withoutLoss }, air);
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    const compliance = V / (air.density * 343.2 ** 2);
    const sum = (f: number) => {
      admittance(Float64Array.of(f), re, im);
      return im[0]! + 2 * Math.PI * f * compliance;
    };
    const root = bracketedRoot(sum, 10, 100);
    return root.ok ? root.x : Number.NaN;
  },
  expected: relations['vent.line.fb'],
  unit: 'Hz',
  tolerance: {
    relative: 0.0015,
    why: 'the inner end is a mass here, without the compliance that a longer line would have: [(kl)³ − (kl − kΔℓ)³]/(6kl) is 0.11 % in the middle',
  },
});

/** A vented box whose lumped vent gives way to the line; the frequency between the bounds at which most air flows in it. */
function peakOfFlow(a: number, L: number, low: number, high: number): number {
  const drivers = driver({ Sd: '330 cm²', Mms: '60 g', Cms: '0.5 mm/N', Rms: '2 N·s/m', Re: '5.6 ohm', Bl: '12 T·m' });
  const parts = partsOf(ventedBox({ drivers, netVolume: '45 L', fb: '35 Hz', QL: 15 }, air).network);
  const admittance = compileVentAdmittance({ vent: { diameter: m(2 * a), length: m(L) } }, air);
  const network = networkOf(
    parts.map((one) => (one.name === 'vent' ? listed('vent', ['box', 'ground'], admittance) : one)),
    { flow: { of: 'flow', element: 'vent' } },
  );
  const frequencies = logarithmicGrid(low, high, 4001);
  const flow = byPlan(network, frequencies).flow as ComplexColumn;
  const size = Array.from(frequencies, (_, i) => Math.hypot(flow.re[i]!, flow.im[i]!));
  return frequencies[size.indexOf(Math.max(...size))]!;
}

check('vent.line.standing', {
  formula: 'vent/compileVentAdmittance',
  source: {
    key: 'levine1948',
    locator: 'k(L + Δℓ) = π with the exact ends at that ka, interpolated; the flush end as of norris1989',
  },
  status: 'derived',
  kind: 'table',
  given: {
    L: { value: [0.15, 0.2, 0.3, 0.12], unit: 'm' },
    a: { value: [0.0375, 0.05, 0.05, 0.025], unit: 'm' },
  },
  // Between 0.7 and 1 of c/2L: the bare tube without its ends is the upper bound.
  got: ({ L, a }) => peakOfFlow(a, L, 0.7 * (343.2 / (2 * L)), 343.2 / (2 * L)),
  expected: [866.0788988, 649.5591741, 467.2505657, 1122.6768626],
  unit: 'Hz',
  tolerance: {
    relative: 0.02,
    why: 'a peak of Q 10 on a slope: the flow from the cone falls with frequency, which moves it by 1/(4Q²) and more',
  },
});

for (const [part, expected] of [
  ['re', [6.917360159397e-7, 4.817692389809e-7, 2.69174885311e-7, 4.252791778726e-5]],
  ['im', [-7.240507318099e-5, -3.673573575722e-5, 1.011589172051e-6, -8.378414447585e-5]],
] as const) {
  check(`vent.line.${part}`, {
    formula: 'vent/compileVentAdmittance',
    air: lineAir,
    source: {
      key: 'mpmath',
      locator:
        'lossy tube by line-chain.py, the mass of dalmont2001 within, the radiation of silva2009 without, 40 digits',
    },
    status: 'derived',
    kind: 'program',
    given: {
      a: { value: [0.0375, 0.05, 0.025, 0.05], unit: 'm' },
      L: { value: [0.15, 0.2, 0.12, 0.3], unit: 'm' },
      f: { value: [40, 100, 700, 500], unit: 'Hz' },
    },
    got: ({ a, L, f }) => {
      const out = { re: new Float64Array(1), im: new Float64Array(1) };
      compileVentAdmittance({ vent: { diameter: m(2 * a), length: m(L) } }, lineAir)(
        Float64Array.of(f),
        out.re,
        out.im,
      );
      return out[part][0]!;
    },
    expected,
    unit: 'm³/(Pa·s)',
    tolerance: { relative: 3e-12, why: 'twelve digits and more' },
  });
}

const constant = (re: number, im: number): Radiation =>
  Object.assign((_opening: unknown, _k: number, out: Float64Array) => void out.set([re, im]), { sources: ['own'] });

for (const part of ['re', 'im'] as const) {
  check(`vent.mouth.${part}`, {
    formula: 'vent/compileVentMouth',
    source: {
      key: 'scipy',
      locator: 'amplitudes of the two waves in a tube between two impedances (fletcher1998); script lossless.py',
    },
    status: 'derived',
    kind: 'program',
    given: {
      radius: { value: lossless.radius, unit: 'm' },
      length: { value: lossless.length, unit: 'm' },
      f: { value: lossless.f, unit: 'Hz' },
    },
    got: ({ radius, length, f }) => {
      const out = complexColumn(1);
      compileVentMouth(
        {
          vent: { diameter: m(2 * radius), length: m(length) },
          innerRadiation: constant(0.01, 0.2),
          outerRadiation: constant(0.05, 0.3),
          walls: withoutLoss,
        },
        { ...standardAir, density: si('density', 1.1769), speedOfSound: si('speed', 347.23) },
      )(Float64Array.of(f), out.re, out.im);
      return out[part][0]!;
    },
    expected: lossless.mouth[part],
    unit: 'm³/(Pa·s)',
    tolerance: { relative: 2e-14, why: 'the same physics by another road, to rounding' },
  });
}
