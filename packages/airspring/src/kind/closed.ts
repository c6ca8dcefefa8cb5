import { type ClosedBoxSpec, closedFamily, closedResonance } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { fit } from '@airspring/core/space';
import * as v from 'valibot';
import { lossQ } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { plainNumber } from '../brief/quantity-text.js';
import type { DriverChoice, Job } from '../job/job.js';
import { alignsIn } from './aligns.js';
import { acousticsOf, type BoxKind, type Finished, type KindRecord, type Point, type Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { noParts } from './no-parts.js';
import { metres, outerSizes } from './placing.js';

const fields = {
  box: {
    fillGain: v.exactOptional(
      v.pipe(
        plainNumber(1, 1.4, 1.15),
        v.description('how many times its own volume the filled box acts as; default 1, without filling'),
      ),
    ),
    QL: v.exactOptional(v.pipe(lossQ, v.description('quality factor of its leaks at its resonance; default no leaks'))),
    QA: v.exactOptional(
      v.pipe(lossQ, v.description('quality factor of the absorption at its resonance; default no absorption')),
    ),
  },
};

/** Polyester wadding that closed boxes are filled with, kg/m³ (common practice, from memory). */
const WADDING = [8, 16] as const;

function variantOf(job: Job, choice: DriverChoice): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { fillGain = 1, QL, QA } = box;
  const losses = { ...(QL !== undefined && { QL }), ...(QA !== undefined && { QA }) };
  const { drivers } = choice;
  const contents = contentsOf(job, choice);
  const spec = ([netVolume = 0]: Point): ClosedBoxSpec => ({
    drivers,
    netVolume: si('volume', netVolume),
    fillGain,
    ...losses,
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });
  const record = ({ point }: Finished): KindRecord => {
    const [netVolume = 0] = point;
    const { fc, Qtc, alpha } = closedResonance(spec(point), job.air);
    return {
      holes: [],
      summary: ['Its resonance in the box is ', [fc, 'frequency'], ', with Qtc ', [Qtc, 'ratio'], '.'],
      brief: ['none'],
      building: [
        ['The box is closed: it has no vent, and every joint must be airtight.'],
        ...(fillGain > 1
          ? [
              [
                `Fill the box loosely. The design assumes that the filled box acts as one with ${fillGain} times its volume of air. Common practice is 8 to 16 g of polyester wadding for each litre, here `,
                [WADDING[0] * netVolume, 'mass'],
                ' to ',
                [WADDING[1] * netVolume, 'mass'],
                '. Measure the impedance, and add or take out some until its peak is at ',
                [fc, 'frequency'],
                '.',
              ] as const,
            ]
          : []),
      ],
      playing: [],
      numbers: [
        { what: 'resonance in the box (fc)', value: [[fc, 'frequency']] },
        { what: 'quality factor of the driver in the box (Qtc)', value: [[Qtc, 'ratio']] },
        { what: 'compliance of the driver ÷ that of the air (alpha)', value: [[alpha, 'ratio']] },
      ],
      assumed: contents.assumed,
      margins: [],
      warnings: [],
      givesOut: {},
      printed: false,
    };
  };
  return {
    kind: closed,
    choice,
    acoustic: [],
    contents: contents.taken,
    least: leastFor(job, choice),
    ...acousticsOf(closedFamily, job, spec),
    ...alignsIn(closedFamily, job, spec, ({ netVolume }) => [netVolume]),
    limits: () => [],
    ...noParts(driverLayout(job, choice)),
    settle: (airBefore) => (airBefore > 0 ? [airBefore] : undefined),
    place: (edges) =>
      fit({
        outer: outerSizes(edges),
        thickness: metres(job.space.panelThickness),
        driver: driverRoom(choice),
        cutoutMargin: metres(job.space.cutoutPlay),
      }),
    record,
  };
}

/** A closed box: the cone works against the spring of the air. It has no opening, and no part but its panels. */
export const closed: BoxKind<typeof fields> = {
  name: 'closed',
  called: 'a closed box',
  fields,
  variants: (job, choice) => [variantOf(job, choice)],
};
