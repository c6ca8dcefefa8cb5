import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import { type Frequency, kinds, type Length, si, type Volume } from '../quantity/index.js';
import { innerEdges, sizeList, wallsByAxis } from '../space/cuboid.js';
import { layoutOf } from '../space/fit-input.js';
import { compileBodiesFit, compileLongestVent, compileSizeForNetVolume } from '../space/index.js';
import { lengthForTuning } from '../vent/index.js';
import { leastDiameter } from './least-diameter.js';
import { compileVentFlow } from './vent-flow.js';
import { readVentMap, type VentMapInput } from './vent-map-input.js';

/** How a vent fits, or which limit is against it. */
export type VentVerdict =
  | 'straight'
  | 'bent'
  | 'too long'
  | 'too wide'
  | 'drivers too large'
  | 'box too large'
  | 'no length';

/** Diameters that are accepted, m. */
const [least, most] = kinds.length.range;

/** One volume and tuning: the smallest round vent that stays below the onsets and keeps the air speed. */
export interface VentCell {
  readonly netVolume: Volume;
  readonly fb: Frequency;
  readonly diameter: Length;
  /** The length that tunes the box; left out if no length of this diameter does. */
  readonly length?: Length;
  /** Where the vent resonates as a pipe open at both ends: half a wave in its effective length. */
  readonly pipeResonance?: Frequency;
  readonly verdict: VentVerdict;
}

/**
 * Where a vent fits: for each net volume and tuning the smallest round vent that stays below onsets of noise, or keeps an air speed,
 * while a level is played, its length, and whether the box of that volume holds it straight, bent or not at all.
 *
 * $$ S = \max_{f} \frac{\sqrt2}{\hat v(f, S)} \left|\frac{U_v(f)}{p(f)}\right| p_0\,10^{L/20}, \quad
 *    f_1 = \frac{c}{2\,(\ell + \delta_i + \delta_o)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $S$ | `diameter` | m² | area of the vent: π/4 times its diameter squared |
 * | $\hat v$ | `onsets`, `airSpeedPeak` | m/s | greatest peak of the mean air speed: the least that one of them allows |
 * | $U_v / p$ | `box` | m³/(s Pa) | flow in the vent for each pascal at 1 m |
 * | $L$ | `level` | dB | level to be played, rms |
 * | $p_0$ | | Pa | 20 µPa |
 * | $\ell, \delta_i, \delta_o$ | `length` | m | length of the vent, and what its two ends add |
 * | $c$ | | m/s | speed of sound in the air of the box |
 * | $f_1$ | `pipeResonance` | Hz | first resonance of the vent as a pipe |
 *
 * @validity vents whose own losses hardly change their flow; one round vent that leads outside, at 32 frequencies of the band
 * @neglects as `ventNoise`, with onsets; an air speed alone is no statement about noise
 * @returns cells, volume by volume
 * @throws InputError `empty`, `unit`, `not-positive`, `out-of-range`, `inconsistent`, `unsorted`, and those of the box and the space
 * @source small1973vented1 (flow in the vent)
 * @source rayleigh1896 secs. 303-314 (tuning and resonance of an open pipe)
 * @source holman2005 formation of jets; salvatti2002 recommended speed (`noiseOnsets`)
 * @example ventMap({ box, netVolumes, tunings, level: '90 dB', from: '30 Hz', to: '100 Hz', onsets: noiseOnsets, … })[0].verdict
 */
export function ventMap(input: VentMapInput): readonly VentCell[] {
  const { box, vent: name, netVolumes, tunings, level, from, to, below, space, displaced, wall } = readVentMap(input);
  innerEdges(space.outer, space.thickness, 'map.space.outer');
  const largest = sizeList(space.outer);
  const walls = wallsByAxis(space.thickness);
  const layout = layoutOf(space);
  const [longest, bodiesFit] = [compileLongestVent(layout), compileBodiesFit(layout)];
  const sizeFor = compileSizeForNetVolume(largest, space.thickness, 'proportional');
  const [edges, room] = [new Float64Array(3), new Float64Array(2)];
  const boxAt = (netVolume: Volume, fb: Frequency): System => {
    const system = box(netVolume, fb) as System | null | undefined;
    if (system?.network !== undefined && system.spec !== undefined) return system;
    const expected = 'a system with its spec from the function, such as that of ventedBox';
    const remedy = 'Let the function return the box as ventedBox or systemOf makes it.';
    throw new InputError([{ code: 'inconsistent', path: 'map.box', got: system, expected, remedy }]);
  };
  const { frequencies, of: flowOf } = compileVentFlow(boxAt(netVolumes[0]!, tunings[0]!), from, to, level, name);
  refuseUnlessTuned(boxAt, netVolumes[0]!, tunings);
  /** The verdict on a vent of a length in the smallest box that has room for it and the air. */
  const verdictOf = (netVolume: number, diameter: number, length: number): VentVerdict => {
    const outerDiameter = diameter + 2 * wall;
    sizeFor(netVolume, displaced + (Math.PI / 4) * outerDiameter ** 2 * length, edges);
    if (edges[0]! > largest[0] * (1 + 1e-12)) return 'box too large';
    const inner = [edges[0]! - walls[0], edges[1]! - walls[1], edges[2]! - walls[2]] as const;
    const vent = { outerDiameter, flangeDiameter: outerDiameter, clearance: diameter, bendRadius: outerDiameter };
    longest(...inner, vent, room);
    const [straight, bent] = [room[0]!, room[1]!];
    if (length <= straight) return 'straight';
    if (length <= bent) return 'bent';
    if (straight > 0 || bent > 0) return 'too long';
    return bodiesFit(...inner) ? 'too wide' : 'drivers too large';
  };
  const cell = (netVolume: Volume, fb: Frequency): VentCell => {
    const system = boxAt(netVolume, fb);
    const diameter = si('length', leastDiameter(frequencies, flowOf(system), below, system.air));
    // A level far from any that is played asks for no vent that there could be.
    if (diameter < least || diameter > most) return { netVolume, fb, diameter, verdict: 'no length' };
    const tuned = lengthForTuning({ vent: { diameter }, netVolume, fb }, system.air);
    if (!tuned.ok) return { netVolume, fb, diameter, verdict: 'no length' };
    const { length, effectiveLength } = tuned;
    const pipeResonance = si('frequency', system.air.speedOfSound / (2 * effectiveLength));
    return { netVolume, fb, diameter, length, pipeResonance, verdict: verdictOf(netVolume, diameter, length) };
  };
  return netVolumes.flatMap((netVolume) => tunings.map((fb) => cell(netVolume, fb)));
}

/** Refuses a function that makes the same box at two tunings: its map would tell vents that do not belong to it. */
function refuseUnlessTuned(
  boxAt: (netVolume: Volume, fb: Frequency) => System,
  netVolume: Volume,
  tunings: readonly Frequency[],
): void {
  const [first, last] = [tunings[0]!, tunings.at(-1)!];
  const specAt = (fb: Frequency) => JSON.stringify(boxAt(netVolume, fb).spec);
  if (first === last || specAt(first) !== specAt(last)) return;
  const expected = 'a box that is tuned to its second argument';
  const remedy = 'Pass fb on, as in (netVolume, fb) => ventedBox({ drivers, netVolume, fb, ventArea }).';
  throw new InputError([
    { code: 'inconsistent', path: 'map.box', got: 'the same box at every tuning', expected, remedy },
  ]);
}
