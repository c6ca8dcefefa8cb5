import {
  type BranchKind,
  branch,
  type ChainColumns,
  type Element,
  type Law,
  type Line,
  type Network,
  type Nodes,
  type Outlet,
  type Probe,
  type Reading,
  type Standing,
  type Values,
} from '@airspring/core/network';

/** An element with its numbers beside it. */
export type Numbered = Element & { readonly values?: number | readonly number[] };

/** A probe with the number that it is multiplied by. */
export type Scaled = Reading & { readonly by?: number };

/** An outlet with the time, s, by which it is heard later than the nearest. */
export type Heard = Omit<Outlet, 'delay'> & { readonly later?: number };

/** A branch with its number. */
export const part = (
  kind: BranchKind,
  name: string,
  nodes: Nodes,
  values: number,
  how: Parameters<typeof branch>[3] = {},
): Numbered => ({ ...branch(kind, name, nodes, how), values });

/** What fills a column: real and imaginary parts at each frequency in Hz. */
type Kernel = (frequencies: Float64Array, re: Float64Array, im: Float64Array) => void;

/** An element over frequency without any number: an admittance, or an impedance where that is said. */
export const listed = (name: string, nodes: Nodes, kernel: Kernel, stands: Standing = 'admittance'): Law => ({
  kind: 'law',
  name,
  nodes,
  stands,
  parameters: [],
  fill: (_values, _at, frequencies, { re, im }) => kernel(frequencies, re, im),
});

/** A line without any number, by its chain matrix. */
export const chained = (
  name: string,
  nodes: Nodes,
  chain: (frequencies: Float64Array, out: ChainColumns) => void,
): Line => ({
  kind: 'line',
  name,
  nodes,
  parameters: [],
  fill: (_values, _at, frequencies, out) => chain(frequencies, out),
});

/** A network from elements that carry their numbers: what tests write by hand. */
export function networkOf(
  numbered: readonly Numbered[],
  scaled: Readonly<Record<string, Scaled>> = {},
  heard: readonly Heard[] = [],
): Network {
  const values: Record<string, number | readonly number[]> = {};
  const elements = numbered.map(({ values: own, ...element }) => {
    if (own !== undefined) values[element.name] = own;
    return element as Element;
  });
  const probes: Record<string, Probe> = {};
  for (const [name, { by, ...reading }] of Object.entries(scaled)) {
    if (by === undefined) probes[name] = reading;
    else {
      probes[name] = { ...reading, factor: `factor of ${name}` };
      values[`factor of ${name}`] = by;
    }
  }
  const outlets = heard.map(({ later, ...outlet }): Outlet => {
    if (later === undefined) return outlet;
    values[`delay of ${outlet.name}`] = later;
    return { ...outlet, delay: `delay of ${outlet.name}` };
  });
  return { topology: { elements, probes, outlets }, values: values as Values };
}

/** The elements of a network, each with its numbers. */
export const partsOf = ({ topology, values }: Network): readonly Numbered[] =>
  topology.elements.map((element) => {
    const own = values[element.name];
    return own === undefined ? element : { ...element, values: own };
  });

/** The probes of a network, each with its factor. */
export const probesOf = ({ topology, values }: Network): Readonly<Record<string, Scaled>> =>
  Object.fromEntries(
    Object.entries(topology.probes).map(([name, { factor, ...reading }]) => [
      name,
      factor === undefined ? reading : { ...reading, by: values[factor] as number },
    ]),
  );

/** The outlets of a network, each with its delay. */
export const outletsOf = ({ topology, values }: Network): readonly Heard[] =>
  topology.outlets.map(({ delay, ...outlet }) =>
    delay === undefined ? outlet : { ...outlet, later: values[delay] as number },
  );

/** The same network with other elements: what is read of those that are gone is gone with them. */
export function withParts(network: Network, parts: readonly Numbered[]): Network {
  const there = new Set(parts.map(({ name }) => name));
  const isRead = (reading: Reading) => reading.of === 'potential' || there.has(reading.element);
  const probes = Object.entries(probesOf(network)).filter(([, probe]) => isRead(probe));
  return networkOf(
    parts,
    Object.fromEntries(probes),
    outletsOf(network).filter(({ flow }) => isRead(flow)),
  );
}

/** The same network with other probes. */
export const withProbes = (
  network: Network,
  probes: Readonly<Record<string, Scaled>>,
  outlets?: readonly Heard[],
): Network => networkOf(partsOf(network), probes, outlets ?? outletsOf(network));

/** The same topology with one number, or several of one name, changed. */
export const withValue = ({ topology, values }: Network, name: string, value: number | readonly number[]): Network => ({
  topology,
  values: { ...values, [name]: value },
});
