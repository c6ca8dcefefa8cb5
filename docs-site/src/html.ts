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

/** A table with a caption, a row of heads, and a head for each row. */
export const table = (
  caption: string,
  heads: readonly Fragment[],
  rows: readonly (readonly Fragment[])[],
  name = '',
): Markup => html`
<div class="table"><table${name && html` class="${name}"`}>
<caption>${caption}</caption>
<thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>${rows.map(([head, ...cells]) => html`<tr><th scope="row">${head}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody>
</table></div>`;
