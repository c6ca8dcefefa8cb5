import type { ComplexColumn } from '../numeric/index.js';
import { assign } from './column-arithmetic.js';
import { columnRoom, type TakeColumn } from './column-room.js';
import type { Element } from './element.js';
import type { Listed } from './equations.js';
import { differenceQuotient, fillLaw, fillLawSlope, refuseNoNumber, STEP } from './law-column.js';
import type { Slots } from './slots.js';

/** Columns of an element that is given over frequency. */
export type ListedColumns = Partial<Record<Listed, ComplexColumn>>;

/** Room for the columns of an element; `undefined` for an element with one value. */
export function listedColumns(element: Element, take: TakeColumn): ListedColumns | undefined {
  if (element.kind === 'law') return { law: take() };
  if (element.kind !== 'line') return undefined;
  return { A: take(), B: take(), C: take(), D: take() };
}

/** Fills the columns of an element at the frequencies of a block. A value that is not finite is refused with the element's name. */
export function fillListed(
  element: Element,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  out: ListedColumns,
): void {
  if (element.kind === 'law' && out.law) fillLaw(element, values, slots, frequencies, out.law);
  if (element.kind !== 'line') return;
  const columns = Object.values(out);
  for (const column of columns) assign(column, 0, frequencies.length);
  element.fill(values, slots.of.get(element.name)?.at ?? 0, frequencies, out as Required<ListedColumns>);
  for (const column of columns) refuseNoNumber(element.name, frequencies, column);
}

/** ∂/∂ln f of the columns of an element: its own slope where it has one, else a difference quotient. */
export function fillListedSlope(
  element: Element,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  out: ListedColumns,
): void {
  if (element.kind === 'law' && out.law) {
    fillLawSlope(element, values, slots, frequencies, out.law);
    return;
  }
  difference(element, slots, frequencies, out, 2 * STEP, (sign) => [
    values,
    frequencies.map((f) => f * (1 + sign * STEP)),
  ]);
}

/** ∂/∂value of the columns of an element by one of its parameters: its own where it has one, else a difference quotient. */
export function fillListedParameterSlope(
  element: Element,
  values: Float64Array,
  slots: Slots,
  slot: number,
  frequencies: Float64Array,
  out: ListedColumns,
): void {
  if (element.kind === 'law' && element.parameterSlope && out.law) {
    const at = slots.of.get(element.name)?.at ?? 0;
    assign(out.law, 0, frequencies.length);
    element.parameterSlope(slot - at, values, at, frequencies, out.law);
    refuseNoNumber(element.name, frequencies, out.law);
    return;
  }
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
  const below = listedColumns(element, columnRoom(count).take) as ListedColumns;
  fillListed(element, at(-1)[0], slots, at(-1)[1], below);
  fillListed(element, at(1)[0], slots, at(1)[1], out);
  for (const corner of Object.keys(out) as Listed[]) {
    differenceQuotient(out[corner] as ComplexColumn, below[corner] as ComplexColumn, step, count);
  }
}
