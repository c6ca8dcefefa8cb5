import { described, type Reference } from '../audit/reference.js';
import { html, type Markup } from '../html.js';

/** A citation at the claim that leads to the list at the end. */
export const cite = (key: string, locator?: string): Markup =>
  html`<a class="cite" href="#source-${key}">[${key}${locator && ` ${locator}`}]</a>`;

/** The sources of a page; `uses` says what each is good for there. */
export function sources(references: readonly Reference[], uses: Readonly<Record<string, string>>): Markup {
  const known = new Map(references.map((reference) => [reference.id, reference]));
  const items = Object.entries(uses).flatMap(([key, use]) => {
    const reference = known.get(key);
    return reference
      ? [
          html`<li id="source-${key}"><a href="/bibliography/#${key}">[${key}]</a> For ${use}. ${described(reference)}</li>`,
        ]
      : [];
  });
  return html`
<section aria-labelledby="sources"><h2 id="sources">Sources</h2>
<ul class="plain sources">${items}</ul>
</section>`;
}
