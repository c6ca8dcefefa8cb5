import { ventedFamily } from '@airspring/core/enclosure';
import type { Fault } from '@airspring/core/fault';
import { airSpeedLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { compileLongestVent, type Face, faces, fit, type VentBody } from '@airspring/core/space';
import { airSpeedCustoms, compileLengthForTuning, tuning } from '@airspring/core/vent';
import * as v from 'valibot';
import { lossQ, most, size, wall as wallBounds } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity, wholeNumber } from '../brief/quantity-text.js';
import type { DriverChoice, Job } from '../job/job.js';
import { acousticsOf, type BoxKind, type Finished, type KindRecord, type Point, type Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { metres, outerSizes } from './placing.js';
import { printedWidth, straightOrBentAtMost, ventBody, ventHoles, ventOf, ventWords, withPlay } from './round-vent.js';

const opt = v.exactOptional;
const fields = {
  box: {
    QL: opt(v.pipe(lossQ, v.description('leaks, at the tuning; default 7, common practice'))),
    QA: opt(v.pipe(lossQ, v.description('absorption, at the tuning; default none'))),
    QP: opt(v.pipe(lossQ, v.description("the vent's own loss, at the tuning; default none"))),
  },
  vent: {
    airSpeed: opt(
      v.pipe(
        quantity('airSpeedPeak', { least: 0.1, greatest: 340, unit: 'm/s' }),
        v.description('greatest mean speed, peak; default 17 m/s, common practice'),
      ),
    ),
    smallest: opt(
      v.pipe(
        quantity('length', size),
        v.description('inner diameter; default 30 mm, or the largest where that is less'),
      ),
    ),
    largest: opt(
      v.pipe(
        quantity('length', size),
        v.description('inner diameter; default 150 mm, or the smallest where that is more'),
      ),
    ),
    counts: opt(v.pipe(v.array(wholeNumber(1, 3)), v.minLength(1, 'empty\na count\nName one.'), most())),
    wall: opt(v.pipe(quantity('length', wallBounds), v.description('of the tube; default 3 mm'))),
    collar: opt(
      v.pipe(
        quantity('length', { least: 0, greatest: 500, unit: 'mm' }, 'not-negative'),
        v.description('flange beyond the tube, each side; default 10 mm'),
      ),
    ),
    bends: opt(v.pipe(wholeNumber(0, 1), v.description('most bends; default 1'))),
    faces: opt(v.pipe(v.array(v.picklist(faces)), v.minLength(1, 'empty\na face\nName one.'), most())),
  },
  printer: {
    height: v.pipe(quantity('length', size), v.description('longest piece')),
    width: v.pipe(quantity('length', size), v.description('of the bed: what a flange must lie on')),
  },
};

/** The bounds of the vent's diameter contradict each other. */
function across(written: Readonly<Record<string, unknown>>, read: Partial<Job['sections']>): Fault[] {
  const { smallest, largest } = (read.vent ?? {}) as { smallest?: number; largest?: number };
  if (smallest === undefined || largest === undefined || smallest <= largest) return [];
  const texts = written.vent as { smallest: string; largest: string };
  return [
    {
      code: 'inconsistent',
      path: 'vent.smallest',
      got: texts.smallest,
      expected: `at most vent.largest, ${texts.largest}`,
      remedy: 'Correct one of the two.',
    },
  ];
}

/** What a brief says of vents, with every default filled in. */
export interface VentSettings {
  readonly airSpeedPeak: number;
  readonly smallest: number;
  readonly largest: number;
  readonly counts: readonly number[];
  readonly wall: number;
  readonly collar: number;
  readonly bends: number;
  readonly faces: readonly Face[];
  /** Infinite where no printer is stated. */
  readonly printer: { readonly height: number; readonly width: number };
}

function settingsOf({ sections }: Job): VentSettings {
  const { vent = {}, printer = { height: undefined, width: undefined } } = sections as ReadFields<typeof fields>;
  // A bound that is left out gives way to the one that is given.
  const smallest = vent.smallest ?? Math.min(0.03, vent.largest ?? Infinity);
  return {
    airSpeedPeak: vent.airSpeed ?? airSpeedCustoms.usual.airSpeedPeak,
    smallest,
    largest: vent.largest ?? Math.max(0.15, smallest),
    counts: [...new Set(vent.counts ?? [1])],
    wall: vent.wall ?? 0.003,
    collar: vent.collar ?? 0.01,
    bends: vent.bends ?? 1,
    // In an order of our own: where two faces serve alike, the order in the brief must not decide.
    faces: faces.filter((face) => (vent.faces ?? ['front']).includes(face)),
    printer: { height: printer.height ?? Infinity, width: printer.width ?? Infinity },
  };
}

const areaOf = (count: number, diameter: number): number => (count * Math.PI * diameter ** 2) / 4;

const SETTLING = 12;
const MM = 1e-3;

function variantOf(job: Job, choice: DriverChoice, settings: VentSettings, count: number): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { QL = 7, QA, QP } = box;
  const losses = { QL, ...(QA !== undefined && { QA }), ...(QP !== undefined && { QP }) };
  const { drivers } = choice;
  const { airSpeedPeak, printer, wall } = settings;
  const t = job.space.panelThickness;
  const contents = contentsOf(job, choice);
  const lengths = new Map<number, (netVolume: number, fb: number) => number>();
  const lengthOf = (diameter: number) => {
    let length = lengths.get(diameter);
    if (length === undefined) {
      length = compileLengthForTuning({ diameter: metres(diameter), count, wall: metres(wall) }, job.air);
      lengths.set(diameter, length);
    }
    return length;
  };
  const tubes = (diameter: number) => areaOf(count, diameter + 2 * wall);

  const layout = {
    ...driverLayout(job, choice),
    vent: {
      count,
      faces: settings.faces.map((face) => faces.indexOf(face)),
      bend: settings.bends > 0,
      walls: 0 as const,
    },
  };
  const longest = compileLongestVent(layout);
  const both = new Float64Array(2);
  let body: VentBody = withPlay(ventBody(settings, settings.smallest));
  let bodyOf = settings.smallest;
  const bodyAt = (diameter: number): VentBody => {
    if (diameter !== bodyOf) {
      body = withPlay(ventBody(settings, diameter));
      bodyOf = diameter;
    }
    return body;
  };

  /** Whole millimetres of vent, and the tuning that they give. */
  function settle(airBefore: number, [, tuned = 0, diameter = 0]: Point): Point | undefined {
    const length = lengthOf(diameter);
    const taken = tubes(diameter);
    let [netVolume, ventLength, fb] = [airBefore, 0, tuned];
    if (airBefore <= 0) return undefined;
    // The vent takes volume, and a smaller volume asks for a longer vent: the fixed point, then whole millimetres.
    for (let i = 0; i < SETTLING; i++) {
      const before = ventLength;
      ventLength = length(netVolume, fb);
      netVolume = airBefore - taken * Math.max(0, ventLength - t);
      if (!(ventLength > t) || netVolume <= 0.2 * airBefore) return undefined;
      if (Math.abs(ventLength - before) < 1e-5) break;
    }
    ventLength = Math.round(ventLength / MM) * MM;
    netVolume = airBefore - taken * (ventLength - t);
    // Two secant steps bring the tuning to what the whole millimetres give.
    for (let i = 0; i < 2; i++) {
      const off = length(netVolume, fb) - ventLength;
      const slope = (length(netVolume, fb * 1.001) - ventLength - off) / (0.001 * fb);
      fb -= off / slope;
    }
    return [netVolume, fb, diameter];
  }

  /** The length in whole millimetres where the point was settled. */
  const ventLength = ([netVolume = 0, fb = 0, diameter = 0]: Point): number => lengthOf(diameter)(netVolume, fb);

  const place = (edges: readonly [number, number, number], point: Point) => {
    const diameter = point[2] as number;
    const roomy = bodyAt(diameter);
    return fit({
      outer: outerSizes(edges),
      thickness: metres(t),
      driver: driverRoom(choice),
      cutoutMargin: metres(job.space.cutoutPlay),
      vent: {
        diameter: metres(diameter),
        wall: metres((roomy.outerDiameter - diameter) / 2),
        flangeDiameter: metres(roomy.flangeDiameter),
        bendRadius: metres(roomy.bendRadius),
        bends: settings.bends > 0 ? ('one-bend' as const) : ('straight' as const),
        count,
        faces: settings.faces,
        length: metres(Math.round(ventLength(point) / MM) * MM),
      },
    });
  };

  function record({ point, fit: placed }: Finished): KindRecord {
    const [netVolume = 0, , diameter = 0] = point;
    const length = Math.round(ventLength(point) / MM) * MM;
    const tuned = tuning(
      {
        vent: { diameter: metres(diameter), count, wall: metres(wall), length: metres(length) },
        netVolume: si('volume', netVolume),
        panelThickness: metres(t),
      },
      job.air,
    );
    const fb = tuned.ok ? tuned.fb : (point[1] as number);
    const vent = ventOf(settings, { count, diameter, length, fb }, placed);
    return {
      vent,
      holes: ventHoles(settings, diameter, placed),
      ...ventWords(vent),
      dip: 'close to the tuning',
      numbers: [{ what: 'tuning (fb)', value: [[fb, 'frequency']] }],
      assumed: [
        ...contents.assumed,
        ...(box.QL === undefined ? [[`Leaks are taken as QL ${QL}, common practice.`] as const] : []),
      ],
      margins: [
        {
          path: 'printer.height',
          what: 'longest printed piece',
          meaning: 'length',
          value: Math.max(...vent.pieces),
          limit: printer.height,
          sense: 'at most',
        },
      ],
      warnings: tuned.ok ? (tuned.warnings ?? []) : [],
      givesOut: { vent: 'the air speed in the vent' },
      printed: true,
    };
  }

  return {
    kind: vented,
    choice,
    acoustic: [
      {
        name: 'tuning',
        from: job.wanted.lowest / 2.5,
        to: job.wanted.lowest * 2.5,
        ratio: 1.03,
        unit: 0.05,
      },
    ],
    geometric: [
      { name: 'diameter', from: settings.smallest, to: settings.largest, ratio: 1.07, unit: MM, beyond: 1.6 },
    ],
    contents: contents.taken,
    least: leastFor(job, choice),
    ...acousticsOf(ventedFamily, job, ([netVolume = 0, fb = 0, diameter = 0]) => ({
      drivers,
      netVolume: si('volume', netVolume),
      fb: si('frequency', fb),
      ...losses,
      ventArea: si('area', areaOf(count, diameter)),
      sourceResistance: si('resistance', job.amplifier.sourceResistance),
    })),
    load: {
      probe: { of: 'flow', element: 'vent' },
      capacity: ([, , diameter = 0]) => areaOf(count, diameter) * airSpeedPeak,
      what: 'air speed in the vent, peak',
      meaning: 'airSpeed',
      perReading: ([, , diameter = 0]) => 1 / areaOf(count, diameter),
      below: 'the air in the vent',
    },
    limits: () => [airSpeedLimit(si('airSpeedRms', airSpeedPeak / Math.SQRT2))],
    wishes: [
      {
        path: 'vent.airSpeed',
        what: 'air speed in the vent, peak',
        quantity: 'airSpeedPeak',
        unit: 'm/s',
        allowed: airSpeedPeak,
        sense: 'at most',
        easedByLevel: true,
        needed: ([, , diameter = 0], load) => load / areaOf(count, diameter),
      },
      {
        path: 'vent.largest',
        what: 'inner diameter of the vent',
        quantity: 'length',
        unit: job.units.length,
        allowed: settings.largest,
        sense: 'at most',
        weight: 'simple',
        needed: ([, , diameter = 0]) => diameter,
      },
      {
        path: 'printer.width',
        what: 'widest printed part',
        quantity: 'length',
        unit: job.units.length,
        allowed: printer.width,
        sense: 'at most',
        needed: ([, , diameter = 0]) => printedWidth(ventBody(settings, diameter)),
      },
    ],
    parts: (point, out) => {
      const length = ventLength(point);
      if (!(length > t)) return false;
      out.extent = length;
      out.taken = tubes(point[2] as number) * (length - t);
      out.effort = count * length;
      return true;
    },
    room: (width, height, depth, [, , diameter = 0]) => {
      longest(width, height, depth, bodyAt(diameter), both);
      return Math.max(both[0] as number, both[1] as number) || -1;
    },
    roomKey: JSON.stringify([layout, settings]),
    roomAtMost: (width, height, depth, [, , diameter = 0]) =>
      straightOrBentAtMost(layout, width, height, depth, bodyAt(diameter)),
    settle,
    place,
    record,
  };
}

/** A vented box: round tubes, each straight or with one bend, tune the air of the box. */
export const vented: BoxKind<typeof fields> = {
  name: 'vented',
  called: 'a vented box',
  fields,
  across,
  variants: (job, choice) => {
    const settings = settingsOf(job);
    return settings.counts.map((count) => variantOf(job, choice, settings, count));
  },
};
