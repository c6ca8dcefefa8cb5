import { described, type Reference } from '../audit/reference.js';
import { html, type Markup } from '../html.js';

/** What each source is good for on this page. */
const uses: Readonly<Record<string, string>> = {
  rayleigh1896: 'the resonance of a cavity with a neck',
  small1973vented1: 'the network of driver, box and vent',
  small1973vented2: 'greatest level by travel and by heat',
  'iec60268-22': 'what the travel of a cone means',
  niosh98_126: 'level and time of exposure',
  practice: 'air speed as a limit; QL of a tight box; wooden butt joints',
};

/** A citation at the claim that leads to the list at the end. */
export const cite = (key: string, locator?: string): Markup =>
  html`<a class="cite" href="#source-${key}">[${key}${locator && ` ${locator}`}]</a>`;

export function sources(references: readonly Reference[]): Markup {
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
