import { faces } from '@airspring/core/space';
import * as v from 'valibot';
import { type Bounds, plainNumber, quantity, wholeNumber, words } from './quantity-text.js';
import { MOST } from './size.js';

const opt = <const S extends v.GenericSchema>(schema: S) => v.exactOptional(schema);
const Q = plainNumber(0.01, 1e4);
/** Of losses: with less the box would be more hole, or more damping, than box. */
const lossQ = plainNumber(1, 1e4);
const title = words(200);
const most = <const T extends readonly unknown[]>() =>
  v.maxLength<T, typeof MOST, string>(
    MOST,
    `out-of-range\na list of at most ${MOST} items\nLeave out what is not needed.`,
  );

// Far wider than any box or driver that somebody builds: they catch a wrong unit where the reader wrote it.
const edge: Bounds<'length'> = { least: 0.02, greatest: 20, unit: 'm' };
const size: Bounds<'length'> = { least: 1, greatest: 2000, unit: 'mm' };
const wall: Bounds<'length'> = { least: 0.1, greatest: 200, unit: 'mm' };
const air: Bounds<'volume'> = { least: 0.001, greatest: 10_000, unit: 'L' };
const audible: Bounds<'frequency'> = { least: 1, greatest: 20_000, unit: 'Hz' };
const decibels: Bounds<'level'> = { least: 0.01, greatest: 200, unit: 'dB' };
const coil: Bounds<'inductance'> = { least: 1e-4, greatest: 1000, unit: 'mH' };
const ohms: Bounds<'resistance'> = { least: 0.001, greatest: 10_000, unit: 'Ω' };

/** A candidate driver as its sheet gives it, and its sizes. */
export const driverFields = {
  name: title,
  fs: opt(quantity('frequency', audible)),
  Qts: opt(Q),
  Qes: opt(Q),
  Qms: opt(Q),
  Vas: opt(quantity('volume', air)),
  Sd: opt(quantity('coneArea', { least: 0.1, greatest: 20_000, unit: 'cm²' })),
  coneDiameter: opt(quantity('length', size)),
  Mms: opt(quantity('mass', { least: 0.01, greatest: 10_000, unit: 'g' })),
  Cms: opt(quantity('compliance', { least: 1e-4, greatest: 1000, unit: 'mm/N' })),
  Rms: opt(quantity('mechanicalResistance', { least: 1e-3, greatest: 1e4, unit: 'N·s/m' })),
  Re: opt(quantity('resistance', ohms)),
  Bl: opt(quantity('forceFactor', { least: 0.01, greatest: 1000, unit: 'T·m' })),
  Le: opt(quantity('inductance', coil)),
  R2: opt(quantity('resistance', ohms)),
  L2: opt(quantity('inductance', coil)),
  Xmax: quantity('displacementPeak', { least: 0.001, greatest: 200, unit: 'mm' }),
  Pe: quantity('power', { least: 0.001, greatest: 100_000, unit: 'W' }),
  outerDiameter: quantity('length', size),
  cutoutDiameter: quantity('length', size),
  depth: quantity('length', size),
  displacedVolume: opt(quantity('volume', { least: 1e-4, greatest: 1000, unit: 'L' })),
} as const;

/** The same, and how it may be used. */
const driver = v.strictObject({
  ...driverFields,
  wirings: opt(
    v.pipe(
      v.array(
        v.strictObject({
          series: opt(wholeNumber(1, 4)),
          parallel: opt(wholeNumber(1, 4)),
          isobaric: opt(v.boolean()),
        }),
      ),
      v.minLength(1, 'empty\nat least one wiring\nGive one, or leave the field out for a single driver.'),
      most(),
      v.description('how many of this driver, and how they are wired; each is tried. Default: one'),
    ),
  ),
});

