import { type Impossible, refuse } from '../fault/index.js';
import { type LengthInput, nested, optional, positive, readFields } from '../quantity/index.js';
import { ROUNDING } from '../quantity/rounding.js';
import { innerEdges } from './cuboid.js';
import {
  judgeSpace,
  layoutOf,
  type SpaceInput,
  spaceShape,
  type VentBodyInput,
  ventBodyOf,
  ventShape,
} from './fit-input.js';
import { driverPlace, ventReasons } from './fit-reasons.js';
import { type Fit, middle, placed } from './fitted.js';
import { compilePlaces } from './vent-places.js';

export interface FitInput extends SpaceInput {
  /** Left out: a closed box. */
  readonly vent?: VentBodyInput & {
    /** Of the centre line, panel included. */
    readonly length: LengthInput;
  };
}

const shape = { ...spaceShape, vent: optional(nested({ ...ventShape, length: positive('length') })) };

/**
 * Does everything fit in the box, and where?
 *
 * $$ \ell \le \ell_{straight} \quad\text{or}\quad \ell \le \ell_{bent} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\ell$ | `vent.length` | m | centre line of the vent, panel included |
 * | $\ell_{straight}, \ell_{bent}$ | | m | longest vent, see {@link longestVent}; with one bend the first leg is at most what panel and bend leave of $\ell$ |
 *
 * @validity as {@link longestVent}
 * @neglects as {@link longestVent}
 * @returns places, solids and slack, or the reasons in numbers and what to change
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `inconsistent`
 * @source own geometry of cylinders and cuboids
 * @example fit({ outer: { width: '300 mm', height: '400 mm', depth: '350 mm' }, thickness: '18 mm', driver: { outerDiameter: '200 mm', cutoutDiameter: '180 mm', depth: '90 mm' }, vent: { diameter: '60 mm', length: '260 mm' } }).ok // true
 */
export function fit(input: FitInput): Fit | Impossible {
  const space = readFields('space', input, shape);
  const inner = innerEdges(space.outer, space.thickness, 'space.outer');
  refuse(judgeSpace(space, 'space', space.vent));
  const layout = layoutOf(space, space.vent);
  const alone = driverPlace(inner, layout);
  if (!alone.ok) return alone;
  if (!space.vent) return placed(inner, layout, middle(inner, layout, alone));

  const { length } = space.vent;
  const body = ventBodyOf(space.vent);
  const { search, straight, bent } = compilePlaces(layout);
  search(...inner, body, length + ROUNDING);
  const place = straight.length >= length - ROUNDING ? straight : bent;
  if (place.length < length - ROUNDING) {
    search(...inner, body, Number.POSITIVE_INFINITY);
    return { ok: false, because: ventReasons(inner, layout, body, length, straight.length, bent.length) };
  }
  const vent = {
    radius: body.outerDiameter / 2,
    halfAcross: body.outerDiameter / 2,
    flangeRadius: body.flangeDiameter / 2,
    flangeHalfAcross: body.flangeDiameter / 2,
    clearance: body.clearance,
    bendRadius: body.bendRadius,
    panel: layout.thickness[place.ventFace]!,
  };
  return placed(inner, layout, place, { vent, length, bent: place === bent, pitch: body.flangeDiameter + layout.gap });
}
