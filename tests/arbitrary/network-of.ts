import type { Element, Network, Outlet, Probe, Reading, Values } from '@airspring/core/network';

/** An element with its numbers beside it. */
export type Numbered = Element & { readonly values?: number | readonly number[] };

/** A probe with the number that it is multiplied by. */
export type Scaled = Reading & { readonly by?: number };

/** A network from elements that carry their numbers: what tests write by hand. */
export function networkOf(
  numbered: readonly Numbered[],
  scaled: Readonly<Record<string, Scaled>>,
  outlets: readonly Outlet[] = [],
): Network {
  const values: Record<string, number | readonly number[]> = {};
  const elements = numbered.map(({ values: own, ...element }) => {
    if (own !== undefined) values[element.name] = own;
    return element as Element;
  });
  const probes: Record<string, Probe> = {};
  for (const [name, { by, ...reading }] of Object.entries(scaled)) {
    if (by === undefined || by === 1) probes[name] = reading;
    else {
      probes[name] = { ...reading, factor: `factor of ${name}` };
      values[`factor of ${name}`] = by;
    }
  }
  return { topology: { elements, probes, outlets }, values: values as Values };
}
