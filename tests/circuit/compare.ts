import {
  type CompiledTopology,
  compile,
  compilePlan,
  compilePolynomials,
  type Network,
  valuesOf,
} from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';

/** Largest |a − b| / (|a| + 10⁻⁶ max|a|): a null in a column does not mislead. */
export function worst(a: ComplexColumn, b: ComplexColumn): number {
  const size = a.re.map((re, i) => Math.hypot(re, a.im[i]!));
  const floor = 1e-6 * Math.max(...size);
  return Math.max(...size.map((s, i) => Math.hypot(a.re[i]! - b.re[i]!, a.im[i]! - b.im[i]!) / (s + floor)));
}

/** Real parts, then imaginary parts. */
export const flat = ({ re, im }: ComplexColumn): number[] => [...re, ...im];

export const largest = ({ re, im }: ComplexColumn): number => Math.max(...re.map((x, i) => Math.hypot(x, im[i]!)));

/** column × factor × (jω)^derivatives. */
export function scaled({ re, im }: ComplexColumn, factor: number, frequencies?: Float64Array): ComplexColumn {
  const out = complexColumn(re.length);
  re.forEach((x, i) => {
    const w = frequencies === undefined ? 0 : 2 * Math.PI * frequencies[i]!;
    out.re[i] = factor * (frequencies === undefined ? x : -w * im[i]!);
    out.im[i] = factor * (frequencies === undefined ? im[i]! : w * x);
  });
  return out;
}

export const minus = (a: ComplexColumn, b: ComplexColumn): ComplexColumn => ({
  re: a.re.map((x, i) => x - b.re[i]!),
  im: a.im.map((x, i) => x - b.im[i]!),
});

export type Swept = Readonly<Record<string, ComplexColumn>>;
export type Road = (network: Network, frequencies: Float64Array, inReference?: boolean) => Swept;

const sweptBy =
  (compiled: (network: Network) => CompiledTopology): Road =>
  (network, frequencies, inReference = false) => {
    const { slots, network: made } = compiled(network);
    const { probes, sweep } = made(valuesOf(slots, network.values), inReference);
    const out = probes.map(() => complexColumn(frequencies.length));
    const stopped = sweep(frequencies, out);
    if (stopped >= 0) throw new Error(`nothing damps it at ${frequencies[stopped]} Hz`);
    return Object.fromEntries(probes.map((name, i) => [name, out[i] as ComplexColumn]));
  };

/** By the polynomials of the topology. */
export const byPolynomials = sweptBy(({ topology }) => {
  const compiled = compilePolynomials(topology);
  if (compiled === undefined) throw new Error('no polynomials');
  return compiled;
});

/** By the one that is chosen. */
export const byEither = sweptBy(({ topology }) => compile(topology));

/** By elimination at each frequency. */
export const byPlan = sweptBy(({ topology }) => compilePlan(topology));
