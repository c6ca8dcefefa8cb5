import * as v from 'valibot';
import type { ReadFields } from '../brief/fields.js';
import { quantity } from '../brief/quantity-text.js';
import type { BoxKind } from './box-kind.js';
import { roundVentAcross, roundVentFields, roundVentSettings } from './round-vent-fields.js';
import { roundVents } from './round-vents.js';
import { tunedByVents } from './tuned-by-vent.js';

/** Radius of each rounding where the brief does not say, m. */
const RADIUS = 0.015;

const radius = (end: string) =>
  v.exactOptional(
    v.pipe(
      quantity('length', { least: 0, greatest: 500, unit: 'mm', example: '15 mm' }, 'not-negative'),
      v.description(`radius of the rounding at the ${end} end; 0 mm is a sharp end; default 15 mm`),
    ),
  );

const fields = { ...roundVentFields, flare: { inner: radius('inner'), outer: radius('outer') } };

/** A vented box whose tubes end in quarter rounds. */
export const flaredVented: BoxKind<typeof fields> = {
  name: 'flared-vented',
  called: 'a box with flared vents',
  shaped: true,
  byName: true,
  fields,
  across: roundVentAcross,
  variants: (job, choice) => {
    const { flare = {} } = job.sections as ReadFields<typeof fields>;
    const { inner = RADIUS, outer = RADIUS } = flare;
    const settings = roundVentSettings(job, { inner, outer });
    return settings.counts.map((count) =>
      tunedByVents(job, choice, roundVents(flaredVented, job, choice, settings, count)),
    );
  },
};
