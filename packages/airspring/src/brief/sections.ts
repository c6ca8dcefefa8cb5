import type { ShapeChoice } from '@airspring/core/space';
import * as v from 'valibot';
import { amplifierFields } from './amplifier.js';
import { air, audible, decibels, edge, most, oneOrMore, wall } from './bounds.js';
import { described } from './described.js';
import { driverSchema } from './driver-fields.js';
import type { DriverModels } from './driver-models.js';
import { mediumFields } from './medium.js';
import { plainNumber, quantity, words } from './quantity-text.js';

import { PLACES, roomFields } from './room.js';
import { shapeField } from './space-shape.js';
import { workshopField } from './workshop.js';

const opt = v.exactOptional;
const titled = words(200, 'The whale bench');
const dose = (what: string) => opt(described(plainNumber(0, 100), `how much ${what} counts; default 1`));
const EDGES = ['width', 'height', 'depth'] as const;

/** The drivers of a brief, each by one schema. */
export const driversOf = <const S extends v.GenericSchema>(one: S) =>
  v.pipe(
    v.array(one),
    v.minLength(1, 'empty\nat least one driver\nAdd a driver.'),
    most(),
    v.description('the drivers to choose from, with the data of their sheets'),
  );

interface ShapeEntry {
  readonly shape: v.ExactOptionalSchema<ReturnType<typeof shapeField>, undefined>;
}

/** The fields of every brief, whatever kinds of box are tried. */
export const sectionsWith = (models: DriverModels, shapes: readonly ShapeChoice[] | undefined) => ({
  $schema: opt(described(words(2000, './brief.schema.json'), 'the address of the JSON Schema, for editors')),
  version: described(v.literal(1), 'the version of the format of the brief'),
  title: described(titled, 'title of the report'),
  note: opt(
    v.pipe(
      v.string(),
      v.maxLength(20_000, 'out-of-range\na text of at most 20000 characters\nShorten it.'),
      v.description('a note for people; the program ignores it'),
      v.examples(['Measured in May.']),
    ),
  ),
  drivers: driversOf(driverSchema(models)),
  air: opt(described(v.strictObject(mediumFields), 'the air around and in the box; default 20 °C, 101.325 kPa, 50 %')),
  space: described(
    v.strictObject({
      width: v.pipe(quantity('length', edge), v.description('greatest outer width of the box')),
      height: v.pipe(quantity('length', edge), v.description('greatest outer height of the box')),
      depth: v.pipe(quantity('length', edge), v.description('greatest outer depth of the box')),
      volume: opt(v.pipe(quantity('volume', air), v.description('greatest outer volume of the box; default no limit'))),
      exactly: opt(
        v.pipe(
          oneOrMore(v.picklist(EDGES), 'an edge'),
          v.description('outer edges that the box must have exactly, not at most; default none'),
        ),
      ),
      ...((shapes && { shape: opt(shapeField(shapes)) }) as ShapeEntry),
      panelThickness: v.pipe(quantity('length', wall), v.description('thickness of every panel')),
      bracing: opt(
        v.pipe(
          quantity('volume', { least: 0, greatest: 10_000, unit: 'L', example: '0.5 L' }, 'not-negative'),
          v.description('volume of the bracing inside the box; default none'),
        ),
      ),
      cutoutPlay: opt(
        v.pipe(
          quantity('length', { least: 0, greatest: 50, unit: 'mm', example: '2 mm' }, 'not-negative'),
          v.description(
            'clear space kept around each cutout, so that the basket still fits if the saw slips; default 2 mm',
          ),
        ),
      ),
    }),
    'the room that the box may take',
  ),
  wanted: described(
    v.strictObject({
      lowest: v.pipe(quantity('frequency', audible), v.description('lowest frequency of the programme')),
      highest: v.pipe(
        quantity('frequency', { ...audible, example: '120 Hz' }),
        v.description('highest frequency that this box has to play'),
      ),
      safeFrom: opt(
        v.pipe(
          quantity('frequency', audible),
          v.description(
            'from this frequency upwards travel, heat, air speed and amplifier must stay within their limits at the wanted level; default wanted.lowest',
          ),
        ),
      ),
      level: v.pipe(
        quantity('level', decibels),
        v.description('level of a steady sine at every frequency of the band, at the place that wanted.at names'),
      ),
      at: opt(
        v.pipe(
          v.picklist(PLACES),
          v.description(
            'where level, fall and rise are wanted: at 1 m in half space, or at the listener of room; default 1 m',
          ),
        ),
      ),
      fall: opt(
        v.pipe(
          quantity('level', { ...decibels, example: '6 dB' }),
          v.description('how far the response may have fallen at the lowest frequency; default half power (3 dB)'),
        ),
      ),
      rise: opt(
        v.pipe(
          quantity('level', { ...decibels, example: '1.5 dB' }),
          v.description('how far the response may rise above its reference; default 1.5 dB'),
        ),
      ),
    }),
    'the wanted sound',
  ),
  room: opt(
    described(
      v.strictObject(roomFields),
      'where the box stands, and how far the listener sits; default 1 m in half space',
    ),
  ),
  amplifier: described(v.strictObject(amplifierFields), 'what the amplifier can give'),
  workshop: opt(workshopField),
  units: opt(
    described(
      v.strictObject({
        length: opt(
          described(
            v.picklist(['mm', 'cm', 'in']),
            'unit of lengths in the report; default in if every length but those of drivers and radiators is written in inches or feet, otherwise mm',
          ),
        ),
        volume: opt(described(v.picklist(['L', 'ft³', 'in³']), 'unit of volumes in the report; default L')),
      }),
      'how the report writes numbers',
    ),
  ),
  weights: opt(
    described(
      v.strictObject({
        deep: dose('depth of sound'),
        loud: dose('loudness'),
        small: dose('a small box'),
        simple: dose('little work'),
      }),
      'how much each criterion counts among boxes that meet every wish',
    ),
  ),
});
