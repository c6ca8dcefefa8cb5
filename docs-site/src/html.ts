import { isWide, LONG, numbersOf, tableLook } from './columns.js';

/** Text that is markup already. Only `html` makes it, so nothing gets on the page unescaped by chance. */
export interface Markup {
  readonly markup: string;
}

export type Fragment = string | number | Markup | readonly Fragment[] | undefined | false;

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand between tags and in quoted attributes. */
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => entities[sign] as string);

function written(value: Fragment): string {
  if (value === undefined || value === false) return '';
  if (typeof value === 'string' || typeof value === 'number') return escaped(String(value));
  return 'markup' in value ? value.markup : value.map(written).join('');
}

/** A template whose values are escaped unless they are markup; lists are joined, `false` and `undefined` vanish. */
export const html = (parts: TemplateStringsArray, ...values: readonly Fragment[]): Markup => ({
  markup: parts.reduce((text, part, i) => text + written(values[i - 1]) + part),
});

/** Markup that a library wrote. */
export const trusted = (markup: string): Markup => ({ markup });

/** A table with a caption, a row of heads, and a head for each row. Numbers are aligned on their points, their unit in the head. */
export function table(
  caption: string,
  heads: readonly Fragment[],
  rows: readonly (readonly Fragment[])[],
  name = '',
): Markup {
  const texts = heads.map((head, k) => [head, ...rows.map((row) => row[k])].map(plain));
  const numbers = texts.map(([, ...cells]) => numbersOf(cells));
  const titles = heads.map((head, k) => {
    const unit = numbers[k]?.unit;
    return unit ? html`${head}, ${unit}` : html`${head}`;
  });
  // Columns of given widths stay side by side.
  const wide = name !== 'thirds' && isWide(texts);
  const look = tableLook(titles.map(plain), numbers, wide);
  const names = [name, ...look.names].filter(Boolean).join(' ');
  const cell = (value: Fragment, i: number, k: number): Markup => {
    const at = numbers[k];
    const { text = '', pad = '' } = at?.cells[i] ?? {};
    const long = wide && !at && plain(value).length > LONG;
    const attributes = html`${long && html` class="long"`}${pad !== '' && html` data-pad="${pad}"`}`;
    const told = at ? text : value;
    return k === 0 ? html`<th scope="row"${attributes}>${told}</th>` : html`<td${attributes}>${told}</td>`;
  };
  return html`
<div class="table"><table${names && html` class="${names}"`}${look.style && html` style="${look.style}"`}>
<caption>${caption}</caption>
<thead><tr>${titles.map((title) => html`<th scope="col">${title}</th>`)}</tr></thead>
<tbody>${rows.map((row, i) => html`<tr>${row.map((value, k) => cell(value, i, k))}</tr>`)}</tbody>
</table></div>`;
}

/** Words of a cell without their markup. */
const plain = (value: Fragment): string =>
  written(value)
    .replace(/<[^>]+>/g, '')
    .replace(
      /&(?:amp|lt|gt|quot|#39);/g,
      (entity) => (Object.entries(entities).find(([, text]) => text === entity) as [string, string])[0],
    );
