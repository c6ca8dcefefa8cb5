import { type ClosedBoxSpec, closedFamily, closedResonance } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { compileBodiesFit, fit } from '@airspring/core/space';
import * as v from 'valibot';
import { lossQ } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { plainNumber } from '../brief/quantity-text.js';
import type { DriverChoice, Job } from '../job/job.js';
import { acousticsOf, type BoxKind, type Finished, type KindRecord, type Point, type Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { metres, netAir, outerSizes } from './placing.js';

const fields = {
  box: {
    fillGain: v.exactOptional(
      v.pipe(plainNumber(1, 1.4), v.description('gain of the air by loose filling; default 1, without filling')),
    ),
    QL: v.exactOptional(
      v.pipe(lossQ, v.description('leaks, at its resonance; default none, since it is meant to be tight')),
    ),
    QA: v.exactOptional(v.pipe(lossQ, v.description('absorption, at its resonance; default none'))),
  },
};

function variantOf(job: Job, choice: DriverChoice): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { fillGain = 1, QL, QA } = box;
  const losses = { ...(QL !== undefined && { QL }), ...(QA !== undefined && { QA }) };
  const { drivers } = choice;
  const contents = contentsOf(job, choice);
  const layout = driverLayout(job, choice);
  const room = compileBodiesFit(layout);
  const spec = ([netVolume = 0]: Point): ClosedBoxSpec => ({
    drivers,
    netVolume: si('volume', netVolume),
    fillGain,
    ...losses,
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });
  const record = ({ point }: Finished): KindRecord => {
    const { fc, Qtc, alpha } = closedResonance(spec(point), job.air);
    return {
      holes: [],
      summary: [],
      brief: ['none'],
      building: [
        ['The box is closed: it has no vent, and every joint must be airtight.'],
        ...(fillGain > 1
          ? [
              [
                `Put loose filling in: the design counts on it to make the air as springy as ${fillGain} times its volume.`,
              ] as const,
            ]
          : []),
      ],
      playing: [],
      numbers: [
        { what: 'resonance in the box (fc)', value: [[fc, 'frequency']] },
        { what: 'its quality factor (Qtc)', value: [[Qtc, 'ratio']] },
        { what: 'compliance of driver over air (alpha)', value: [[alpha, 'ratio']] },
      ],
      assumed: [
        ...contents.assumed,
        ...(fillGain > 1 ? [[`Filling is taken to enlarge the air to ${fillGain} times its volume.`] as const] : []),
      ],
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
    geometric: [],
    contents: contents.taken,
    least: leastFor(job, choice),
    ...acousticsOf(closedFamily, job, spec),
    limits: () => [],
    wishes: [],
    parts: (_, out) => {
      out.extent = 0;
      out.taken = 0;
      out.effort = 0;
      return true;
    },
    room: (width, height, depth) => (room(width, height, depth) ? 0 : -1),
    roomKey: JSON.stringify(layout),
    settle: netAir,
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

/** A closed box: the spring of its air, no opening, and no part but its panels. */
export const closed: BoxKind<typeof fields> = {
  name: 'closed',
  called: 'a closed box',
  fields,
  variants: (job, choice) => [variantOf(job, choice)],
};
