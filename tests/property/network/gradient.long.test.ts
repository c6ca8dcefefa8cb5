/** Gradients by the adjoint: against differences, and against what dimensions alone demand of them. */
import {
  type BranchKind,
  compile,
  compilePlan,
  losslessLine,
  type Network,
  probeGradient,
  valuesOf,
} from '@airspring/core/network';
import { probeColumns } from '@airspring/core/response';
import { expect } from 'vitest';
import { bassFrequency, systemArbitrary } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { anyNetworkArbitrary, ladderArbitrary } from '../../arbitrary/network.js';
import {
  type Numbered,
  networkOf,
  outletsOf,
  partsOf,
  probesOf,
  withProbes,
  withValue,
} from '../../arbitrary/network-of.js';
import { fc, test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

type Complex = { readonly re: number; readonly im: number };
const size = ({ re, im }: Complex) => Math.hypot(re, im);
const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
const by = ({ re, im }: Complex, factor: number): Complex => ({ re: re * factor, im: im * factor });

/** By the name of a slot, or of a parameter in it: `tube.delay`. */
function changed(network: Network, name: string, factor: number): Network {
  const own = network.values[name];
  if (own !== undefined) return withValue(network, name, (own as number) * factor);
  const element = network.topology.elements.find((one) => name.startsWith(`${one.name}.`));
  if (element?.kind !== 'line' && element?.kind !== 'law') throw new Error(`no number '${name}'`);
  const place = element.parameters.indexOf(name.slice(element.name.length + 1));
  const numbers = network.values[element.name] as readonly number[];
  return withValue(
    network,
    element.name,
    numbers.map((value, k) => (k === place ? value * factor : value)),
  );
}
/** What can be asked of a network, the flow out of it included. */
const probesIn = (network: Network) => compile(network.topology).probes;

/** Central differences of two widths, the square of the width taken out. */
function differences(network: Network, f: number) {
  const names = probesIn(network);
  // By elimination, as gradients are: differences of polynomials lose digits beside sharp resonances.
  const compiled = compilePlan(network.topology);
  const at = ({ values }: Network, f: number): Complex[] => {
    const columns = probeColumns(compiled.network(valuesOf(compiled.slots, values)), Float64Array.of(f));
    return names.map((name) => ({ re: columns[name]!.re[0]!, im: columns[name]!.im[0]! }));
  };
  const slope = (change: (factor: number) => Complex[]) => {
    const quotient = (h: number) => {
      const [above, below] = [change(Math.exp(h)), change(Math.exp(-h))];
      return above.map((value, i) => by(minus(value, below[i]!), 1 / (2 * h)));
    };
    const [wide, narrow] = [quotient(2e-3), quotient(1e-3)];
    return narrow.map((value, i) => by(minus(by(value, 4), wide[i]!), 1 / 3));
  };
  return {
    byElement: (name: string) => slope((factor) => at(changed(network, name, factor), f)),
    byFrequency: () => slope((factor) => at(network, f * factor)),
  };
}

function compared(network: Network, f: number) {
  const expected = differences(network, f);
  const found = probesIn(network).map((name) => probeGradient(network, name, f)!);
  // What rounding and the fourth power of the width leave of a difference, beside sharp resonances too.
  const floor = found.map(({ value, byElement, byFrequency }) =>
    Math.max(size(value), size(byFrequency), ...Object.values(byElement).map(size)),
  );
  const alike = (got: (i: number) => Complex, want: Complex[], what: string) =>
    want.forEach((one, i) => expect(size(minus(got(i), one)), what).toBeLessThan(2e-7 * floor[i]!));
  alike((i) => found[i]!.byFrequency, expected.byFrequency(), 'frequency');
  for (const name of Object.keys(found[0]!.byElement)) {
    alike((i) => found[i]!.byElement[name]!, expected.byElement(name), name);
  }
}

test.prop([ladderArbitrary, fc.double({ min: 20, max: 500, noNaN: true })], { numRuns: 40 })(
  'ladders: by every element and by frequency',
  ({ network }, f) => compared(network, f),
);
test.prop([systemArbitrary, bassFrequency], { numRuns: 25 })(
  'boxes: by every element and by frequency',
  ({ network }, f) => compared(network, f),
);
test.prop([systemArbitrary, bassFrequency], { numRuns: 15 })(
  'with a line and an admittance in it',
  ({ network }, f) => {
    const parts = partsOf(network).map((element): Numbered => {
      if (element.name === 'vent' && element.kind === 'acousticMass')
        return { ...losslessLine('vent', element.nodes), values: [3e5, 1.3e-3] };
      if (element.name !== 'Rms' || element.kind !== 'damper') return element;
      return {
        kind: 'law',
        name: 'Rms',
        nodes: element.nodes,
        stands: 'admittance',
        parameters: ['at30', 'exponent'],
        values: [element.values as number, 0.5],
        fill: (values, at, frequencies, { re, im }) =>
          frequencies.forEach((f, i) => {
            re[i] = values[at]! * (f / 30) ** values[at + 1]!;
            im[i] = 0.1 * re[i]!;
          }),
      };
    });
    const lost = { of: 'flow', element: 'Rms' } as const;
    compared(networkOf(parts, { ...probesOf(network), lost }, outletsOf(network)), f);
  },
);

/** Powers of metre, kilogram, second, ampere. */
const units: Readonly<Record<BranchKind | 'motor' | 'piston', readonly number[]>> = {
  resistor: [2, 1, -3, -2],
  inductor: [2, 1, -2, -2],
  capacitor: [-2, -1, 4, 2],
  mass: [0, 1, 0, 0],
  spring: [0, -1, 2, 0],
  damper: [0, 1, -1, 0],
  acousticMass: [-4, 1, 0, 0],
  acousticCompliance: [4, -1, 2, 0],
  acousticResistance: [-4, 1, -1, 0],
  motor: [1, 1, -2, -1],
  piston: [2, 0, 0, 0],
};
const volt = [2, 1, -3, -1];
test.prop([systemArbitrary, bassFrequency])(
  'sum rules: as a value has its unit from those of its elements, so have its slopes',
  ({ network: given }, f) => {
    const { elements } = given.topology;
    const network = withProbes(given, {
      flow: { of: 'flow', element: 'Cab' },
      velocity: { of: 'potential', node: 'cone' },
      current: { of: 'flow', element: 'drive' },
      pressure: { of: 'potential', node: 'box' },
    });
    const own = { flow: [3, 0, -1, 0], velocity: [1, 0, -1, 0], current: [0, 0, 0, 1], pressure: [-1, 1, -2, 0] };
    for (const [name, unit] of Object.entries(own)) {
      const { value, byElement, byFrequency } = probeGradient(network, name, f)!;
      const terms = Object.values(byElement).map(size);
      for (const base of [0, 1, 2, 3]) {
        const sum = elements.reduce(
          (sum: Complex, element) => {
            const slope = byElement[element.name];
            const power = units[element.kind as BranchKind]?.[base] ?? 0;
            return slope === undefined ? sum : { re: sum.re + power * slope.re, im: sum.im + power * slope.im };
          },
          by(byFrequency, base === 2 ? -1 : 0),
        );
        const expected = by(value, unit[base]! - volt[base]!);
        expect(size(minus(sum, expected)), `${name} ${base}`).toBeLessThan(1e-9 * Math.max(size(value), ...terms));
      }
    }
  },
);

test.prop([anyNetworkArbitrary, fc.double({ min: 1e-4, max: 1e7, noNaN: true })], { numRuns: fuzzRuns })(
  'any network has a gradient of numbers, or none',
  (network, f) => {
    answered(() => {
      for (const name of probesIn(network)) allFinite(probeGradient(network, name, f));
    });
  },
);
