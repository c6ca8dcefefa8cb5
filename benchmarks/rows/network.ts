import { closedBox, ventedBox } from '../../packages/core/src/enclosure/index.js';
import {
  branch,
  compileGradient,
  compilePlan,
  compileTopology,
  type Element,
  elementValues,
  gradientColumns,
  type Network,
} from '../../packages/core/src/network/index.js';
import { complexColumn } from '../../packages/core/src/numeric/index.js';
import { si } from '../../packages/core/src/quantity/index.js';
import { cutoff, cutoffGradient, levelGradient } from '../../packages/core/src/response/index.js';
import { sensitivity } from '../../packages/core/src/tolerance/index.js';
import { frequencies, networkB, POINTS, polynomials, system } from '../box.js';
import { runRow } from '../measure.js';

const grid = frequencies(POINTS);

/** A tube as a chain of so many masses and springs of air, half an element each, open at its end. */
function chain(elements: number): Network {
  const node = (k: number) => (k < 0 ? 'drive' : `node ${k}`);
  const pairs = Array.from({ length: elements / 2 }, (_, k): Element[] => [
    branch('acousticMass', `mass ${k}`, [node(k - 1), node(k)], 20 / elements),
    branch('acousticCompliance', `spring ${k}`, [node(k), 'ground'], 1e-5 / elements),
  ]);
  const end = branch('acousticResistance', 'end', [node(elements / 2 - 1), 'ground'], 500);
  const elementsOf: Element[] = [{ kind: 'source', name: 'drive', nodes: ['drive', 'ground'] }, ...pairs.flat(), end];
  return { elements: elementsOf, probes: { end: { of: 'flow', element: 'end' } } };
}

function planSweep(network: Network, at: Float64Array) {
  const plan = compilePlan(network);
  const out = plan.probes.map(() => complexColumn(at.length));
  if (plan.sweep(at, out) >= 0) throw new Error('undamped');
  return () => plan.sweep(at, out);
}

function gradientSweep(at: Float64Array) {
  const gradient = compileGradient(networkB, 'radiatedFlow');
  const out = gradientColumns(gradient, at.length);
  return () => gradient.sweep(at, out);
}

const one = Float64Array.of(30);
const drivers = system.spec.drivers;
const inputs = { netVolume: 0.06, fb: 28, QL: 7, QA: 50, QP: 60 };
const make = ({ netVolume, fb, QL, QA, QP }: typeof inputs) =>
  ventedBox({ drivers, netVolume: si('volume', netVolume), fb: si('frequency', fb), QL, QA, QP });

await runRow({
  ...Object.fromEntries(
    [10, 20, 50, 100].flatMap((count) => [
      [`chain-${count}`, () => ({ call: planSweep(chain(count), grid), per: count })],
      [`chain-plan-${count}`, () => ({ call: () => compilePlan(chain(count)), per: count })],
    ]),
  ),
  'topology-closed': () => {
    const { network } = closedBox({ drivers, netVolume: '40 L' });
    return { call: () => compileTopology(network) };
  },
  'topology-vented': () => ({ call: () => compileTopology(networkB) }),
  'plan-vented': () => ({ call: () => compilePlan(networkB) }),
  coefficients: () => {
    const { topology, coefficients } = polynomials(networkB);
    const values = elementValues(networkB.elements);
    return { call: () => topology.coefficients(values, coefficients) };
  },
  'sweep-500': () => ({ call: planSweep(networkB, grid) }),
  'gradient-500': () => {
    return { call: gradientSweep(grid) };
  },
  'sweep-1': () => ({ call: planSweep(networkB, one) }),
  'gradient-1': () => {
    return { call: gradientSweep(one) };
  },
  'sweep-door': () => ({ call: () => planSweep(networkB, one)() }),
  'gradient-door': () => ({ call: () => levelGradient(system, si('frequency', 30)) }),
  cutoff: () => ({ call: () => cutoff(system) }),
  'gradient-cutoff': () => ({ call: () => cutoffGradient(system) }),
  sensitivity: () => ({ call: () => sensitivity(make, inputs, (made) => levelGradient(made, si('frequency', 30))) }),
});
