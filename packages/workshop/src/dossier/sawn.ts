import type { Reason } from '@airspring/core/fault';
import type { BraceInput } from '../panel/index.js';
import { sayReason } from '../words/told.js';
import { recessNotes } from './recess-room.js';
import { type Sawing, sawingOf } from './sawing.js';
import type { Says } from './says.js';
import type { WorkBox, WorkTools } from './work.js';

/** Reasons with their lengths in the unit of the pages, to a tenth of a millimetre. */
const told = (because: readonly Reason[], says: Says): string =>
  because.map((reason) => sayReason(reason, (metres) => says(Math.round(metres * 1e4) / 1e4))).join(' ');

/** What to do about parts that are larger than every sheet, or more than the sheets. */
const LARGER =
  'Have them sawn from a larger sheet, or write the sheets that you can get into "sheets" of the "workshop" and make these pages again. No panel is joined of two here: such a joint must be stiff and airtight, so that it is for you to choose.';

/** What is left out around the holes of drivers where a panel has no room for it, the least first. */
function withLess({ bolts, recess, roundOver, ...plain }: WorkTools): (readonly [what: string, tools: WorkTools])[] {
  const edge = { ...(recess !== undefined && { recess }), ...(roundOver !== undefined && { roundOver }) };
  const edged = recess !== undefined || roundOver !== undefined;
  return [
    ...(bolts ? [['The holes for the bolts of the drivers are not drawn.', { ...plain, ...edge }] as const] : []),
    ...(edged
      ? [
          [
            'What is routed around the holes of the drivers is not drawn.',
            { ...plain, ...(bolts && { bolts }) },
          ] as const,
        ]
      : []),
    ...(bolts && edged
      ? [['Neither bolts nor what is routed around the holes of the drivers is drawn.', plain] as const]
      : []),
  ];
}

/**
 * What is sawn: without bolts or routed edges of the drivers where a panel has no room for them, and with a list of the holes where no
 * drawing can have them. What is left out is told in `notes`.
 */
export function sawn(
  box: WorkBox,
  tools: WorkTools,
  braces: readonly BraceInput[],
  notes: string[],
  says: Says,
): Sawing | undefined {
  const found = madeWhole(box, tools, braces, notes, says);
  if (found === undefined) return undefined;
  for (const { board, thickness, because } of found.unnested)
    notes.push(
      `The pieces of ${board}, ${says(thickness)} thick, are not laid on sheets. ${told(because, says)} ${LARGER}`,
    );
  if (tools.recess !== undefined) notes.push(...recessNotes(box, tools.recess, says));
  return found;
}

/** The boards with as much as there is room for. */
function madeWhole(
  box: WorkBox,
  tools: WorkTools,
  braces: readonly BraceInput[],
  notes: string[],
  says: Says,
): Sawing | undefined {
  const whole = sawingOf(box, tools, braces, 'drawn', says);
  if (whole.ok) return whole;
  for (const [what, less] of withLess(tools)) {
    const made = sawingOf(box, less, braces, 'drawn', says);
    if (!made.ok) continue;
    notes.push(`${what} ${told(whole.because, says)}`);
    return made;
  }
  const listed = sawingOf(box, tools, braces, 'listed', says);
  notes.push(
    listed.ok
      ? `The drawings have no holes: their places are listed under "Holes". ${told(whole.because, says)}`
      : told(listed.because, says),
  );
  return listed.ok ? listed : undefined;
}
