import { standardShapes } from '@airspring/workshop/shape';
import { type BriefField, briefFields } from 'airspring';
import { html, type Markup, table } from './html.js';
import { tied } from './say.js';

const all = briefFields({ shapes: standardShapes });
const sectionOf = ({ path }: BriefField): string => path.split(/[.[]/)[0] ?? '';

/** The sections of a brief, in their order. */
export const briefSections: readonly string[] = [...new Set(all.map(sectionOf))].filter((name) => name !== '$schema');

/** What a field takes: 'length, 1 to 2000 mm'. */
const takesOf = ({ takes, range }: BriefField): string =>
  tied([takes.replace(/^a text: /, ''), ...(range ? [range] : [])].join(', '));

const neededOf = ({ needed, default: byDefault }: BriefField): string =>
  tied(needed ? 'needed' : (byDefault ?? 'may be left out'));

/** The words that a section of a brief may have, from its schema. `until` leaves out what is nested deeper. */
export function wordsOfBrief(section: string, until = Infinity): Markup {
  const fields = all.filter((one) => sectionOf(one) === section && one.path.split('.').length <= until + 1);
  const rows = fields.map((one) => [html`<code>${one.path}</code>`, tied(one.what), takesOf(one), neededOf(one)]);
  return table(`The words of ${section}, from the schema`, ['field', 'what it is', 'takes', 'if left out'], rows);
}
