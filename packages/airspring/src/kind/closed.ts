import { closedFamily } from '@airspring/core/enclosure';
import type { DriverChoice, Job } from '../job/job.js';
import { alignsIn } from './aligns.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import { airtightWords, closedAir, closedAirFields } from './closed-air.js';

function variantOf(job: Job, choice: DriverChoice): Variant {
  const { spec, variant, record } = closedAir(job, choice);
  return {
    kind: closed,
    acoustic: [],
    ...variant,
    ...acousticsOf(closedFamily, job, spec),
    ...alignsIn(closedFamily, job, spec, ({ netVolume }) => [netVolume]),
    record: ({ point }) => {
      const told = record(point);
      return { ...told, building: [airtightWords, ...told.building] };
    },
  };
}

/** A closed box: the cone works against the spring of the air. It has no opening, and no part but its panels. */
export const closed: BoxKind<typeof closedAirFields> = {
  name: 'closed',
  called: 'a closed box',
  shaped: true,
  fields: closedAirFields,
  variants: (job, choice) => [variantOf(job, choice)],
};
