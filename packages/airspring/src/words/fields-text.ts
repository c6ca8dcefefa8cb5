import type { BriefField } from '../brief/field-list.js';
import { heading, indented, paragraph } from './layout.js';

/** What a field takes, in one line. */
function facts({ takes, units, range, default: byDefault, needed, example }: BriefField): string {
  const parts = [
    `${takes}${units ? ` in ${units.join(', ')}` : ''}`,
    ...(range ? [`from ${range}`] : []),
    needed ? 'needed' : byDefault ? `default: ${byDefault}` : 'may be left out',
  ];
  return `${parts.join('; ')}.${example === undefined ? '' : ` Example: ${JSON.stringify(example)}`}`;
}

/**
 * Every field of a brief as text, at most 80 columns wide: what it is, what it takes, its range, its default and an example.
 *
 * @example fieldsText(briefFields())
 */
export function fieldsText(fields: readonly BriefField[]): string {
  const blocks = fields.map(({ path, what, ...rest }) =>
    [path, indented(what), indented(facts({ path, what, ...rest }))].join('\n'),
  );
  const intro = paragraph(
    'Every field that a brief may have. A field of a list has [] in its path. You may leave out an optional section as a whole. If you give a section, give the fields that it needs.',
  );
  return `${[heading('The fields of a brief', '='), intro, ...blocks].join('\n\n')}\n`;
}
