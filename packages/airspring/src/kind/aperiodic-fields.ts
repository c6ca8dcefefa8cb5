import type { Fault } from '@airspring/core/fault';
import { faces } from '@airspring/core/space';
import * as v from 'valibot';
import { oneOrMore, size } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity } from '../brief/quantity-text.js';
import type { Job, Written } from '../job/job.js';
import { closedAirFields } from './closed-air.js';
import { boundsAcross, inOrder } from './round-vent-fields.js';
import { quiet } from './vented-fields.js';

const opt = v.exactOptional;

/** What a brief may say about an aperiodic vent. */
export const aperiodicFields = {
  ...closedAirFields,
  vent: { quiet },
  aperiodic: {
    flowResistivity: opt(
      v.pipe(
        quantity('flowResistivity', { least: 2000, greatest: 500_000, unit: 'Pa·s/m²', example: '12000 Pa·s/m²' }),
        v.description('flow resistivity of the felt or fibre in the vent; default 12000 Pa·s/m²'),
      ),
    ),
    thickest: opt(v.pipe(quantity('length', size), v.description('greatest thickness of it; default 80 mm'))),
    smallest: opt(
      v.pipe(
        quantity('length', size),
        v.description('smallest diameter of the vent; default 40 mm, or aperiodic.largest if that is less'),
      ),
    ),
    largest: opt(
      v.pipe(
        quantity('length', size),
        v.description('largest diameter of the vent; default 150 mm, or aperiodic.smallest if that is more'),
      ),
    ),
    airSpeed: opt(
      v.pipe(
        quantity('airSpeedPeak', { least: 0.01, greatest: 20, unit: 'm/s', example: '0.5 m/s' }),
        v.description(
          'greatest air speed through the vent: peak in time, mean over its cross-section; default 0.5 m/s, a rule of thumb',
        ),
      ),
    ),
    faces: opt(
      v.pipe(
        oneOrMore(v.picklist(faces), 'a face'),
        v.description('faces on which the vent may be; each is tried; default the back'),
      ),
    ),
  },
};

type VentWritten = NonNullable<ReadFields<typeof aperiodicFields>['aperiodic']>;

/** What a brief says about the vent, with every default filled in; default numbers are rules of thumb. */
export function ventSettings({ sections }: Pick<Job, 'sections'>) {
  const { aperiodic = {}, vent = {} } = sections as { aperiodic?: VentWritten; vent?: { quiet?: boolean } };
  const smallest = aperiodic.smallest ?? Math.min(0.04, aperiodic.largest ?? Infinity);
  return {
    flowResistivity: aperiodic.flowResistivity ?? 12_000,
    isStated: aperiodic.flowResistivity !== undefined,
    thickest: aperiodic.thickest ?? 0.08,
    smallest,
    largest: aperiodic.largest ?? Math.max(0.15, smallest),
    airSpeedPeak: aperiodic.airSpeed ?? 0.5,
    isQuiet: vent.quiet ?? false,
    faces: inOrder(aperiodic.faces ?? ['back']),
  };
}

/** Faults between the fields: sizes of the vent. */
export const acrossAperiodic = (written: Written, read: Partial<Job['sections']>): Fault[] =>
  boundsAcross('aperiodic', written, read);
