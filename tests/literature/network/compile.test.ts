import { compilePolynomials, valuesOf } from '@airspring/core/network';
import { checkIn } from '../../ledger/check.js';
import { type AlignmentRow, alignments, fs, paperAir, printedCoefficients, ventedOf } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

/** a1, a2, a3 and 1 of the compiled denominator of a vented box, over √(ωs ωb). */
function compiledCoefficients(row: AlignmentRow): readonly number[] {
  const { network } = ventedOf(row);
  const compiled = compilePolynomials(network.topology);
  const polynomials = compiled?.network(valuesOf(compiled.slots, network.values)).polynomials;
  if (polynomials === undefined) return [];
  const { width, scale, coefficients: out } = polynomials;
  // Powers that every row shares were left in; the denominator's five run from its first that is not zero.
  const first = out.subarray(0, width).findIndex((value) => value !== 0);
  const unit = (2 * Math.PI * fs * Math.sqrt(row.h)) / scale;
  const at = (k: number) => out[first + k]! / (out[first + 4]! * unit ** (4 - k));
  return [at(3), at(2), at(1), at(0)];
}

const rows = alignments();
const given = {
  QL: { value: rows.QL, unit: '1, 0 for no leak' },
  Qts: { value: rows.Qts, unit: '1' },
  h: { value: rows.h, unit: '1' },
  alpha: { value: rows.alpha, unit: '1' },
};
(['a1', 'a2', 'a3'] as const).forEach((name, k) => {
  const shared = {
    formula: 'network/compilePolynomials',
    source: { key: 'small1973vented1', locator: `response function of the vented box, coefficient ${name}` },
    status: 'derived',
    kind: 'table',
    given,
    got: (row: AlignmentRow) => compiledCoefficients(row)[k]!,
    unit: '1',
  } as const;
  check(`network.textbook.${name}`, {
    ...shared,
    expected: rows.QL.map((QL, i) => {
      const row = { QL, Qts: rows.Qts[i]!, h: rows.h[i]!, alpha: rows.alpha[i]! };
      return printedCoefficients(row)[k]!;
    }),
    tolerance: { relative: 1e-14, why: 'both exact but for rounding' },
  });
  check(`network.table.${name}`, {
    ...shared,
    expected: rows[name],
    tolerance: { relative: 5e-9, why: 'values to ten digits; alpha is the difference of larger numbers' },
  });
});
check('network.textbook.one', {
  formula: 'network/compilePolynomials',
  source: { key: 'small1973vented1', locator: 'response function of the vented box, last coefficient 1' },
  status: 'derived',
  kind: 'table',
  given,
  got: (row) => compiledCoefficients(row)[3]!,
  expected: rows.QL.map(() => 1),
  unit: '1',
  tolerance: { relative: 1e-14, why: 'exact but for rounding' },
});
