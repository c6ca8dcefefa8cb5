import { InputError } from '../fault/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { assign } from './column-arithmetic.js';
import type { Element } from './element.js';
import type { Listed } from './equations.js';
import type { Slots } from './slots.js';

/** Columns of an element that is given over frequency. */
export type ListedColumns = Partial<Record<Listed, ComplexColumn>>;

/** Room for the columns of an element; `undefined` for an element with one value. */
export function listedColumns(element: Element, length: number): ListedColumns | undefined {
  if (element.kind === 'law') return { law: complexColumn(length) };
  if (element.kind !== 'line') return undefined;
  return { A: complexColumn(length), B: complexColumn(length), C: complexColumn(length), D: complexColumn(length) };
}

/** Fills the columns of an element at the frequencies of a block. A value that is not finite is refused with the element's name. */
export function fillListed(
  element: Element,
  values: Float64Array,
  { of }: Slots,
  frequencies: Float64Array,
  out: ListedColumns,
): void {
  const columns = Object.values(out);
  for (const column of columns) assign(column, 0, frequencies.length);
  const at = of.get(element.name)?.at ?? 0;
  if (element.kind === 'law' && out.law) element.fill(values, at, frequencies, out.law);
  if (element.kind === 'line') element.fill(values, at, frequencies, out as Required<ListedColumns>);
  for (const column of columns) refuseNoNumber(element.name, frequencies, column);
}

/** The column of a law alone. */
export const fillLaw = (
  element: Element,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  law: ComplexColumn,
): void => fillListed(element, values, slots, frequencies, { law });

function refuseNoNumber(name: string, frequencies: Float64Array, { re, im }: ComplexColumn): void {
  let sum = 0;
  for (let i = 0; i < frequencies.length; i++) sum += re[i]! + im[i]!;
  if (Number.isFinite(sum)) return;
  const i = frequencies.findIndex((_, k) => !Number.isFinite(re[k]! + im[k]!));
  if (i < 0) return;
  const [path, remedy] = [`elements.${name}`, `Correct the values that '${name}' fills.`];
  const [got, expected] = [re[i]! + im[i]!, `a finite number at ${frequencies[i]} Hz`];
  throw new InputError([{ code: 'not-finite', path, got, expected, remedy }]);
}

/** Relative step of the difference quotients of elements given over frequency. */
const STEP = 1e-5;

/** ∂/∂ln f of the columns of an element: its own slope where it has one, else a difference quotient. */
export function fillListedSlope(
  element: Element,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  out: ListedColumns,
): void {
  const count = frequencies.length;
  if (element.kind === 'law' && element.slope !== undefined && out.law) {
    assign(out.law, 0, count);
    element.slope(values, slots.of.get(element.name)?.at ?? 0, frequencies, out.law);
    refuseNoNumber(element.name, frequencies, out.law);
    return;
  }
  difference(element, slots, frequencies, out, 2 * STEP, (sign) => [
    values,
    frequencies.map((f) => f * (1 + sign * STEP)),
  ]);
}

export const fillLawSlope = (
  element: Element,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  law: ComplexColumn,
): void => fillListedSlope(element, values, slots, frequencies, { law });

/** ∂/∂value of the columns of an element by one of its parameters, by a difference quotient. */
export function fillListedParameterSlope(
  element: Element,
  values: Float64Array,
  slots: Slots,
  slot: number,
  frequencies: Float64Array,
  out: ListedColumns,
): void {
  const step = STEP * Math.max(Math.abs(values[slot]!), 1e-9);
  difference(element, slots, frequencies, out, 2 * step, (sign) => [
    values.map((value, k) => (k === slot ? value + sign * step : value)),
    frequencies,
  ]);
}

function difference(
  element: Element,
  slots: Slots,
  frequencies: Float64Array,
  out: ListedColumns,
  step: number,
  at: (sign: 1 | -1) => readonly [values: Float64Array, frequencies: Float64Array],
): void {
  const count = frequencies.length;
  const below = listedColumns(element, count) as ListedColumns;
  fillListed(element, at(-1)[0], slots, at(-1)[1], below);
  fillListed(element, at(1)[0], slots, at(1)[1], out);
  for (const corner of Object.keys(out) as Listed[]) {
    const [{ re, im }, low] = [out[corner] as ComplexColumn, below[corner] as ComplexColumn];
    for (let i = 0; i < count; i++) {
      re[i] = (re[i]! - low.re[i]!) / step;
      im[i] = (im[i]! - low.im[i]!) / step;
    }
  }
}
