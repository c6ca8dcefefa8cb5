import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';
import { oneOrMore, size, wall as wallBounds } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity, wholeNumber } from '../brief/quantity-text.js';
import type { Job } from '../job/job.js';
import { boundsAcross, roundVentFields } from './round-vent-fields.js';
import { quiet, ventedFields } from './vented-fields.js';

const opt = v.exactOptional;
/** What a brief may say about a slot vent. */
export const slotFields = {
  box: ventedFields.box,
  vent: { airSpeed: ventedFields.airSpeed, quiet, faces: roundVentFields.vent.faces },
  slot: {
    smallest: opt(
      v.pipe(
        quantity('length', { ...size, example: '20 mm' }),
        v.description('smallest inner height; default 15 mm, or slot.largest if that is less'),
      ),
    ),
    largest: opt(
      v.pipe(
        quantity('length', { ...size, example: '60 mm' }),
        v.description('largest inner height; default 80 mm, or slot.smallest if that is more'),
      ),
    ),
    width: opt(
      v.pipe(
        v.union([v.literal('full'), quantity('length', size)]),
        v.description('inner width, or full: from side to side of the box; default full'),
      ),
    ),
    along: opt(
      v.pipe(
        oneOrMore(v.picklist(['none', 'one', 'two']), 'a number of panels'),
        v.description(
          'how many panels of the box serve as boards of a slot whose width is a length; each is tried; default one',
        ),
      ),
    ),
    wall: opt(
      v.pipe(quantity('length', wallBounds), v.description('thickness of its boards; default that of the panels')),
    ),
    bends: opt(v.pipe(wholeNumber(0, 1), v.description('greatest number of folds; default 1'))),
  },
};

/** These fields, read. */
export type SlotRead = ReadFields<typeof slotFields>;

/** Faults between fields: bounds of the height that contradict each other, and fields that have no meaning beside a full width. */
export function acrossSlot(written: Readonly<Record<string, unknown>>, read: Partial<Job['sections']>): Fault[] {
  const { slot = {}, vent = {} } = read as SlotRead;
  const faults = boundsAcross('slot', written, read);
  const full = (slot.width ?? 'full') === 'full';
  if (full && slot.along !== undefined) {
    faults.push({
      code: 'inconsistent',
      path: 'slot.along',
      got: slot.along,
      expected: 'nothing here, since a slot of full width always reaches from side to side',
      remedy: 'Give slot.width as a length, or remove slot.along.',
    });
  }
  if (full && vent.faces?.every((face) => face === 'left' || face === 'right')) {
    if (Object.keys(slot).length > 0) {
      faults.push({
        code: 'inconsistent',
        path: 'vent.faces',
        got: vent.faces,
        expected: 'a face that reaches from side to side, since the slot does',
        remedy: 'Name front, back, bottom or top; or give slot.width as a length.',
      });
    }
  }
  return faults;
}