/** What a brief may say. Types, checks and the JSON Schema for editors all come from here. */
export const briefSchema = v.strictObject({
  $schema: opt(words(2000)),
  version: v.literal(1),
  title,
  note: opt(v.pipe(v.string(), v.maxLength(20_000, 'out-of-range\na text of at most 20000 characters\nShorten it.'))),
  drivers: v.pipe(v.array(driver), v.minLength(1, 'empty\nat least one driver\nAdd a driver.'), most()),
  air: opt(
    v.strictObject({
      temperature: opt(quantity('temperature', { least: -60, greatest: 60, unit: '°C' }, 'any')),
      humidity: opt(quantity('humidity', { least: 0, greatest: 100, unit: '%' }, 'not-negative')),
      pressure: opt(quantity('pressure', { least: 20, greatest: 200, unit: 'kPa' })),
      altitude: opt(quantity('altitude', { least: -5000, greatest: 11_000, unit: 'm' }, 'any')),
    }),
  ),
  space: v.strictObject({
    width: v.pipe(quantity('length', edge), v.description('outside, at most')),
    height: v.pipe(quantity('length', edge), v.description('outside, at most')),
    depth: v.pipe(quantity('length', edge), v.description('outside, at most')),
    volume: opt(v.pipe(quantity('volume', air), v.description('outside, at most'))),
    panelThickness: quantity('length', wall),
    bracing: opt(
      v.pipe(
        quantity('volume', { least: 0, greatest: 10_000, unit: 'L' }, 'not-negative'),
        v.description('air that bracing takes; default none'),
      ),
    ),
  }),
  wanted: v.strictObject({
    lowest: v.pipe(quantity('frequency', audible), v.description('where the programme begins')),
    highest: v.pipe(
      quantity('frequency', audible),
      v.description('where the programme ends, as far as this box plays it'),
    ),
    level: v.pipe(quantity('level', decibels), v.description('steady sine throughout the band, at 1 m in half space')),
    fall: opt(
      v.pipe(
        quantity('level', decibels),
        v.description('how far the response may have fallen at the lowest; default half power'),
      ),
    ),
    rise: opt(
      v.pipe(
        quantity('level', decibels),
        v.description('how far the response may rise over its reference; default 1.5 dB'),
      ),
    ),
  }),
  amplifier: v.strictObject({
    voltage: v.pipe(
      quantity('voltageRms', { least: 0.001, greatest: 100_000, unit: 'V' }),
      v.description('greatest sine voltage'),
    ),
    current: opt(
      v.pipe(
        quantity('currentRms', { least: 0.001, greatest: 10_000, unit: 'A' }),
        v.description('greatest sine current; default no limit'),
      ),
    ),
    sourceResistance: opt(quantity('resistance', { least: 0, greatest: 1000, unit: 'Ω' }, 'not-negative')),
  }),
  box: opt(
    v.strictObject({
      families: opt(
        v.pipe(v.array(v.picklist(['closed', 'vented'])), v.minLength(1, 'empty\na family\nName one.'), most()),
      ),
      fillGain: opt(v.pipe(plainNumber(1, 1.4), v.description('of a closed box; default 1, without filling'))),
      QL: opt(
        v.pipe(
          lossQ,
          v.description('leaks, at the tuning or the resonance of a closed box; default 7, common practice'),
        ),
      ),
      QA: opt(v.pipe(lossQ, v.description('absorption, at the tuning or the resonance of a closed box; default none'))),
      QP: opt(v.pipe(lossQ, v.description("the vent's own loss, at the tuning; default none"))),
    }),
  ),
  vent: opt(
    v.strictObject({
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
      wall: opt(v.pipe(quantity('length', wall), v.description('of the tube; default 3 mm'))),
      collar: opt(
        v.pipe(
          quantity('length', { least: 0, greatest: 500, unit: 'mm' }, 'not-negative'),
          v.description('flange beyond the tube, each side; default 10 mm'),
        ),
      ),
      bends: opt(v.pipe(wholeNumber(0, 1), v.description('most bends; default 1'))),
      faces: opt(v.pipe(v.array(v.picklist(faces)), v.minLength(1, 'empty\na face\nName one.'), most())),
    }),
  ),
  printer: opt(
    v.strictObject({
      height: v.pipe(quantity('length', size), v.description('longest piece')),
      width: v.pipe(quantity('length', size), v.description('of the bed: what a flange must lie on')),
    }),
  ),
  units: opt(
    v.strictObject({
      length: opt(v.picklist(['mm', 'cm', 'in'])),
      volume: opt(v.picklist(['L', 'ft³', 'in³'])),
    }),
  ),
  weights: opt(
    v.strictObject({
      deep: opt(plainNumber(0, 100)),
      loud: opt(plainNumber(0, 100)),
      small: opt(plainNumber(0, 100)),
      simple: opt(plainNumber(0, 100)),
    }),
  ),
});

/** A brief as it stands in a file. */
export type Brief = v.InferInput<typeof briefSchema>;
/** The same with every quantity read. */
export type ReadBrief = v.InferOutput<typeof briefSchema>;
