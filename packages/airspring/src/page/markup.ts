import { visible } from '@airspring/core/fault';

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text from outside, safe between tags and in attributes. */
export const escaped = (text: string): string => visible(text).replace(/[&<>"]/g, (sign) => ESCAPES[sign] as string);

/** Millimetres for a drawing in which one unit is one millimetre on paper. */
export const mm = (metres: number): string => (metres * 1e3).toFixed(2).replace(/\.?0+$/, '');

/** Rows of a table; the first row is its head. Cells are texts. */
export function tableOf(rows: readonly (readonly string[])[]): string {
  const [head = [], ...body] = rows;
  const row = (cells: readonly string[], tag: 'th' | 'td') =>
    `<tr>${cells.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
  return `<table><thead>${row(head, 'th')}</thead><tbody>${body.map((cells) => row(cells, 'td')).join('')}</tbody></table>`;
}
