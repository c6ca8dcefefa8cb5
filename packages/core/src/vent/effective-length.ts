import { type Air, readAir, standardAir } from '../air/index.js';
import type { EndCorrection, Opening } from '../duct/index.js';
import { type Fault, InputError, refuse } from '../fault/index.js';
import {
  type AcousticMass,
  type FrequencyInput,
  type Length,
  optional,
  positive,
  readFields,
  si,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import type { VentGeometry } from './vent-geometry.js';
import { geometry, type VentInput, ventField } from './vent-input.js';

export interface VentAtFrequency {
  readonly vent: VentInput;
  /** Default: the low-frequency limit. */
  readonly frequency?: FrequencyInput;
}

const shape = { vent: ventField, frequency: optional(positive('frequency')) };

/** Sum of both end corrections, m. Throws when the caller's own end correction returns a value that is not finite. */
export function endLength({ inner, outer, innerEnd, outerEnd }: VentGeometry, k: number): number {
  const length = outerEnd(outer, k) + innerEnd(inner, k);
  if (Number.isFinite(length)) return length;
  const path = Number.isFinite(innerEnd(inner, k)) ? 'vent.outerEnd' : 'vent.innerEnd';
  const expected = `a finite length from the end correction at k = ${k} rad/m`;
  throw new InputError([
    { code: 'not-finite', path, got: length, expected, remedy: 'Correct the end correction function.' },
  ]);
}

/** The end correction of one opening by wave number, m; checks nothing. */
export function compileEnd(end: EndCorrection, opening: Opening): (k: number) => number {
  if (end.atAnyFrequency !== true) return (k) => end(opening, k);
  const length = end(opening, 0);
  return () => length;
}

/** Length with both end corrections, m. Throws unless it is above zero. */
export function movingLength(vent: VentGeometry, length: number, k: number): number {
  const effective = length + endLength(vent, k);
  if (effective > 0) return effective;
  const expected = 'end corrections that leave an effective length above zero';
  const remedy = 'Check the end corrections.';
  throw new InputError([{ code: 'inconsistent', path: 'vent.length', got: length, expected, remedy }]);
}

/** Length that the flares of both ends take up, m. */
export const flareLength = ({ innerEnd, outerEnd }: VentGeometry): number =>
  (innerEnd.flare?.radius ?? 0) + (outerEnd.flare?.radius ?? 0);

/** The fault of a vent that is shorter than its bends and flares. */
export function lengthFaults(vent: VentGeometry, length: number): Fault[] {
  const least = vent.bendLength + flareLength(vent);
  if (least <= length + NANOMETRE) return [];
  const expected = `at least ${least} m, the length of its ${vent.bendLength > 0 ? 'bends and flares' : 'flares'}`;
  const remedy = 'Lengthen the vent, or make its bends or flares smaller.';
  return [{ code: 'inconsistent', path: 'vent.length', got: length, expected, remedy }];
}

function read(input: VentAtFrequency, air: Air): { vent: VentGeometry; length: number } {
  const fields = readFields('', input, shape);
  const faults: Fault[] = [];
  const vent = geometry(faults, fields.vent);
  faults.push(...lengthFaults(vent, fields.vent.length));
  refuse(faults);
  const k = (2 * Math.PI * (fields.frequency ?? 0)) / air.speedOfSound;
  return { vent, length: movingLength(vent, fields.vent.length, k) };
}

/**
 * Effective length of a vent: the length of the tube and the end corrections for the moving air outside it.
 *
 * $$ \ell = L + \Delta\ell_{outer}(k) + \Delta\ell_{inner}(k) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `length` | m | from the outer surface to the inner end, along the centre line |
 * | $\Delta\ell_{outer}$ | `outerEnd` | m | end correction at the outer end |
 * | $\Delta\ell_{inner}$ | `innerEnd` | m | end correction at the inner end |
 * | $k$ | `frequency` | rad/m | $2\pi f/c$ |
 *
 * @validity $k\ell \le 0.5$; ends more than a diameter from other walls and from each other.
 * @neglects the shorter path of the air in a bend of centre-line radius R, by potential flow
 *   $(1 - \sqrt{1 - (a/R)^2})/2$ of the bend's length (3 % at 1.5 diameters, below which a tuning warns); the interaction of
 *   neighbouring vents (0.27 radii each for pistons that touch, pritchard1960); flow.
 * @returns m
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 secs. 303-307; the end corrections name their own
 * @example effectiveLength({ vent: { diameter: '75 mm', length: '150 mm' } }) // 0.2038 m
 */
export function effectiveLength(input: VentAtFrequency, air: Air = standardAir): Length {
  readAir(air);
  return si('length', read(input, air).length);
}

/**
 * Acoustic mass of one vent, or of several equal vents together.
 *
 * $$ M_{AV} = \frac{\rho\,\ell}{n S} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\ell$ | `length` | m | effective length, see {@link effectiveLength} |
 * | $S$ | `diameter` | m² | cross-section of one vent, $\pi d^2/4$ |
 * | $n$ | `count` | 1 | number of vents |
 * | $\rho$ | `density` | kg/m³ | density of the air |
 *
 * @validity as {@link effectiveLength}.
 * @neglects what {@link effectiveLength} neglects, and the boundary layer, which increases the mass by the ratio of its
 * thickness to the radius (about 1 %).
 * @returns kg/m⁴
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 secs. 303-307
 * @example acousticMass({ vent: { diameter: '75 mm', length: '150 mm', count: 2 } }) // 27.7 kg/m⁴
 */
export function acousticMass(input: VentAtFrequency, air: Air = standardAir): AcousticMass {
  readAir(air);
  const { vent, length } = read(input, air);
  return si('acousticMass', (air.density * length) / vent.area);
}
