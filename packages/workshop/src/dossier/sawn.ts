import type { BraceInput } from '../panel/index.js';
import { type Sawing, sawingOf } from './sawing.js';
import type { Says } from './says.js';
import type { WorkBox, WorkTools } from './work.js';

const told = (because: readonly { readonly text: string }[]): string => because.map(({ text }) => text).join(' ');

/** What to do about parts that are larger than every sheet, or more than the sheets. */
const LARGER =
  'Have them sawn from a larger sheet, or write the sheets that you can get into "sheets" of the "workshop" and make these pages again. No panel is joined of two here: such a joint must be stiff and airtight, so that it is for you to choose.';

/**
 * What is sawn: without the bolts of the drivers where a panel has no room for them, and with a list of the holes where no drawing can
 * have them. What is left out is told in `notes`.
 */
export function sawn(
  box: WorkBox,
  { bolts, ...tools }: WorkTools,
  braces: readonly BraceInput[],
  notes: string[],
  says: Says,
): Sawing | undefined {
  const whole = sawingOf(box, { ...tools, ...(bolts && { bolts }) }, braces);
  const plain = whole.ok || bolts === undefined ? whole : sawingOf(box, tools, braces);
  const found = plain.ok ? plain : sawingOf(box, tools, braces, 'listed');
  if (!found.ok) {
    notes.push(told(found.because));
    return undefined;
  }
  if (!whole.ok)
    notes.push(
      plain.ok
        ? `The holes for the bolts of the drivers are not drawn. ${told(whole.because)}`
        : `The drawings have no holes: their places are listed under "Holes". ${told(whole.because)}`,
    );
  for (const { board, thickness, because } of found.unnested)
    notes.push(`The pieces of ${board}, ${says(thickness)} thick, are not laid on sheets. ${told(because)} ${LARGER}`);
  return found;
}
