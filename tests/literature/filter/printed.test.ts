/** Values of filters that were read in print: tables of poles and sections, and circuits of textbooks that filter. */
import {
  butterworthShape,
  compileFilter,
  type Filter,
  filterGroupDelay,
  filterLevel,
  highPass,
  lowPass,
  shapeByQ,
} from '@airspring/core/filter';
import { polynomialProduct, polynomialRoots } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import tables from '../numeric/printed-poles.json' with { type: 'json' };
import { printedChecks } from '../printed.js';
import print from './printed.json' with { type: 'json' };

const perSecond = si('frequency', 1 / (2 * Math.PI)); // 1 rad/s
const read = printedChecks('filter', print);

/** A pole of the Butterworth filter at 1 rad/s: pairs from the one farthest left, then the real one. */
function butterworthPole({ order, pole }: { order: number; pole: number }) {
  const { denominator } = highPass(butterworthShape(order), perSecond);
  const { re, im } = polynomialRoots(denominator);
  const poles = Array.from(re, (x, i) => ({ re: -x, im: im[i]! }));
  const pairs = poles.filter((one) => one.im > 1e-9).sort((a, b) => b.re - a.re);
  return [...pairs, ...poles.filter((one) => Math.abs(one.im) <= 1e-9)][pole - 1]!;
}
read('butterworthShape', 'butterworth re', (of) => butterworthPole(of).re);
read('butterworthShape', 'butterworth im', (of) => butterworthPole(of).im);
read(
  'butterworthShape',
  'butterworth sections',
  ({ order, section }) => 2 * butterworthPole({ order, pole: section }).re,
);

/** At 1 rad/s the coefficients of order 2 are those of the section. */
read('butterworthShape', 'butterworth section', ({ power }) => {
  const { denominator } = highPass(butterworthShape(2), perSecond);
  return denominator[power]!;
});

const levelAt = (filter: Filter, omega: number) => filterLevel(filter, frequencyGrid([omega / (2 * Math.PI)]))[0]!;
read('shapeByQ', 'resonance', ({ Q, ratio }) => {
  const filter = highPass(shapeByQ({ order: 2, Q }), perSecond);
  return 10 ** (levelAt(filter, 1 / ratio) / 20) / Q;
});

const ofCircuit = ({ R, C }: { R: number; C: number }) => si('frequency', 1 / (2 * Math.PI * R * C));
read(
  'highPass',
  'divider high',
  ({ R, C, omega, V }) => V * 10 ** (levelAt(highPass(shapeByQ({ order: 1 }), ofCircuit({ R, C })), omega) / 20),
  'as-high-pass',
);
read(
  'lowPass',
  'divider low',
  ({ R, C, omega, V }) => V * 10 ** (levelAt(lowPass(shapeByQ({ order: 1 }), ofCircuit({ R, C })), omega) / 20),
  'as-low-pass',
);

const rational = (numerator: number[], denominator: number[]): Filter => ({
  kind: 'high-pass',
  name: 'a circuit',
  numerator,
  denominator,
});
const divided = (V: number, filter: Filter, omega: number) => V * 10 ** (levelAt(filter, omega) / 20);
read('filterLevel', 'divider high', ({ R, C, omega, V }) => divided(V, rational([0, R * C], [1, R * C]), omega));
read('filterLevel', 'divider low', ({ R, C, omega, V }) => divided(V, rational([1], [1, R * C]), omega));

/** Current in a resistor, a coil and a capacitor in series, by its transfer function sC/(1 + sRC + s²LC). */
function series({ R, L, C, f, V }: { R: number; L: number; C: number; f: number; V: number }) {
  const [re, im] = [Float64Array.of(V), new Float64Array(1)];
  compileFilter(rational([0, C], [1, R * C, L * C]))(frequencyGrid([f]), { re, im });
  return { current: Math.hypot(re[0]!, im[0]!), phase: Math.abs(Math.atan2(im[0]!, re[0]!)) };
}
for (const name of ['current', 'currents', 'ac'] as const) read('compileFilter', name, (of) => series(of).current);
for (const name of ['phase', 'phase of large', 'phase of small'] as const)
  read('compileFilter', name, (of) => series(of).phase);

/** A low-pass with printed poles. */
const withPoles = ({ re, im }: { readonly re: readonly string[]; readonly im: readonly string[] }) => {
  const sections = re.map((text, i) => {
    const [x, y] = [Number(text), Number(im[i])];
    return y === 0 ? [x, 1] : [x * x + y * y, 2 * x, 1];
  });
  const denominator = Array.from(sections.reduce<ArrayLike<number>>(polynomialProduct, [1]));
  return rational([denominator[0]!], denominator);
};
const delays = tables['bessel delay'];
check('filter.read.unit-delay', {
  formula: 'filter/filterGroupDelay',
  source: { ...delays.source, locator: `${delays.source.locator}: a delay of 1 s at low frequency` },
  status: 'seen',
  kind: 'table',
  given: { row: { value: delays.rows.map((_, i) => i), unit: 'of the table' } },
  got: ({ row }) => filterGroupDelay(withPoles(delays.rows[row]!), frequencyGrid([1e-3 / (2 * Math.PI)]))[0]!,
  printed: delays.rows.map(() => '1'),
  unit: 's',
  tolerance: { absolute: 1e-10, why: 'the poles are printed to ten decimals' },
});

const halved = tables['bessel half power'];
check('filter.level.printed-poles', {
  formula: 'filter/filterLevel',
  source: { ...halved.source, locator: `${halved.source.locator}: half the power at 1 rad/s, 10 lg ½` },
  status: 'derived',
  kind: 'table',
  given: { row: { value: halved.rows.map((_, i) => i), unit: 'of the table' } },
  got: ({ row }) => levelAt(withPoles(halved.rows[row]!), 1),
  expected: halved.rows.map(() => -3.01029995664),
  unit: 'dB',
  tolerance: { absolute: 1e-9, why: 'the poles are printed to ten decimals' },
});
