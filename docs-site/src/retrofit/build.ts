import { holeText } from '../../../packages/airspring/src/words/tubes-text.js';
import { html, type Markup } from '../html.js';
import { list, tied } from '../say.js';
import { type Buildable, filesToMake } from '../sections/build-files.js';
import type { Facts } from './facts.js';
import { printStep } from './first.js';

/** Everything to make of what is printed first, of a design, or of a set of tubes. */
export function filesOfChanges({ answer, first, sets, say }: Facts): Markup | false {
  const all: readonly Buildable[] = [
    ...(first && printStep({ first, say }) !== undefined
      ? [{ only: String(first.number), words: 'what to print first' }]
      : []),
    ...answer.designs.map(({ name }) => ({ only: name, words: `design ${name}` })),
    ...sets.map(({ number, tubes, proposed }) => ({
      only: `set ${number}`,
      words: tied(`set ${number}, ${holeText(tubes, answer, say)}: ${list(proposed.map(({ mark }) => mark))}`),
    })),
  ];
  if (all.length === 0) return false;
  return html`
<section aria-labelledby="build"><h2 id="build">Files to build from</h2>
${filesToMake('Everything to make of a change, of a design or of a set of tubes fits in one archive: pages to print with the work in order, tubes and flanges as STL and 3MF, holes and boards as SVG and DXF.', all)}
</section>`;
}
