import { type Impossible, refuse } from '../fault/index.js';
import { type LengthInput, optional, positive, readFields } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { innerEdges } from './cuboid.js';
import { judgeSpace, layoutOf, type ShapedSpaceInput, shapedSpaceShape } from './fit-input.js';
import { bodiesReasons, together, ventReasons } from './fit-reasons.js';
import { type Fit, placed } from './fitted.js';
import { type VentBodyInput, ventBodyOf, ventField } from './vent-body.js';
import { compilePlaces } from './vent-places.js';
import { roundVent, slotVent } from './vent-solids.js';

export interface FitInput extends ShapedSpaceInput {
  /** Leave it out for no vent. */
  readonly vent?: VentBodyInput & {
    /** Length of the centre line, including the panel. */
    readonly length: LengthInput;
  };
}

const shape = { ...shapedSpaceShape, vent: optional(ventField({ length: positive('length') })) };

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
  const because = bodiesReasons(inner, layout);
  if (because.length > 0) return { ok: false, because };
  const { search, alone, vent: seen, straight, bent } = compilePlaces(layout);
  if (!alone(...inner)) return { ok: false, because: [together(layout)] };
  if (!space.vent) return placed(inner, layout, straight);

  const { length } = space.vent;
  const body = ventBodyOf(space.vent);
  const { count, walls } = layout.vent;
  if ('longSide' in body) slotVent(seen, body, walls, count, layout.gap);
  else roundVent(seen, body, count, layout.gap);
  search(...inner, length + NANOMETRE);
  const place = straight.length >= length - NANOMETRE ? straight : bent;
  if (place.length < length - NANOMETRE) {
    search(...inner, Number.POSITIVE_INFINITY);
    return { ok: false, because: ventReasons(inner, layout, seen, length, straight.length, bent.length) };
  }
  return placed(inner, layout, place, { body, seen, length, bent: place === bent });
}
