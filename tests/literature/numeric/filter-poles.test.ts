/** Printed tables of filter poles and sections, which are roots of polynomials with a definition of their own. */
import { bracketedRoot, polynomialProduct, polynomialRoots } from '@airspring/core/numeric';
import { check } from '../../ledger/check.js';
import print from './printed-poles.json' with { type: 'json' };

interface Row {
  readonly order: number;
  readonly ripple?: number;
}
interface PrintedTable<R extends Row> {
  readonly source: { readonly key: string; readonly locator: string };
  readonly rows: readonly R[];
  readonly tolerance?: { readonly absolute: number; readonly why: string };
}
interface Pole {
  readonly re: number;
  readonly im: number;
}

/** A low-pass by a polynomial whose roots to the left are its poles, and by |D(jω)|². */
interface Family {
  readonly polynomial: readonly number[];
  readonly square: (omega: number) => number;
}
const evenValue = (even: readonly number[]) => (x: number) => even.reduceRight((sum, a) => sum * x + a, 0);
/** x² → −s²: an even polynomial on the imaginary axis, which has each pole and its mirror image. */
const turned = (even: readonly number[]) => even.map((a, k) => (k % 4 === 2 ? -a : a));
const ofSquare = (even: readonly number[]): Family => ({ polynomial: turned(even), square: evenValue(even) });

/** |D|² = 1 + ω²ⁿ. */
const butterworth = ({ order }: Row) => ofSquare([1, ...new Array<number>(2 * order - 1).fill(0), 1]);
/** |D|² = 1 + ε² Tₙ²(ω). */
function chebyshev({ order, ripple = 0 }: Row): Family {
  let [last, next] = [[1], [0, 1]];
  for (let n = 1; n < order; n++) {
    [last, next] = [next, Array.from(polynomialProduct([0, 2], next), (a, k) => a - (last[k] ?? 0))];
  }
  const size = 10 ** (ripple / 10) - 1;
  return ofSquare(Array.from(polynomialProduct(next, next), (a, k) => size * a + (k === 0 ? 1 : 0)));
}
/** The reverse Bessel polynomial, (2n − k)!/(2ⁿ⁻ᵏ k! (n − k)!) sᵏ. */
function bessel({ order: n }: Row): Family {
  const factorial = (m: number): number => (m < 2 ? 1 : m * factorial(m - 1));
  const polynomial = Array.from(
    { length: n + 1 },
    (_, k) => factorial(2 * n - k) / (2 ** (n - k) * factorial(k) * factorial(n - k)),
  );
  const mirrored = polynomial.map((a, k) => (k % 2 === 1 ? -a : a));
  return { polynomial, square: evenValue(turned(Array.from(polynomialProduct(polynomial, mirrored)))) };
}

/** The poles with their minus signs left out, those with an imaginary part once. */
function poles({ polynomial }: Family): readonly Pole[] {
  const { re, im } = polynomialRoots(polynomial);
  return Array.from(re, (x, i) => ({ re: -x, im: im[i]! })).filter((pole) => pole.re > 0 && pole.im > -1e-9);
}
/** The same where half the power of frequency 0 passes at 1 rad/s. */
function normalised(family: Family): readonly Pole[] {
  const half = bracketedRoot((omega) => family.square(omega) / (2 * family.square(0)) - 1, 0.1, 10);
  if (!half.ok) throw new Error('no half power');
  return poles(family).map(({ re, im }) => ({ re: re / half.x, im: im / half.x }));
}

/** One row of the ledger for each printed column: what the pole nearest to the printed one gives. */
function tableOf<R extends Row, C extends keyof R & string>(
  name: string,
  { source, rows, tolerance }: PrintedTable<R>,
  polesOf: (row: R) => readonly Pole[],
  columns: Readonly<Record<C, (pole: Pole) => number>>,
) {
  const names = Object.keys(columns) as C[];
  const digits = (row: R, column: C) => row[column] as unknown as readonly string[];
  const found = rows.map((row) =>
    digits(row, names[0]!).map((_, i) => {
      const away = (pole: Pole) =>
        Math.hypot(...names.map((column) => columns[column](pole) - Number(digits(row, column)[i])));
      return [...polesOf(row)].sort((a, b) => away(a) - away(b))[0]!;
    }),
  );
  for (const column of names) {
    // A zero stands for a pole without imaginary part, and is no number of digits.
    const all = rows.flatMap((row, r) =>
      digits(row, column).flatMap((text, i) => (text === '0' ? [] : [{ row, r, i, text }])),
    );
    check(`polynomial-roots.${name.replaceAll(' ', '-')}.${column}`, {
      formula: 'numeric/polynomialRoots',
      source,
      status: 'seen',
      kind: 'table',
      given: {
        order: { value: all.map(({ row }) => row.order), unit: '1' },
        ripple: { value: all.map(({ row }) => row.ripple ?? 0), unit: 'dB' },
        row: { value: all.map(({ r }) => r), unit: 'of the table' },
        pole: { value: all.map(({ i }) => i), unit: 'of the row' },
      },
      got: ({ row, pole }) => columns[column](found[row]![pole]!),
      printed: all.map(({ text }) => text),
      unit: column === 'a' ? 's' : column === 'b' ? 's²' : 'rad/s',
      ...(tolerance && { tolerance }),
    });
  }
}

const parts = { re: ({ re }: Pole) => re, im: ({ im }: Pole) => im };
/** A section 1 + a s + b s², or 1 + a s. */
const sections = {
  a: ({ re, im }: Pole) => (im < 1e-6 ? 1 / re : (2 * re) / (re * re + im * im)),
  b: ({ re, im }: Pole) => (im < 1e-6 ? 0 : 1 / (re * re + im * im)),
};
tableOf('butterworth', print.butterworth, (row) => poles(butterworth(row)), parts);
tableOf('chebyshev', print.chebyshev, (row) => poles(chebyshev(row)), parts);
tableOf('bessel delay', print['bessel delay'], (row) => poles(bessel(row)), parts);
tableOf('bessel half power', print['bessel half power'], (row) => normalised(bessel(row)), parts);
tableOf('bessel old table', print['bessel old table'], (row) => normalised(bessel(row)), parts);
// b is 1 in each of them.
tableOf('butterworth sections', print['butterworth sections'], (row) => normalised(butterworth(row)), {
  a: sections.a,
});
tableOf('chebyshev sections', print['chebyshev sections'], (row) => normalised(chebyshev(row)), sections);
tableOf('bessel sections', print['bessel sections'], (row) => normalised(bessel(row)), sections);
