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

/** Relative step of the difference quotient for elements given over frequency. */
const STEP = 1e-5;

/** ∂/∂ln f of the columns of elements that are given over frequency, by a difference quotient. */
export function listedSlopes(elements: readonly Element[], block: number) {
  const [below, above] = [0, 1].map(() => elements.map((element) => listedColumns(element, block))) as [
    (ListedColumns | undefined)[],
    (ListedColumns | undefined)[],
  ];
  const slope = complexColumn(block);
  const moved = new Float64Array(block);
  let count = 0;
  const fill = (frequencies: Float64Array) => {
    count = frequencies.length;
    elements.forEach((element, symbol) => {
      for (const [tables, factor] of [
        [below, 1 - STEP],
        [above, 1 + STEP],
      ] as const) {
        const columns = tables[symbol];
        if (columns === undefined) continue;
        for (let i = 0; i < count; i++) moved[i] = (frequencies[i] as number) * factor;
        fillListed(element, moved.subarray(0, count), columns);
      }
    });
  };
  const of = (symbol: number, corner: Listed): ComplexColumn => {
    const [low, high] = [below[symbol]?.[corner] as ComplexColumn, above[symbol]?.[corner] as ComplexColumn];
    for (let i = 0; i < count; i++) {
      slope.re[i] = ((high.re[i] as number) - (low.re[i] as number)) / (2 * STEP);
      slope.im[i] = ((high.im[i] as number) - (low.im[i] as number)) / (2 * STEP);
    }
    return slope;
  };
  return { fill, of };
}
