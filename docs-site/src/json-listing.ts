import { html, type Markup } from './html.js';

const tokens = /("(?:[^"\\]|\\.)*")(\s*:)?|(-?\d[\d.eE+-]*|true|false|null)|([^"\d\-tfn]+|.)/g;
/** A name and its plain value; longer ones may break. */
export const pair = /"(?:[^"\\\n]|\\.){1,24}": (?:"(?:[^"\\\n]|\\.){0,24}"|[-\d.eE+]+|true|false),?/g;

const inked = (text: string): Markup[] =>
  [...text.matchAll(tokens)].map(([whole, string, colon, number]) => {
    if (string && colon) return html`${string}${colon}`;
    if (string) return html`<span class="j-text${string.length < 26 && ' pair'}">${string}</span>`;
    return number ? html`<span class="j-number">${number}</span>` : html`${whole}`;
  });

function line(text: string, i: number, all: readonly string[]): Markup {
  const parts: Markup[] = [];
  let at = 0;
  for (const found of text.matchAll(pair)) {
    parts.push(...inked(text.slice(at, found.index)), html`<span class="pair">${inked(found[0])}</span>`);
    at = found.index + found[0].length;
  }
  const indent = /^ */.exec(text)?.[0].length ?? 0;
  return html`<span class="line" style="--in:${indent + 2}">${parts}${inked(text.slice(at))}${i < all.length - 1 && '\n'}</span>`;
}

/** A text of JSON to read: on a narrow page lines break between pairs only, and go on where they began. */
export const jsonListing = (text: string): Markup =>
  html`<pre class="listing" tabindex="0" aria-label="The brief"><code>${text.split('\n').map(line)}</code></pre>`;
