import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import type { Element } from './element.js';
import type { Listed } from './equations.js';

/** Columns of an element that is given over frequency. */
export type ListedColumns = Partial<Record<Listed, ComplexColumn>>;

/** Room for the columns of an element; `undefined` for an element with one value. */
export function listedColumns(element: Element, length: number): ListedColumns | undefined {
  if (element.kind === 'admittance') return { Y: complexColumn(length) };
  if (element.kind !== 'twoPort') return undefined;
  return { A: complexColumn(length), B: complexColumn(length), C: complexColumn(length), D: complexColumn(length) };
}

/** Asks the element for its columns at these frequencies. */
export function fillListed(element: Element, frequencies: Float64Array, out: ListedColumns): void {
  if (element.kind === 'admittance' && out.Y) element.admittance(frequencies, out.Y.re, out.Y.im);
  if (element.kind === 'twoPort') element.chain(frequencies, out as Required<ListedColumns>);
}
