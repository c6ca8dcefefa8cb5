import type { BoxKind } from './box-kind.js';
import { roundVentSettings, tuningVentAcross, tuningVentFields } from './round-vent-fields.js';
import { roundVents } from './round-vents.js';
import { tunedByVents } from './tuned-by-vent.js';

/** A vented box: it is tuned by round tubes, each straight or with one bend. */
export const vented: BoxKind<typeof tuningVentFields> = {
  name: 'vented',
  called: 'a vented box',
  shaped: true,
  fields: tuningVentFields,
  across: tuningVentAcross,
  variants: (job, choice) => {
    const settings = roundVentSettings(job);
    return settings.counts.map((count) => ({
      ...tunedByVents(job, choice, roundVents(vented, job, choice, settings, count)),
      // No other variant sounds alike, but the same one in another space does. The waves in a vent depend on its size and panel.
      ...(!settings.waves && { sound: `${count}` }),
    }));
  },
};
