import { type Air, readAir, standardAir } from '../air/index.js';
import { compileOpenLine } from '../duct/index.js';
import { lineWarnings } from '../duct/line-constants.js';
import type { Warning } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';
import { count, type Frequency, optional, readFields, si } from '../quantity/index.js';
import { endLength } from './effective-length.js';
import { openVent, type VentLineInput, ventLine, ventLineShape, ventLoads } from './vent-line.js';
import { ventWarnings } from './vent-warnings.js';

export interface StandingWavesInput extends VentLineInput {
  /** Greatest number of standing waves, 1 to 20; default 3. */
  readonly most?: number | undefined;
}

/** One standing wave of a vent. */
export interface StandingWave {
  /** Number of half waves in the vent, 1 for the first standing wave. */
  readonly order: number;
  readonly frequency: Frequency;
  /** Quality factor from friction at the walls and radiation of both ends. */
  readonly Q: number;
  readonly warnings: readonly Warning[];
}

/** Number of points in each half wave at which the search looks for a resonance. */
const density = 64;

/**
 * Standing waves of a vent that is open at both ends. At these frequencies the response has peaks far above the tuning, and
 * the vent whistles when the flow separates at its edges.
 *
 * $$ \mathrm{Im}\,Z(f_m) = 0,\qquad f_m \approx \frac{m\,c}{2\,(L + \Delta\ell_{inner} + \Delta\ell_{outer})},\qquad
 *    Q_m = \frac{f_m}{2\,\mathrm{Re}\,Z}\,\frac{d\,\mathrm{Im}\,Z}{df} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Z$ | `vent` | Pa·s/m³ | impedance of the vent with the air at both its ends, as a lossy line |
 * | $f_m$ | `frequency` | Hz | resonance |
 * | $Q_m$ | `Q` | 1 | quality factor |
 *
 * @validity below the first transverse mode of the vent, and within the ranges of the ends; otherwise warnings
 *   `outside-validity`.
 * @neglects the walls and modes of the box, since the inner end radiates as into free air; bends; losses that grow with level.
 * @returns the standing waves, lowest first; fewer than asked for when friction suppresses some
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 secs. 303-314 open tubes; fletcher1998 their quality factors
 * @example standingWaves({ vent: { diameter: '75 mm', length: '15 cm' } })[0] // 869 Hz, Q 6.6
 */
export function standingWaves(input: StandingWavesInput, air: Air = standardAir): readonly StandingWave[] {
  readAir(air);
  const { most = 3, ...fields } = readFields('', input, { ...ventLineShape, most: optional(count(20)) });
  const { vent, length, given: own } = ventLine(fields);
  const admittance = compileOpenLine(openVent(vent, length, { ...ventLoads(vent, 4 * Math.PI), ...own }, air), air);
  const step = air.speedOfSound / (2 * (length + endLength(vent, 0)) * density);
  const frequencies = Float64Array.from({ length: Math.ceil((most + 0.75) * density) }, (_, i) => (i + 1) * step);
  const re = new Float64Array(frequencies.length);
  const im = new Float64Array(frequencies.length);
  admittance(frequencies, re, im);

  const [f, a, b] = [new Float64Array(1), new Float64Array(1), new Float64Array(1)];
  /** Computes the impedance at one frequency, and the ratio of its imaginary part to its modulus. */
  const at = (frequency: number) => {
    f[0] = frequency;
    admittance(f, a, b);
    const size = Math.hypot(a[0]!, b[0]!);
    return { re: a[0]! / size / size, im: -b[0]! / size / size, angle: -b[0]! / size };
  };
  const waves: StandingWave[] = [];
  for (let i = 1; i < frequencies.length && waves.length < most; i++) {
    // At a resonance the reactance changes from spring to mass. At the dips in between it changes back.
    if (!(im[i - 1]! > 0 && im[i]! <= 0)) continue;
    const root = bracketedRoot((x) => at(x).angle, frequencies[i - 1]!, frequencies[i]!);
    if (!root.ok) continue;
    const h = 1e-4 * root.x;
    const slope = (at(root.x + h).im - at(root.x - h).im) / (2 * h);
    const k = (2 * Math.PI * root.x) / air.speedOfSound;
    waves.push({
      order: waves.length + 1,
      frequency: si('frequency', root.x),
      Q: (root.x * slope) / (2 * at(root.x).re),
      warnings: [...lineWarnings(vent.section, k), ...ventWarnings(vent, k)],
    });
  }
  return waves;
}
