import type { Fault } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import * as v from 'valibot';
import { oneOrMore, size, wall as wallBounds } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity, wholeNumber } from '../brief/quantity-text.js';
import { tellingOf } from '../brief/units.js';
import type { ReadWorkshop } from '../brief/workshop.js';
import type { Job, Written } from '../job/job.js';
import type { FormedEnd } from './flare-form.js';
import { type Printer, USUAL_NOZZLE, wholeLines } from './printed-tube.js';
import { acrossWaves, waves } from './vent-waves.js';
import { airSpeedOf, quiet, ventedFields } from './vented-fields.js';

const opt = v.exactOptional;
const { box, airSpeed } = ventedFields;

/** What a brief may say about round vents. */
export const roundVentFields = {
  box,
  vent: {
    airSpeed,
    quiet,
    smallest: opt(
      v.pipe(
        quantity('length', { ...size, example: '50 mm' }),
        v.description('smallest inner diameter; default 30 mm, or vent.largest if that is less'),
      ),
    ),
    largest: opt(
      v.pipe(
        quantity('length', size),
        v.description('largest inner diameter; default 150 mm, or vent.smallest if that is more'),
      ),
    ),
    counts: opt(
      v.pipe(
        oneOrMore(wholeNumber(1, 6), 'a number of vents'),
        v.description('how many equal vents in a row; each number is tried; default one vent'),
      ),
    ),
    wall: opt(
      v.pipe(
        quantity('length', { ...wallBounds, example: '3 mm' }),
        v.description(
          'wall thickness of the tube, rounded up to whole lines of workshop.nozzle where that is given; default 3 mm',
        ),
      ),
    ),
    collar: opt(
      v.pipe(
        quantity('length', { least: 0, greatest: 500, unit: 'mm', example: '10 mm' }, 'not-negative'),
        v.description('how far the flange stands out beyond the tube on each side; default 10 mm'),
      ),
    ),
    bends: opt(v.pipe(wholeNumber(0, 1), v.description('greatest number of bends; default 1'))),
    faces: opt(
      v.pipe(
        oneOrMore(v.picklist(faces), 'a face'),
        v.description('faces on which the vents may open; each is tried; default the front'),
      ),
    ),
  },
  printer: {
    height: v.pipe(
      quantity('length', size),
      v.description('greatest height of a printed piece: a straight piece stands, an elbow stands or lies flat'),
    ),
    width: v.pipe(
      quantity('length', size),
      v.description('width of the bed: a flange lies flat on it, and an elbow with its joints'),
    ),
  },
};

/** What it may say about those of a box that they alone tune. */
export const tuningVentFields = { ...roundVentFields, vent: { ...roundVentFields.vent, waves } };

/** The faults of what it says about these. */
export const tuningVentAcross = (written: Written, read: Partial<Job['sections']>): Fault[] => [
  ...roundVentAcross(written, read),
  ...acrossWaves(written, read),
];

/** The fault of a section of the brief whose smallest size is above its largest. */
export function boundsAcross(
  section: string,
  written: Readonly<Record<string, unknown>>,
  read: Partial<Job['sections']>,
): Fault[] {
  const { smallest, largest } = (read[section] ?? {}) as { smallest?: number; largest?: number };
  if (smallest === undefined || largest === undefined || smallest <= largest) return [];
  const texts = written[section] as { smallest: string; largest: string };
  return [
    {
      code: 'inconsistent',
      path: `${section}.smallest`,
      got: texts.smallest,
      expected: `at most ${section}.largest, ${texts.largest}`,
      remedy: 'Correct one of the two.',
    },
  ];
}

/** Faults between what a brief says of round vents, and of the printer that makes them. */
export function roundVentAcross(written: Readonly<Record<string, unknown>>, read: Partial<Job['sections']>): Fault[] {
  const bounds = boundsAcross('vent', written, read);
  const { vent, printer, workshop } = read as {
    readonly vent?: { readonly wall?: number };
    readonly printer?: object;
    readonly workshop?: { readonly nozzle?: number };
  };
  const nozzle = workshop?.nozzle ?? (printer && USUAL_NOZZLE);
  if (vent?.wall === undefined || nozzle === undefined || vent.wall >= nozzle - NANOMETRE) return bounds;
  const { wall } = written.vent as { readonly wall: string };
  const told = (written.workshop as { readonly nozzle?: string } | undefined)?.nozzle;
  const expected =
    told === undefined
      ? `at least ${tellingOf(written).length(USUAL_NOZZLE)}, one line of the usual nozzle`
      : `at least one line of workshop.nozzle, ${told}`;
  const remedy = 'Thicken the wall, or state a finer nozzle in workshop.nozzle.';
  return [...bounds, { code: 'inconsistent', path: 'vent.wall', got: wall, expected, remedy }];
}

/** What a brief says about round vents, with every default filled in. */
export interface RoundVentSettings {
  readonly airSpeedPeak: number;
  readonly quiet: boolean;
  /** Whether waves travel in them. */
  readonly waves: boolean;
  readonly smallest: number;
  readonly largest: number;
  readonly counts: readonly number[];
  /** In whole lines of the nozzle, where the brief states one. */
  readonly wall: number;
  /** The wall that was asked for, and the nozzle, where its lines make it thicker. */
  readonly thickened?: { readonly asked: number; readonly nozzle: number };
  /** Saws at hand for the holes. */
  readonly holeSaws: readonly number[];
  readonly collar: number;
  readonly bends: number;
  readonly faces: readonly Face[];
  /** Infinite where no printer is stated. */
  readonly printer: Printer;
  /** That of the workshop, or the usual one. */
  readonly nozzle: number;
  /** How much each end widens, on each side: the radius of its rounding; zero is a sharp end. */
  readonly flare: { readonly inner: number; readonly outer: number };
  /** Ends that are no quarter rounds. */
  readonly formed: { readonly inner?: FormedEnd; readonly outer?: FormedEnd };
}

/** Faces in a fixed order, so that the order in the brief does not decide between two that serve equally well. */
export const inOrder = (wanted: readonly Face[] = ['front']): Face[] => faces.filter((face) => wanted.includes(face));

/** Fills in the defaults. If only one bound is given, the default of the other gives way to it. */
export function roundVentSettings(
  { sections }: Job,
  flare = { inner: 0, outer: 0 },
  formed: RoundVentSettings['formed'] = {},
): RoundVentSettings {
  const {
    vent = {},
    printer = { height: undefined, width: undefined },
    workshop: { nozzle, holeSaws = [] } = {},
  } = sections as ReadFields<typeof tuningVentFields> & { readonly workshop?: ReadWorkshop };
  const asked = vent.wall ?? 0.003;
  const wall = nozzle === undefined ? asked : wholeLines(asked, nozzle);
  const smallest = vent.smallest ?? Math.min(0.03, vent.largest ?? Infinity);
  return {
    airSpeedPeak: airSpeedOf(vent),
    quiet: vent.quiet ?? false,
    waves: vent.waves ?? false,
    smallest,
    largest: vent.largest ?? Math.max(0.15, smallest),
    counts: [...new Set(vent.counts ?? [1])],
    wall,
    ...(nozzle !== undefined && wall > asked + NANOMETRE && { thickened: { asked, nozzle } }),
    holeSaws,
    collar: vent.collar ?? 0.01,
    bends: vent.bends ?? 1,
    faces: inOrder(vent.faces),
    printer: { height: printer.height ?? Infinity, width: printer.width ?? Infinity },
    nozzle: nozzle ?? USUAL_NOZZLE,
    flare,
    formed,
  };
}
