import type { Air } from '../air/index.js';
import type { Family } from '../enclosure/index.js';
import { complexColumn, logarithmic } from '../numeric/index.js';
import { type Behind, gainOf } from './high-pass.js';
import type { ShapedBox } from './shaped-box.js';
import { compileLevelOfTarget } from './target-level.js';

/** How far a response is from its target in a band, dB. */
export interface Deviation {
  readonly rms: number;
  readonly greatest: number;
  /** Hz */
  readonly from: number;
  readonly to: number;
}

/** A response and its target are compared at so many frequencies, spaced evenly on a logarithmic axis. */
const POINTS = 49;

/** The band in which a response is compared with a target at a frequency: an octave below it to two octaves above. */
export const bandOf = (frequency: number): Float64Array => logarithmic(frequency / 2, 4 * frequency, POINTS);

/** Level minus that of the target at each frequency, dB; both are counted from where they end far above. */
export type Differences = (
  spec: unknown,
  target: readonly number[],
  frequency: number,
  band: Float64Array,
) => Float64Array;

/** Compiles the response of a family with everything that it has, coil and losses, to be compared with targets. */
export function differences<Spec>(family: Family<Spec, never>, spec: Spec, air: Air, box: ShapedBox): Differences {
  const { slots, network: networkOf } = box.whole();
  const values = new Float64Array(slots.size);
  const set = (name: string, ...numbers: readonly number[]) => values.set(numbers, slots.of.get(name)?.at);
  family.values(spec, air, set);
  const network = networkOf(values);
  const columns = network.probes.map(() => complexColumn(POINTS));
  const flow = columns[0] as (typeof columns)[number];
  const unused = new Float64Array(box.order);
  const out = new Float64Array(POINTS);
  const levelOfTarget = compileLevelOfTarget();
  return (one, target, frequency, band) => {
    family.values(one as Spec, air, set);
    network.load(values);
    network.sweep(band, columns);
    box.shapeOf(one, unused);
    const asymptote = box.asymptote();
    const { highPass } = one as Behind<unknown>;
    for (let i = 0; i < POINTS; i++) {
      const passed = highPass === undefined ? 1 : gainOf(highPass, band[i]!);
      const got = (passed * band[i]! * Math.hypot(flow.re[i]!, flow.im[i]!)) / asymptote;
      out[i] = 20 * Math.log10(got) - levelOfTarget(target, band[i]! / frequency);
    }
    return out;
  };
}

/** The root of the mean square, and the greatest, of differences over a band. */
export function deviationOf(differences: Float64Array, band: Float64Array): Deviation {
  let [squares, greatest] = [0, 0];
  for (const value of differences) {
    squares += value ** 2;
    greatest = Math.max(greatest, Math.abs(value));
  }
  return { rms: Math.sqrt(squares / POINTS), greatest, from: band[0]!, to: band[POINTS - 1]! };
}
