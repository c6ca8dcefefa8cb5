import { faces } from '@airspring/core/space';
import * as v from 'valibot';
import { air, audible, edge, most, size, wall } from '../brief/bounds.js';
import { quantity, wholeNumber } from '../brief/quantity-text.js';
import type { ReadWorkshop, WrittenWorkshop } from '../brief/workshop.js';

import { impedanceFields } from './measured-fields.js';

const opt = v.exactOptional;
const length = quantity('length', { ...size, example: '76 mm' });
const sizes = (which: string) =>
  v.pipe(
    v.strictObject({
      width: v.pipe(quantity('length', edge), v.description(`${which} width`)),
      height: v.pipe(quantity('length', edge), v.description(`${which} height`)),
      depth: v.pipe(quantity('length', edge), v.description(`${which} depth`)),
    }),
    v.description(`${which} sizes of the box; give outer, inner or air`),
  );

/** Where the centre of something is on the outer surface of its panel, as a builder measures it. */
const place = {
  face: v.pipe(v.picklist(faces), v.description('the panel')),
  across: v.pipe(length, v.description('from the left outer edge; on a side panel, from the front')),
  up: v.pipe(length, v.description('from the lower outer edge; on the bottom or top, from the front')),
};

const vent = v.strictObject({
  diameter: v.pipe(length, v.description('inner diameter')),
  length: v.pipe(length, v.description('from the outer surface of the panel to the inner end')),
  count: opt(v.pipe(wholeNumber(1, 6), v.description('number of equal vents; default one'))),
  wall: opt(v.pipe(quantity('length', wall), v.description('wall thickness of the tube; default 3 mm'))),
  rounding: opt(
    v.pipe(
      quantity('length', { least: 0, greatest: 500, unit: 'mm', example: '10 mm' }, 'not-negative'),
      v.description('radius at both ends; default sharp'),
    ),
  ),
  hole: opt(v.pipe(length, v.description('diameter of the hole in the panel; default as wide as the tube'))),
  place: opt(
    v.pipe(v.strictObject(place), v.description('where it opens; default unknown: you measure the room for a tube')),
  ),
});

/** What may be kept as it is. */
export const keepable = ['box', 'drivers', 'wiring', 'holes', 'tuning'] as const;
export type Kept = (typeof keepable)[number];

const list = <const S extends v.GenericSchema>(one: S) => v.pipe(v.array(one), most());

/** What a brief may say of a box that stands already. */
export const standingFields = {
  standing: v.pipe(
    v.strictObject({
      outer: opt(sizes('outer')),
      inner: opt(sizes('inner')),
      air: opt(v.pipe(quantity('volume', air), v.description('air in the box as it is, if its sizes are not known'))),
      panelThickness: v.pipe(quantity('length', wall), v.description('thickness of every panel')),
      bracing: opt(
        v.pipe(
          quantity('volume', { least: 0, greatest: 10_000, unit: 'L', example: '0.5 L' }, 'not-negative'),
          v.description('volume of what is inside besides drivers and vents; default none'),
        ),
      ),
      drivers: opt(v.pipe(list(v.strictObject(place)), v.description('where the drivers are, in any order'))),
      vents: opt(v.pipe(list(vent), v.description('the vents of the box; default none: a closed box'))),
      measured: opt(
        v.pipe(
          v.strictObject({
            tuning: opt(
              v.pipe(quantity('frequency', audible), v.description('the dip between the two peaks of the impedance')),
            ),
            peaks: opt(
              v.pipe(
                v.tuple([quantity('frequency', audible), quantity('frequency', audible)]),
                v.description('the two peaks of the impedance, the lower one first'),
                v.examples([['21 Hz', '58 Hz']] as never),
              ),
            ),
            ...impedanceFields,
          }),
          v.description('measured values of the impedance; default none'),
        ),
      ),
      keep: opt(v.pipe(list(v.picklist(keepable)), v.description('what must stay as it is; default the box'))),
    }),
    v.description('a box that exists already'),
  ),
};

/** These sections, read into SI units. */
export type ReadStanding = {
  readonly [Name in keyof typeof standingFields]: v.InferOutput<(typeof standingFields)[Name]>;
} & { readonly workshop?: ReadWorkshop };
/** The same as they are written. */
export type WrittenStanding = {
  readonly [Name in keyof typeof standingFields]: v.InferInput<(typeof standingFields)[Name]>;
} & { readonly workshop?: WrittenWorkshop };
