import type { Air } from '../air/index.js';
import type { Family } from '../enclosure/index.js';
import { type CompiledTopology, compile, type Element, slotsOf, type Topology } from '../network/index.js';
import { polynomialOnImaginaryAxis } from '../numeric/index.js';
import { normalisedShape } from './alignment.js';

/** An element of the coil, which the reference level shorts. */
const isOfCoil = (element: Element): boolean =>
  'inReference' in element && element.inReference === false && element.stands === 'impedance';

/** The same topology with the inductive parts of the coils shorted: they raise the order, and alignments are defined without them. */
const withoutCoils = (topology: Topology): Topology => ({
  ...topology,
  elements: topology.elements.map(
    (element): Element =>
      isOfCoil(element) && 'nodes' in element ? { kind: 'meter', name: element.name, nodes: element.nodes } : element,
  ),
});

/** The response of a box without the inductance of its coils, as the polynomials of a high-pass. */
export interface ShapedBox {
  readonly order: number;
  /** The lowest power of s in the numerator: the order of the fall far below the band. */
  readonly below: number;
  /** The order of the fall far above the band: 0 of a high-pass. */
  readonly above: number;
  /**
   * The numerator over a frequency, Hz, for the spec that was read last, as an alignment that allows for zeros takes it. Left out
   * where it is a power of s. The next call overwrites it.
   */
  readonly numerator?: ((frequency: number) => Float64Array) | undefined;
  /** Whether there is no coil, and the numerator is a power of s or is given: else no polynomial target is met exactly. */
  readonly exact: boolean;
  /** f |U| per volt far above all corners, for the spec that was read last. The coil is shorted and leaks are left in. */
  readonly asymptote: () => number;
  /** Everything of it compiled, coils included, with its slots. */
  readonly whole: () => CompiledTopology;
  /** Fills the normalised middle coefficients for another spec of the same parts. Returns the frequency they hold over, Hz. */
  readonly shapeOf: (spec: unknown, out: Float64Array) => number;
}

/** Relative size of a coefficient that is the rounding of a zero. */
const ROUNDING = 1e-11;

function termsOf(row: Float64Array): readonly [lowest: number, highest: number] {
  let largest = 0;
  for (const value of row) largest = Math.max(largest, Math.abs(value));
  const counts = (value: number) => Math.abs(value) > ROUNDING * largest;
  return [row.findIndex(counts), row.findLastIndex(counts)];
}

/**
 * Compiles the response of a family once, for the parts that a spec has. A network without polynomials, such as one with a
 * line, gives `undefined`.
 */
export function shapedBox<Spec>(family: Family<Spec, never>, spec: Spec, air: Air): ShapedBox | undefined {
  const full = family.topology(spec);
  const hasCoil = full.elements.some(isOfCoil);
  const topology = hasCoil ? withoutCoils(full) : full;
  const slots = slotsOf(topology);
  const values = new Float64Array(slots.size);
  const set = (name: string, ...numbers: readonly number[]) => {
    const slot = slots.of.get(name);
    if (slot === undefined) return;
    if (numbers.length === 1) values[slot.at] = numbers[0]!;
    else values.set(numbers, slot.at);
  };
  family.values(spec, air, set);
  const compiled = family.compile(topology);
  const network = compiled?.network(values);
  if (compiled === undefined || network?.polynomials === undefined) return undefined;
  const { coefficients, width, scale } = network.polynomials;
  const denominator = coefficients.subarray(0, width);
  const flow = coefficients.subarray(width, 2 * width);
  const [low, high] = termsOf(denominator);
  const [first, last] = termsOf(flow);
  const order = high - low;
  const kept = denominator.subarray(low, high + 1);
  const shapeOf = (one: unknown, out: Float64Array): number => {
    family.values(one as Spec, air, set);
    network.load(values);
    return (normalisedShape(kept, order, out) * scale) / (2 * Math.PI);
  };
  // The level is that of s times the flow.
  const asymptote = () => (Math.abs(flow[last]! / denominator[high]!) * scale) / (2 * Math.PI);
  const [below, above] = [first + 1 - low, high - last - 1];
  const isPower = first === last;
  const kind = { below, above, exact: isPower && !hasCoil };
  const numerator = numeratorOf(flow.subarray(first, last + 1), order, below, scale);
  let made = hasCoil ? undefined : compiled;
  const whole = () => {
    made ??= family.compile(full) ?? compile(full);
    return made;
  };
  const box = { order, ...kind, asymptote, whole, shapeOf };
  // A notch is a pair of zeros. One zero alone in a high-pass comes of a loss in the vent, which no shape is told with.
  return isPower || (above === 0 && below === order - 1) ? box : { ...box, numerator, exact: !hasCoil };
}

/** Reads a numerator from its coefficients, the first of which is that of the power `below`. */
function numeratorOf(
  coefficients: Float64Array,
  order: number,
  below: number,
  scale: number,
): (frequency: number) => Float64Array {
  const out = new Float64Array(order + 1);
  const value = new Float64Array(2);
  return (frequency) => {
    const ratio = (2 * Math.PI * frequency) / scale;
    for (let k = 0; k < coefficients.length; k++) out[below + k] = coefficients[k]! * ratio ** (below + k);
    polynomialOnImaginaryAxis(out, 1, value);
    const isHighPass = below + coefficients.length === order + 1;
    const unit = isHighPass ? out[order]! : Math.sign(coefficients[0]!) * Math.hypot(value[0]!, value[1]!);
    for (let k = below; k <= order; k++) out[k]! /= unit;
    return out;
  };
}

/** The same box for a target that does not allow for zeros. */
export const withoutZeros = ({ numerator, ...box }: ShapedBox): ShapedBox => ({
  ...box,
  exact: box.exact && numerator === undefined,
});
