import { type Fault, refuse } from '@airspring/core/fault';
import {
  type DensityInput,
  type Length,
  type LengthInput,
  type Mass,
  type MassInput,
  optional,
  positive,
  readFields,
  si,
} from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import { faultOf, told } from '../words/told.js';
import { centreLine } from './centre-line.js';
import { around, sidesOf } from './cross-section.js';
import { sweptMesh } from './swept.js';

/** A mass that is added to the cone of a passive radiator, as printed discs. */
export interface MassDiscsInput {
  readonly mass: MassInput;
  readonly diameter: LengthInput;
  /** Of the bolt through their middle; left out for discs that are glued on. */
  readonly hole?: LengthInput | undefined;
  /** Of the plastic itself; default 1240 kg/m³, of PLA (common practice). */
  readonly density?: DensityInput | undefined;
  /** Greatest height of one disc; default 15 mm. */
  readonly tallest?: LengthInput | undefined;
  /** Default: 0.01 mm. */
  readonly fineness?: LengthInput | undefined;
}

/** Equal discs that together have a mass. */
export interface MassDiscs {
  readonly count: number;
  /** Of one of them. */
  readonly height: Length;
  readonly mesh: Mesh;
  /** Of all of them together, as printers lay plastic: from a loose print to a full one. */
  readonly massRange: readonly [least: Mass, greatest: Mass];
}

const shape = {
  mass: positive('mass'),
  diameter: positive('length'),
  hole: optional(positive('length')),
  density: optional(positive('density')),
  tallest: optional(positive('length')),
  fineness: optional(positive('length')),
};

/** Of PLA, kg/m³ (common practice). */
const PLASTIC = 1240;
/** How much of a part that is printed full is plastic: at least, at most (common practice). */
const [LOOSE, FULL] = [0.94, 1] as const;
const MOST_DISCS = 20;
const [usualTallest, usualFineness] = [0.015, 1e-5];

/**
 * Discs for the cone of a passive radiator, which together weigh what it needs. They are made for a print with 100 % infill, of which a
 * few percent stay air: they weigh the mass that was asked for if 97 % are plastic. Only a scale tells what they weigh.
 *
 * $$ h = \frac{4 m}{0.97\,\rho\,\pi (D^2 - d^2)} $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $h$ | m | height of all discs together |
 * | $m$ | kg | `mass` |
 * | $\rho$ | kg/m³ | `density` of the plastic |
 * | $D$, $d$ | m | `diameter` and `hole` |
 *
 * @validity discs printed full: with less infill nobody knows their mass before they are weighed
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `inconsistent` for a hole as wide as the disc, and for more than twenty discs
 * @source own derivation: mass of a ring; the share of plastic by common practice
 * @example massDiscs({ mass: '80 g', diameter: '90 mm', hole: '6.4 mm' }).count
 */
export function massDiscs(input: MassDiscsInput): MassDiscs {
  const read = readFields('weight', input, shape);
  const { mass, diameter, hole = 0, density = PLASTIC, tallest = usualTallest, fineness = usualFineness } = read;
  const faults: Fault[] = [];
  if (hole >= diameter) {
    const expected = told`narrower than the disc, ${diameter}`;
    const remedy = 'Take a wider disc.';
    faults.push(faultOf({ code: 'inconsistent', path: 'weight.hole', got: hole, expected, remedy }));
  }
  refuse(faults);
  const area = (Math.PI / 4) * (diameter ** 2 - hole ** 2);
  const whole = mass / (((LOOSE + FULL) / 2) * density * area);
  const discs = Math.ceil(whole / tallest - 1e-9);
  if (discs > MOST_DISCS) {
    const expected = told`at most ${MOST_DISCS * tallest} of discs, but ${whole} are needed`;
    const remedy = 'Take wider discs or a heavier material.';
    refuse([faultOf({ code: 'inconsistent', path: 'weight.diameter', got: diameter, expected, remedy })]);
  }
  const height = whole / discs;
  const inside = (hole - diameter) / 2;
  const mesh = sweptMesh({
    profile: [
      [0, inside],
      [height, inside],
      [height, 0],
      [0, 0],
    ],
    around: around({ form: 'round', diameter }, sidesOf(diameter / 2, fineness)),
    line: centreLine(height, []),
    step: 1,
  });
  const massAt = (share: number) => si('mass', share * density * area * whole);
  return { count: discs, height: si('length', height), mesh, massRange: [massAt(LOOSE), massAt(FULL)] };
}
