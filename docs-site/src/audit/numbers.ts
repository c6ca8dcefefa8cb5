/** Numbers of the ledger as a reader wants them; a number that is none is refused, not printed. */
import type { LedgerRow } from '../../../tests/ledger/row.js';

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** '1.23 × 10⁻⁹', '−0.0123': at most `digits` digits, a true minus sign, and no place for a line break. */
export function numberText(value: number, digits = 10): string {
  if (!Number.isFinite(value)) throw new Error(`${value} is no number to print`);
  const size = Math.abs(value);
  const rounded = Number(value.toPrecision(digits));
  if (value === 0 || (size >= 1e-4 && size < 1e9)) return String(rounded).replace('-', '−');
  const [mantissa, exponent] = rounded.toExponential().split('e') as [string, string];
  const power = exponent
    .replace('+', '')
    .replace('-', '⁻')
    .replace(/\d/g, (digit) => raised[Number(digit)] as string);
  return `${mantissa.replace('-', '−')}\u00a0×\u00a010${power}`;
}

/** A fraction in per cent where that reads well. */
const fractionText = (value: number): string =>
  value === 0 || value < 1e-6 ? numberText(value, 2) : `${numberText(value * 100, 2)}\u00a0%`;

export const withUnit = (text: string, unit: string): string =>
  unit === '' || unit === '1' ? text : `${text}\u00a0${unit}`;

/** A size as the tolerance of the row is meant: relative, or in its unit. */
export const sizeText = ({ tolerance, unit }: Pick<LedgerRow, 'tolerance' | 'unit'>, size: number): string =>
  tolerance.relative === undefined ? withUnit(numberText(size, 2), unit) : fractionText(size);

export const listed = (value: number | readonly number[]): readonly number[] =>
  typeof value === 'number' ? [value] : value;

/** Deviation of one element, as the tolerance of the row is meant. */
export function deviations(row: Pick<LedgerRow, 'expected' | 'got' | 'tolerance'>): readonly number[] {
  const got = listed(row.got);
  return listed(row.expected).map((want, i) => {
    const off = Math.abs(got[i]! - want);
    return row.tolerance.relative === undefined ? off : off / Math.abs(want);
  });
}

/** Units of the elements: one for all, or a list such as 'Hz, 1, 1'. */
export function unitsOf({ unit, expected }: Pick<LedgerRow, 'unit' | 'expected'>): readonly string[] {
  const { length } = listed(expected);
  const parts = unit.split(', ');
  return parts.length === length ? parts : Array.from({ length }, () => unit);
}
