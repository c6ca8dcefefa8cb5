/** What a printed number says of itself: its last digit. */
import { heldToPrint, type Tolerance } from './row.js';

/** A number as it stands in print: '0.7071', '-0.9033e-1', '1.30e3', '820'. */
export type Printed = string;

/** Half a unit of the last digit; zeros at the end count as digits. */
export function halfUnit(printed: Printed): number {
  const found = /^[-+]?\d+(?:\.(\d*))?(?:[eE]([-+]?\d+))?$/.exec(printed);
  if (!found) throw new Error(`'${printed}' is not a printed number`);
  return 0.5 * 10 ** (Number(found[2] ?? 0) - (found[1]?.length ?? 0));
}

/** Double precision can neither hold nor meet more digits than this, as a fraction of the number. */
const DOUBLE = 1e-14;

/** Whether a number differs from print by more than half a unit of its last digit. */
export const missesPrint = (got: number, printed: Printed): boolean => {
  const off = Math.abs(got - Number(printed));
  return off > halfUnit(printed) * (1 + 1e-9) && off > DOUBLE * Math.abs(Number(printed));
};

/** The tolerance of a number in print. */
export const printTolerance = (printed: Printed): Tolerance =>
  halfUnit(printed) < DOUBLE * Math.abs(Number(printed))
    ? { relative: DOUBLE, why: 'more digits are printed than double precision holds' }
    : { absolute: halfUnit(printed), why: heldToPrint };

/** How much of what its print allows a number uses: 1 at half a unit of the last digit. */
export const shareOfPrint = (got: number, printed: Printed): number =>
  Math.abs(got - Number(printed)) / Math.max(halfUnit(printed), DOUBLE * Math.abs(Number(printed)));

/** Whether half a unit of the last digit is so much of a number that its print says next to nothing, as of '1' or '0'. */
export const saysLittle = (printed: Printed): boolean =>
  Number(printed) === 0 ? !printed.includes('.') : halfUnit(printed) > Math.abs(Number(printed)) / 4;
