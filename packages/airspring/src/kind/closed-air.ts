import { type ClosedBoxSpec, closedResonance } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { fit } from '@airspring/core/space';
import * as v from 'valibot';
import { lossQ } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { plainNumber } from '../brief/quantity-text.js';
import type { DriverChoice, Job } from '../job/job.js';
import type { Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import type { KindRecord } from './kind-record.js';
import { noParts } from './no-parts.js';
import type { Phrase } from './phrase.js';
import { interiorIn, metres, outerSizes } from './placing.js';
import type { Point } from './point.js';

/** What a brief may say about the air of a box that is closed, or nearly so. */
export const closedAirFields = {
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

/** As exactly as a custom is told. */
const twoDigits = (value: number): number => Number(value.toPrecision(2));

/** What the boxes have in common whose drivers work against the spring of closed air, with one choice of drivers. */
export interface ClosedAir {
  readonly spec: (point: Point) => ClosedBoxSpec;
  /** A variant that has no parts but its drivers. */
  readonly variant: Pick<Variant, 'choice' | 'contents' | 'least' | 'limits' | 'settle' | 'place'> &
    ReturnType<typeof noParts>;
  /** The record of such a box. `measured` is how a builder measures the peak that tells of the filling. */
  readonly record: (point: Point, measured?: string) => KindRecord;
}

export function closedAir(job: Job, choice: DriverChoice): ClosedAir {
  const { box = {} } = job.sections as ReadFields<typeof closedAirFields>;
  const { fillGain = 1, QL, QA } = box;
  const losses = { ...(QL !== undefined && { QL }), ...(QA !== undefined && { QA }) };
  const contents = contentsOf(job, choice);
  const spec = ([netVolume = 0]: Point): ClosedBoxSpec => ({
    drivers: choice.drivers,
    netVolume: si('volume', netVolume),
    fillGain,
    ...losses,
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });
  const fillWords = (netVolume: number, fc: number, measured: string): Phrase[] =>
    fillGain > 1
      ? [
          [
            `Fill the box loosely. The design assumes that the filled box acts as one with ${fillGain} times its volume of air. Common practice is 8 to 16 g of polyester wadding for each litre, here `,
            [twoDigits(WADDING[0] * netVolume), 'mass'],
            ' to ',
            [twoDigits(WADDING[1] * netVolume), 'mass'],
            `. ${measured}, and add or take out some until its peak is at `,
            [fc, 'frequency'],
            '.',
          ],
        ]
      : [];
  return {
    spec,
    variant: {
      choice,
      contents: contents.taken,
      least: leastFor(job, choice),
      limits: () => [],
      ...noParts(driverLayout(job, choice)),
      settle: (airBefore) => (airBefore > 0 ? [airBefore] : undefined),
      place: (edges) =>
        fit({
          outer: outerSizes(edges),
          ...interiorIn(job, edges),
          thickness: metres(job.space.panelThickness),
          driver: driverRoom(choice),
          cutoutMargin: metres(job.space.cutoutPlay),
        }),
    },
    record: (point, measured = 'Measure the impedance') => {
      const { fc, Qtc, alpha } = closedResonance(spec(point), job.air);
      return {
        holes: [],
        summary: ['Its resonance in the box is ', [fc, 'frequency'], ', with Qtc ', [Qtc, 'ratio'], '.'],
        brief: ['none'],
        building: fillWords(point[0]!, fc, measured),
        ...(fillGain > 1 && { filled: ['box'] }),
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
    },
  };
}

/** A box without any opening. */
export const airtightWords: Phrase = ['The box is closed: it has no vent, and every joint must be airtight.'];
