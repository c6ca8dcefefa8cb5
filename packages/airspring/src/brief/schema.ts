import { faces } from '@airspring/core/space';
import * as v from 'valibot';
import { plainNumber, quantity, wholeNumber } from './quantity-text.js';

const opt = <const S extends v.GenericSchema>(schema: S) => v.exactOptional(schema);
const Q = plainNumber(0.01, 1e4);
const text = v.pipe(v.string(), v.minLength(1, 'empty\na text\nWrite something, or leave the field out.'));

/** A candidate driver as its sheet gives it, its sizes, and how it may be used. */
const driver = v.strictObject({
  name: text,
  fs: opt(quantity('frequency')),
  Qts: opt(Q),
  Qes: opt(Q),
  Qms: opt(Q),
  Vas: opt(quantity('volume')),
  Sd: opt(quantity('coneArea')),
  coneDiameter: opt(quantity('length')),
  Mms: opt(quantity('mass')),
  Cms: opt(quantity('compliance')),
  Rms: opt(quantity('mechanicalResistance')),
  Re: opt(quantity('resistance')),
  Bl: opt(quantity('forceFactor')),
  Le: opt(quantity('inductance')),
  R2: opt(quantity('resistance')),
  L2: opt(quantity('inductance')),
  Xmax: quantity('displacementPeak'),
  Pe: quantity('power'),
  outerDiameter: quantity('length'),
  cutoutDiameter: quantity('length'),
  depth: quantity('length'),
  displacedVolume: opt(quantity('volume')),
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
      v.description('how many of this driver, and how they are wired; each is tried. Default: one'),
    ),
  ),
});

/** What a brief may say. Types, checks and the JSON Schema for editors all come from here. */
export const briefSchema = v.strictObject({
  $schema: opt(v.string()),
  version: v.literal(1),
  title: text,
  note: opt(v.string()),
  drivers: v.pipe(v.array(driver), v.minLength(1, 'empty\nat least one driver\nAdd a driver.')),
  air: opt(
    v.strictObject({
      temperature: opt(quantity('temperature', 'any')),
      humidity: opt(quantity('humidity', 'not-negative')),
      pressure: opt(quantity('pressure')),
      altitude: opt(quantity('altitude', 'any')),
    }),
  ),
  space: v.strictObject({
    width: v.pipe(quantity('length'), v.description('outside, at most')),
    height: v.pipe(quantity('length'), v.description('outside, at most')),
    depth: v.pipe(quantity('length'), v.description('outside, at most')),
    volume: opt(v.pipe(quantity('volume'), v.description('outside, at most'))),
    panelThickness: quantity('length'),
    bracing: opt(v.pipe(quantity('volume', 'not-negative'), v.description('air that bracing takes; default none'))),
  }),
  wanted: v.strictObject({
    lowest: v.pipe(quantity('frequency'), v.description('where the programme begins')),
    highest: v.pipe(quantity('frequency'), v.description('where the programme ends, as far as this box plays it')),
    level: v.pipe(quantity('level'), v.description('steady sine throughout the band, at 1 m in half space')),
    fall: opt(
      v.pipe(
        quantity('level'),
        v.description('how far the response may have fallen at the lowest; default half power'),
      ),
    ),
    rise: opt(
      v.pipe(quantity('level'), v.description('how far the response may rise over its reference; default 1.5 dB')),
    ),
  }),
  amplifier: v.strictObject({
    voltage: v.pipe(quantity('voltageRms'), v.description('greatest sine voltage')),
    current: opt(v.pipe(quantity('currentRms'), v.description('greatest sine current; default no limit'))),
    sourceResistance: opt(quantity('resistance', 'not-negative')),
  }),
  box: opt(
    v.strictObject({
      families: opt(v.pipe(v.array(v.picklist(['closed', 'vented'])), v.minLength(1, 'empty\na family\nName one.'))),
      fillGain: opt(v.pipe(plainNumber(1, 1.4), v.description('of a closed box; default 1, without filling'))),
      QL: opt(
        v.pipe(Q, v.description('leaks, at the tuning or the resonance of a closed box; default 7, common practice')),
      ),
      QA: opt(v.pipe(Q, v.description('absorption, at the tuning or the resonance of a closed box; default none'))),
      QP: opt(v.pipe(Q, v.description("the vent's own loss, at the tuning; default none"))),
    }),
  ),
  vent: opt(
    v.strictObject({
      airSpeed: opt(
        v.pipe(quantity('airSpeedPeak'), v.description('greatest mean speed, peak; default 17 m/s, common practice')),
      ),
      smallest: opt(
        v.pipe(quantity('length'), v.description('inner diameter; default 30 mm, or the largest where that is less')),
      ),
      largest: opt(
        v.pipe(quantity('length'), v.description('inner diameter; default 150 mm, or the smallest where that is more')),
      ),
      counts: opt(v.pipe(v.array(wholeNumber(1, 3)), v.minLength(1, 'empty\na count\nName one.'))),
      wall: opt(v.pipe(quantity('length'), v.description('of the tube; default 3 mm'))),
      collar: opt(
        v.pipe(quantity('length', 'not-negative'), v.description('flange beyond the tube, each side; default 10 mm')),
      ),
      bends: opt(v.pipe(wholeNumber(0, 1), v.description('most bends; default 1'))),
      faces: opt(v.pipe(v.array(v.picklist(faces)), v.minLength(1, 'empty\na face\nName one.'))),
    }),
  ),
  printer: opt(
    v.strictObject({
      height: v.pipe(quantity('length'), v.description('longest piece')),
      width: v.pipe(quantity('length'), v.description('of the bed: what a flange must lie on')),
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
