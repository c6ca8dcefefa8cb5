/** Slopes of a swept probe by differences, against which gradients are held. */
import {
  type CompiledTopology,
  compile,
  type GradientNumber,
  type Network,
  type Topology,
  valuesOf,
} from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { withValue } from '../../arbitrary/network-of.js';

export type Complex = readonly [re: number, im: number];
const minus = ([a, b]: Complex, [c, d]: Complex): Complex => [a - c, b - d];
const by = ([a, b]: Complex, x: number): Complex => [a * x, b * x];

/** One compilation for all numbers of a topology. */
const known = new WeakMap<Topology, CompiledTopology>();

/** What every probe of a network says at one frequency. */
function probesAt({ topology, values }: Network, f: number): ReadonlyMap<string, Complex> {
  const { slots, probes, network: made } = known.get(topology) ?? compile(topology);
  known.set(topology, { topology, slots, probes, network: made });
  const out = probes.map(() => complexColumn(1));
  if (made(valuesOf(slots, values)).sweep(Float64Array.of(f), out) >= 0) throw new Error(`nothing damps it at ${f} Hz`);
  return new Map(probes.map((name, i) => [name, [out[i]!.re[0]!, out[i]!.im[0]!]]));
}

/** What was swept near a network: its other probes are asked of the same changes. */
const swept = new WeakMap<Network, Map<string, ReadonlyMap<string, Complex>>>();

/** A probe at one frequency, with a number changed. */
function probeAt(network: Network, probe: string, f: number, one?: GradientNumber, number = 0): Complex {
  const near = swept.get(network) ?? new Map<string, ReadonlyMap<string, Complex>>();
  swept.set(network, near);
  const key = `${f} ${one?.name} ${number}`;
  const said = near.get(key) ?? probesAt(one ? withNumber(network, one, number) : network, f);
  near.set(key, said);
  return said.get(probe)!;
}

/** The network with another number as it stands in the equations. */
function withNumber(network: Network, { name, exponent }: GradientNumber, number: number): Network {
  if (network.values[name] !== undefined) return withValue(network, name, exponent === 1 ? number : 1 / number);
  const element = network.topology.elements.find((one) => name.startsWith(`${one.name}.`));
  if (element?.kind !== 'law' && element?.kind !== 'line') throw new Error(`no number '${name}'`);
  const place = element.parameters.indexOf(name.slice(element.name.length + 1));
  const own = network.values[element.name]!;
  const numbers = typeof own === 'number' ? [own] : own;
  return withValue(
    network,
    element.name,
    numbers.map((value, k) => (k === place ? number : value)),
  );
}

/** ∂probe/∂number: central differences of two widths; from zero upwards only. `scale` is how large the number might be. */
export function slopeByNumber(network: Network, probe: string, f: number, one: GradientNumber, scale: number): Complex {
  const at = (number: number) => probeAt(network, probe, f, one, number);
  if (one.number === 0) {
    // −11/6, 3, −3/2, 1/3: exact up to the cube.
    const h = 1e-3 * scale;
    const terms = [at(0), at(h), at(2 * h), at(3 * h)] as const;
    const weights = [-11 / 6, 3, -3 / 2, 1 / 3];
    return terms.reduce(([a, b]: Complex, [c, d], k) => [a + (weights[k]! * c) / h, b + (weights[k]! * d) / h], [0, 0]);
  }
  const quotient = (h: number) => by(minus(at(one.number + h), at(one.number - h)), 1 / (2 * h));
  const h = 1e-3 * Math.abs(one.number);
  return minus(by(quotient(h), 4 / 3), by(quotient(2 * h), 1 / 3));
}

/** ∂probe/∂ln f. */
export function slopeByFrequency(network: Network, probe: string, f: number): Complex {
  const at = (h: number) => probeAt(network, probe, f * Math.exp(h));
  const quotient = (h: number) => by(minus(at(h), at(-h)), 1 / (2 * h));
  return minus(by(quotient(1e-3), 4 / 3), by(quotient(2e-3), 1 / 3));
}
