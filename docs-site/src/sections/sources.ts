import { html, type Markup } from '../html.js';

/** The fields of a CSL record that a reader needs. */
export interface Reference {
  readonly id: string;
  readonly title: string;
  readonly author?: readonly { readonly family?: string; readonly given?: string; readonly literal?: string }[];
  readonly issued?: { readonly 'date-parts': readonly (readonly number[])[] };
  readonly 'container-title'?: string;
  readonly publisher?: string;
  readonly number?: string;
  readonly volume?: string;
  readonly page?: string;
  readonly note?: string;
}

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
    return reference ? [html`<li id="source-${key}"><b>[${key}]</b> ${described(reference)} For ${use}.</li>`] : [];
  });
  return html`
<section aria-labelledby="sources"><h2 id="sources">Sources</h2>
<ul class="plain">${items}</ul>
</section>`;
}

function described(reference: Reference): Markup {
  const { title, author = [], issued, publisher, number, volume, page, note } = reference;
  const names = author
    .map(({ family, given, literal }) => literal ?? [family, given].filter(Boolean).join(', '))
    .join('; ');
  const year = issued?.['date-parts'][0]?.[0];
  const journal = reference['container-title'];
  const place = [journal, volume, page && `p. ${page}`, publisher, number].filter(Boolean).join(', ');
  return html`${names && `${names}: `}<cite>${title}</cite>.${place && ` ${place}`}${year !== undefined && `, ${year}`}${(place || year !== undefined) && '.'}${note && ` (${note.replace(/\.$/, '')}.)`}`;
}
