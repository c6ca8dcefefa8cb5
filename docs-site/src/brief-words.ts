import { standardShapes } from '@airspring/workshop/shape';
import { type BriefField, briefFields } from 'airspring';
import { html, type Markup, table } from './html.js';
import { tied } from './say.js';

const all = briefFields({ shapes: standardShapes });
const sectionOf = ({ path }: BriefField): string => path.split(/[.[]/)[0] ?? '';

/** What stands in a brief outside of every section. */
const ITSELF = 'the brief itself';
const groupOf = (field: BriefField): string => {
  const section = sectionOf(field);
  return all.filter((one) => sectionOf(one) === section).length > 1 ? section : ITSELF;
};

/** The sections of a brief, in their order, after what stands outside of them. */
export const briefSections: readonly string[] = [...new Set([ITSELF, ...all.map(groupOf)])];

/** What a field takes: 'length, 1 to 2000 mm'. */
const takesOf = ({ takes, range }: BriefField): string =>
  tied([takes.replace(/^a text: /, ''), ...(range ? [range] : [])].join(', '));

const neededOf = ({ needed, default: byDefault }: BriefField): string =>
  tied(needed ? 'needed' : byDefault === undefined ? 'may be left out' : `default: ${byDefault}`);

/** A path within its section, which may break where a name ends. */
const within = ({ path }: BriefField, section: string): Markup => {
  const names = (path === section || section === ITSELF ? path : path.slice(section.length).replace(/^\./, '')).split(
    '.',
  );
  return html`<code>${names.map((name, i) => html`${i > 0 && html`.<wbr>`}${name}`)}</code>`;
};

/** The words that a section of a brief may have, from its schema. `until` leaves out what is nested deeper. */
export function wordsOfBrief(section: string, until = Infinity): Markup {
  const fields = all.filter((one) => groupOf(one) === section && one.path.split('.').length <= until + 1);
  const rows = fields.map((one) => [within(one, section), tied(one.what), `${takesOf(one)}; ${neededOf(one)}`]);
  const caption = section === ITSELF ? 'The brief itself' : `The words of "${section}"`;
  return table(caption, ['field', 'what it is', 'takes'], rows);
}
