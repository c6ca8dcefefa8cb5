import { type ClosedBoxSpec, closedFamily, type Family } from '@airspring/core/enclosure';
import type { Limit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { compileLongestVent, fit } from '@airspring/core/space';
import {
  acousticsOf,
  type BoxKind,
  contentsOf,
  type DriverChoice,
  driverLayout,
  driverRoom,
  holeAt,
  type Job,
  leastFor,
  plainNumber,
  quantity,
  type ReadFields,
  type Variant,
} from 'airspring';
import * as v from 'valibot';

/** A box that leaks on purpose, through a hole covered with felt: what a stranger's package adds, in one file. */
const fields = {
  felt: {
    leastQuality: v.exactOptional(v.pipe(plainNumber(0.5, 20), v.description('of the leak at resonance; default 1'))),
    greatestQuality: v.exactOptional(v.pipe(plainNumber(0.5, 20), v.description('of the leak; default 5'))),
    airSpeed: v.pipe(quantity('airSpeedPeak'), v.description('greatest speed through the felt, peak')),
    largest: v.exactOptional(v.pipe(quantity('length'), v.description('diameter of the hole; default 120 mm'))),
  },
};

const metres = (value: number) => si('length', value);
const areaOf = (diameter: number) => (Math.PI / 4) * diameter ** 2;
const BACK = 5;

/** A closed box whose leak is a hole of a known area. */
const feltFamily: Family<{ readonly box: ClosedBoxSpec; readonly area: number }> = {
  name: 'felt',
  compile: closedFamily.compile,
  read: (spec) => spec,
  topology: ({ box }) => {
    const closed = closedFamily.topology(box);
    const feltAirSpeed = { of: 'flow', element: 'leak', factor: 'per felt area' } as const;
    return { ...closed, probes: { ...closed.probes, feltAirSpeed } };
  },
  values: ({ box, area }, air, set) => {
    closedFamily.values(box, air, set);
    set('per felt area', 1 / area);
  },
};

function variantOf(job: Job, choice: DriverChoice): Variant {
  const { felt } = job.sections as ReadFields<typeof fields>;
  const { leastQuality = 1, greatestQuality = 5, largest = 0.12 } = felt ?? {};
  const airSpeed: number = felt?.airSpeed ?? 1;
  const { drivers } = choice;
  const { outerDiameter, cutoutDiameter, depth, count } = driverRoom(choice);
  const contents = contentsOf(job, choice);
  const t = job.space.panelThickness;
  const layout = { ...driverLayout(job, choice), vent: { count: 1, faces: [BACK], bend: false, walls: 0 as const } };
  const longest = compileLongestVent(layout);
  const out = new Float64Array(2);
  const body = (diameter: number) => ({
    outerDiameter: diameter,
    flangeDiameter: diameter + 0.02,
    clearance: 0.03,
    bendRadius: diameter,
  });
  const limit: Limit = { name: 'felt', probe: 'feltAirSpeed', greatestRms: airSpeed / Math.SQRT2, basis: 'the felt' };
  return {
    kind: feltBox,
    choice,
    acoustic: [{ name: 'quality', from: leastQuality, to: greatestQuality, ratio: 1.2, unit: 0.01 }],
    geometric: [{ name: 'diameter', from: 0.02, to: largest, ratio: 1.1, unit: 1e-3 }],
    contents: contents.taken,
    least: leastFor(job, choice),
    ...acousticsOf(feltFamily, job, ([netVolume = 0, QL = 0, diameter = 0]) => ({
      box: { ...closedFamily.read({ drivers, netVolume: si('volume', netVolume), QL }) },
      area: areaOf(diameter),
    })),
    loads: [
      {
        probes: [{ of: 'flow', element: 'leak' }],
        capacity: ([, , diameter = 0]) => airSpeed * areaOf(diameter),
        what: 'air speed through the felt, peak',
        meaning: 'airSpeed',
        perReading: ([, , diameter = 0]) => 1 / areaOf(diameter),
        below: 'the air in the felt',
      },
    ],
    limits: () => [limit],
    wishes: [
      {
        path: 'felt.airSpeed',
        what: 'air speed through the felt, peak',
        quantity: 'airSpeedPeak',
        unit: 'm/s',
        allowed: airSpeed,
        sense: 'at most',
        easedByLevel: true,
        needed: ([, , diameter = 0], [load = 0]) => load / areaOf(diameter),
      },
    ],
    parts: ([, , diameter = 0], parts) => {
      parts.extent = t;
      parts.taken = 0;
      parts.effort = diameter;
      return true;
    },
    room: (width, height, deep, [, , diameter = 0]) => {
      longest(width, height, deep, body(diameter), out);
      return out[0] || -1;
    },
    settle: (airBefore, [, ...others]) => (airBefore > 0 ? [airBefore, ...others] : undefined),
    place: ([width, height, deep], [, , diameter = 0]) =>
      fit({
        outer: { width: metres(width), height: metres(height), depth: metres(deep) },
        thickness: metres(t),
        cutoutMargin: metres(0),
        driver: {
          outerDiameter: metres(outerDiameter),
          cutoutDiameter: metres(cutoutDiameter),
          depth: metres(depth),
          count,
        },
        vent: {
          diameter: metres(diameter),
          wall: metres(0),
          flangeDiameter: metres(diameter + 0.02),
          clearance: metres(0.03),
          bends: 'straight',
          faces: ['back'],
          length: metres(t),
        },
      }),
    record: ({ point: [, quality = 0, diameter = 0], fit: { placement } }) => ({
      holes: (placement.vent?.centres ?? []).map((centre) => holeAt('felt', 'back', diameter, centre)),
      summary: ['A hole of ', [diameter, 'length'], ' covered with felt damps it.'],
      brief: ['felt ', [diameter, 'bareLength']],
      building: [['Cover the hole of ', [diameter, 'length'], ` with felt until QL is ${quality.toFixed(2)}.`]],
      playing: [],
      numbers: [{ what: 'quality of the leak', value: [[quality, 'ratio']] }],
      assumed: contents.assumed,
      margins: [],
      warnings: [],
      givesOut: { felt: 'the air speed through the felt' },
      printed: false,
    }),
  };
}

export const feltBox: BoxKind<typeof fields> = {
  name: 'felt',
  called: 'a box with a felt leak',
  fields,
  variants: (job, choice) => [variantOf(job, choice)],
};
