import type { Air } from '../air/index.js';
import type { Family } from '../enclosure/index.js';
import { complexColumn, logarithmic } from '../numeric/index.js';
import type { ShapedAlignment } from './alignment.js';
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

/** A band as multiples of the frequency of a target. */
export interface ComparedBand {
  readonly from: number;
  readonly to: number;
}

/** Number of frequencies at which a response is compared with its target, in equal ratios. */
const POINTS = 49;

/** These frequencies over that of the target: from an octave below to two octaves above, or to one octave for a band-pass. */
const MULTIPLES = {
  highPass: /* @__PURE__ */ logarithmic(1 / 2, 4, POINTS),
  bandPass: /* @__PURE__ */ logarithmic(1 / 2, 2, POINTS),
} as const;

/** The band in which a response is compared with a target at a frequency. */
export const bandOf = (frequency: number, isBandPass = false, own?: Float64Array): Float64Array =>
  (own ?? MULTIPLES[isBandPass ? 'bandPass' : 'highPass']).map((multiple) => multiple * frequency);

/** The same points in another band. */
export const multiplesOf = ({ from, to }: ComparedBand): Float64Array => logarithmic(from, to, POINTS);

/**
 * Level minus that of the target at each frequency, dB. Both are counted from where they end far above; those of a band-pass are
 * equal in the mean.
 */
export type Differences = (spec: unknown, parameter: number, frequency: number, band: Float64Array) => Float64Array;

/** Takes the mean from each. */
export function aboutMean(values: Float64Array): void {
  let sum = 0;
  for (const value of values) sum += value;
  for (let i = 0; i < values.length; i++) values[i]! -= sum / values.length;
}

/**
 * Compiles the response of a family with everything that it has, coil and losses, to be compared with shapes of a target. `shape` is
 * the box whose zeros the target allows for, `box` the one with all losses.
 */
export function differences<Spec>(
  { target, order, orderBelow = order }: ShapedAlignment,
  family: Family<Spec, never>,
  spec: Spec,
  air: Air,
  shape: ShapedBox,
  box: ShapedBox,
): Differences {
  const { slots, network: networkOf } = box.whole();
  const values = new Float64Array(slots.size);
  const set = (name: string, ...numbers: readonly number[]) => values.set(numbers, slots.of.get(name)?.at);
  family.values(spec, air, set);
  const network = networkOf(values);
  // The flow is the first of the probes; nothing reads the others.
  const [flow, unread] = [complexColumn(POINTS), complexColumn(POINTS)];
  const columns = network.probes.map((_, i) => (i === 0 ? flow : unread));
  const unused = new Float64Array(box.order);
  const out = new Float64Array(POINTS);
  const levelOfTarget = compileLevelOfTarget();
  return (one, parameter, frequency, band) => {
    family.values(one as Spec, air, set);
    network.load(values);
    network.sweep(band, columns);
    box.shapeOf(one, unused);
    const asymptote = box.asymptote();
    const { highPass } = one as Behind<unknown>;
    if (shape !== box && shape.numerator) shape.shapeOf(one, unused);
    const numerator = shape.numerator?.(frequency);
    const denominator = target(parameter, numerator);
    for (let i = 0; i < POINTS; i++) {
      const passed = highPass === undefined ? 1 : gainOf(highPass, band[i]!);
      const size = Math.sqrt(flow.re[i]! ** 2 + flow.im[i]! ** 2);
      const got = (passed * band[i]! * size) / asymptote;
      out[i] = 20 * Math.log10(got) - levelOfTarget(denominator, band[i]! / frequency, numerator ?? orderBelow);
    }
    if (orderBelow < order) aboutMean(out);
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
