import { html, type Markup } from '../html.js';
import { capital, ended } from './words.js';

/** The fields of a CSL record that a reader needs. */
export interface Reference {
  readonly id: string;
  /** The kind of publication; a document is what nobody in particular has published. */
  readonly type?: string;
  readonly title: string;
  readonly author?: readonly { readonly family?: string; readonly given?: string; readonly literal?: string }[];
  readonly issued?: { readonly 'date-parts': readonly (readonly (number | string)[])[] };
  readonly 'container-title'?: string;
  readonly publisher?: string;
  readonly number?: string;
  readonly version?: string;
  readonly volume?: string | number;
  readonly issue?: string | number;
  readonly page?: string;
  readonly note?: string;
  readonly DOI?: string;
  readonly URL?: string;
}

/**
 * A source as a line of a list: who, what, where, when, or that no address of it was verified; and what of it was seen. Where
 * something rests on it, a lack of that is said.
 */
export function described(reference: Reference, restedOn = false): Markup {
  const { type, title, author = [], issued, publisher, number, version, volume, issue, page, note, DOI } = reference;
  const names = author
    .map(({ family, given, literal }) => literal ?? [family, given].filter(Boolean).join(', '))
    .join('; ');
  const year = issued?.['date-parts'][0]?.[0];
  const part = volume !== undefined && `${volume}${issue === undefined ? '' : ` (${issue})`}`;
  const where = [reference['container-title'], part, page && `p. ${page}`, publisher, number, version, year]
    .filter(Boolean)
    .join(', ');
  const address = DOI ? `https://doi.org/${DOI}` : reference.URL;
  const unverified = address === undefined && type !== 'document' && 'No address verified.';
  const seen = note ? capital(ended(note)) : restedOn && 'How much of it we have read is not noted.';
  return html`${names && `${names}: `}<cite>${title}</cite>.${where && ` ${where}.`}${address && html` <a href="${address}">${DOI ? `doi:${DOI}` : address}</a>`}${unverified && ` ${unverified}`}${seen && html` <em>${seen}</em>`}`;
}
