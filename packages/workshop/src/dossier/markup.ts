const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text from outside, safe between tags and in attributes; characters that no page shows are left out, and a number stays with its unit. */
export const escaped = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '')
    .replace(/(?<=\d) (?=(?:mm|cm|in|m|m³|kg|g|L|Hz|Ω|dB|W|V|ms|×)(?![\p{L}\d]))/gu, '\u00a0')
    .replace(/[&<>"]/g, (sign) => ESCAPES[sign]!);

export const paragraph = (text: string): string => `<p>${escaped(text)}</p>`;
export const caution = (text: string | undefined): string =>
  text === undefined ? '' : `<p class="caution">${escaped(text)}</p>`;
export const list = (items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;

/** Short texts with numbers, in columns. */
export const columns = (items: readonly string[]): string =>
  `<ol class="columns">${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ol>`;

/** Steps to tick off on paper. A caution stands before its step. */
export const steps = (items: readonly { readonly says: string; readonly caution?: string | undefined }[]): string =>
  `<ol class="steps">${items.map(({ says, caution: due }) => `<li>${caution(due)}<span class="box"></span>${escaped(says)}</li>`).join('')}</ol>`;

/** A table; its head is repeated on each page of paper. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[], tag: 'th' | 'td') =>
    `<tr>${cells.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
  const top = head.length > 0 ? `<thead>${row(head, 'th')}</thead>` : '';
  return `<table>${top}<tbody>${rows.map((cells) => row(cells, 'td')).join('')}</tbody></table>`;
}

/** A drawing; one that says itself what it is has no words below it. */
export const figure = (drawing: string, words?: string): string =>
  `<figure>${drawing}${words === undefined ? '' : `<figcaption>${escaped(words)}</figcaption>`}</figure>`;

/**
 * A part of the document. It begins on a new sheet of paper, unless it goes `on`: below the one before it if it fits there whole; or
 * it `flows` on from there.
 */
export const section = (title: string, body: string, how?: 'on' | 'flows'): string =>
  `<section${how ? ` class="${how}"` : ''}><h2>${escaped(title)}</h2>\n${body}\n</section>`;
