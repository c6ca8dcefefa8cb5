import { type Air, readAir, standardAir } from '../air/index.js';
import type { System } from '../enclosure/index.js';
import { type Fault, InputError } from '../fault/index.js';
import { compile, valuesOf } from '../network/index.js';
import { complexColumn } from '../numeric/index.js';
import {
  anySign,
  type Frequency,
  type FrequencyInput,
  given,
  type Length,
  type LengthInput,
  type LevelInput,
  logarithmicGrid,
  nested,
  notNegative,
  positive,
  read,
  readFields,
  type SpeedInput,
  si,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { levelColumn } from '../response/index.js';
import { sizeShape, thicknessField } from '../space/cuboid.js';
import { compileSizeForNetVolume, longestVent, type SpaceInput } from '../space/index.js';
import { lengthForTuning } from '../vent/index.js';

/** What a map of vents is drawn for. */
export interface VentMapInput {
  /** The box with a vent at a net volume and a tuning. Its vent has an area of 1 m², so that the air speed is the flow. */
  readonly box: (netVolume: Volume, fb: Frequency) => System;
  readonly netVolumes: readonly VolumeInput[];
  readonly tunings: readonly FrequencyInput[];
  /** The level that is to be played at every frequency of a band, at 1 m in half space. */
  readonly level: LevelInput;
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
  /** Greatest peak of the mean air speed in the vent. */
  readonly airSpeedPeak: SpeedInput;
  /** The space, panels, drivers and rules. Each box has the proportions of `outer` and must not be larger. */
  readonly space: SpaceInput;
  /** What drivers and bracing take from the air. */
  readonly displaced: VolumeInput;
  /** Thickness of the wall of the tube. */
  readonly wall: LengthInput;
}

/** How a vent fits, or which limit is against it. */
export type VentVerdict = 'straight' | 'bent' | 'too long' | 'too wide' | 'box too large' | 'no length';

/** One volume and tuning: the smallest round vent that keeps the air speed. */
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

const shape = {
  box: given<VentMapInput['box']>(),
  netVolumes: given<readonly VolumeInput[]>(),
  tunings: given<readonly FrequencyInput[]>(),
  level: anySign('level'),
  from: positive('frequency'),
  to: positive('frequency'),
  airSpeedPeak: positive('speed'),
  space: given<SpaceInput>(),
  displaced: notNegative('volume'),
  wall: notNegative('length'),
};
const spaceFields = { outer: nested(sizeShape), thickness: thicknessField };
const POINTS = 32;
const SPEED = 'ventAirSpeed';

function verdictOf(
  length: number,
  { straight, bent }: { readonly straight: number; readonly bent: number },
): VentVerdict {
  if (length <= straight) return 'straight';
  if (length <= bent) return 'bent';
  return straight === 0 && bent === 0 ? 'too wide' : 'too long';
}

/** Peak flow in the vent while a system plays a level at every frequency of a band, m³/s. */
function compileVentFlow(first: System, from: number, to: number, level: number): (system: System) => number {
  const { topology } = first.network;
  const compiled = first.compile(topology) ?? compile(topology);
  const network = compiled.network(valuesOf(compiled.slots, first.network.values));
  const [flow, speed] = [0, compiled.probes.indexOf(SPEED)] as const;
  if (speed < 0) {
    const fault: Fault = {
      code: 'inconsistent',
      path: 'box',
      got: first.family,
      expected: 'a system with a vent of a stated area',
      remedy: "Give the box a ventArea of '1 m²'.",
    };
    throw new InputError([fault]);
  }
  const grid = logarithmicGrid(from, to, POINTS);
  const columns = network.probes.map(() => complexColumn(POINTS));
  const levels = new Float64Array(POINTS);
  return ({ network: { values }, air }) => {
    network.load(valuesOf(compiled.slots, values));
    network.sweep(grid, columns);
    levelColumn(grid, columns[flow]!, air.density, 1, levels);
    let greatest = 0;
    for (let i = 0; i < POINTS; i++) {
      const { re, im } = columns[speed]!;
      const drive = 10 ** ((level - levels[i]!) / 20);
      greatest = Math.max(greatest, drive * Math.hypot(re[i]!, im[i]!));
    }
    return Math.SQRT2 * greatest;
  };
}

/**
 * Where a vent fits: for each net volume and tuning the smallest round vent that keeps an air speed while a level is played, its
 * length, and whether the box of that volume holds it straight, bent or not at all.
 *
 * $$ S = \frac{\sqrt2}{\hat v}\,\max_{f} \left|\frac{U_v(f)}{p(f)}\right| p_0\,10^{L/20}, \quad
 *    f_1 = \frac{c}{2\,(\ell + \delta_i + \delta_o)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $S$ | `diameter` | m² | area of the vent |
 * | $\hat v$ | `airSpeedPeak` | m/s | greatest peak of the mean air speed |
 * | $U_v / p$ | `box` | m³/(s Pa) | flow in the vent for each pascal at 1 m |
 * | $L$ | `level` | dB | level to be played |
 * | $f_1$ | `pipeResonance` | Hz | first resonance of the vent as a pipe |
 *
 * @validity vents whose own losses hardly change their flow; one round vent, at 32 frequencies of the band
 * @neglects turbulence and noise: an air speed is no statement about them
 * @returns cells, volume by volume
 * @throws InputError `empty`, `unit`, `not-positive`, `out-of-range`, `inconsistent`, and those of the box and the space
 * @source small1973vented1 (flow in the vent)
 * @source rayleigh1896 secs. 303-314 (tuning and resonance of an open pipe)
 * @example ventMap({ box, netVolumes, tunings, level: '100 dB', from: '30 Hz', to: '100 Hz', airSpeedPeak: '17 m/s', … })[0].verdict
 */
export function ventMap(input: VentMapInput, air: Air = standardAir): readonly VentCell[] {
  readAir(air);
  const { box, netVolumes, tunings, level, from, to, airSpeedPeak, space, displaced, wall } = readFields(
    '',
    input,
    shape,
  );
  const volumes = netVolumes.map((volume) => read('volume', volume));
  const frequencies = tunings.map((frequency) => read('frequency', frequency));
  const { outer, thickness } = readFields('space', { outer: space.outer, thickness: space.thickness }, spaceFields);
  const largest = [outer.width, outer.height, outer.depth] as const;
  const sizeFor = compileSizeForNetVolume([...largest], thickness, 'proportional');
  const edges = new Float64Array(3);
  const flowOf = compileVentFlow(box(volumes[0]!, frequencies[0]!), from, to, level);
  const cell = (netVolume: Volume, fb: Frequency): VentCell => {
    const diameter = si('length', Math.sqrt((4 * flowOf(box(netVolume, fb))) / (Math.PI * airSpeedPeak)));
    const tuned = lengthForTuning({ vent: { diameter }, netVolume, fb }, air);
    if (!tuned.ok) return { netVolume, fb, diameter, verdict: 'no length' };
    const { length, effectiveLength } = tuned;
    const pipeResonance = si('frequency', air.speedOfSound / (2 * effectiveLength));
    const known = { netVolume, fb, diameter, length, pipeResonance };
    const tube = (Math.PI / 4) * (diameter + 2 * wall) ** 2 * length;
    sizeFor(netVolume, displaced + tube, edges);
    if (edges[0]! > largest[0] * (1 + 1e-12)) return { ...known, verdict: 'box too large' };
    const [width, height, depth] = Array.from(edges, (edge) => si('length', edge)) as [Length, Length, Length];
    const room = longestVent({
      ...space,
      outer: { width, height, depth },
      vent: { diameter, wall: si('length', wall) },
    });
    return { ...known, verdict: verdictOf(length, room) };
  };
  return volumes.flatMap((netVolume) => frequencies.map((fb) => cell(netVolume, fb)));
}
