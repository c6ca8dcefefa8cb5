import { closedBox, type DriverNet, mixedBox, ventedBox } from '../../packages/core/src/enclosure/index.js';
import { lowestSafeFrequency, travelLimit } from '../../packages/core/src/limit/index.js';
import {
  branch,
  compile,
  compileGradient,
  compileNetwork,
  compilePlan,
  compilePolynomials,
  type Element,
  gradientColumns,
  type Network,
  valuesOf,
} from '../../packages/core/src/network/index.js';
import { complexColumn } from '../../packages/core/src/numeric/index.js';
import { si } from '../../packages/core/src/quantity/index.js';
import { cutoff, cutoffGradient, features, levelGradient } from '../../packages/core/src/response/index.js';
import { sensitivity } from '../../packages/core/src/tolerance/index.js';
import { frequencies, networkB, POINTS, system, twoLossyCoils } from '../box.js';
import { COMPILING, runRow } from '../measure.js';

const grid = frequencies(POINTS);

/** A tube as a chain of so many masses and springs of air, half an element each, open at its end. */
function chain(elements: number): Network {
  const node = (k: number) => (k < 0 ? 'drive' : `node ${k}`);
  const pairs = Array.from({ length: elements / 2 }, (_, k): Element[] => [
    branch('acousticMass', `mass ${k}`, [node(k - 1), node(k)]),
    branch('acousticCompliance', `spring ${k}`, [node(k), 'ground']),
  ]);
  const numbers = Array.from({ length: elements / 2 }, (_, k) => [
    [`mass ${k}`, 20 / elements],
    [`spring ${k}`, 1e-5 / elements],
  ]);
  const end = branch('acousticResistance', 'end', [node(elements / 2 - 1), 'ground']);
  return {
    topology: {
      elements: [{ kind: 'source', name: 'drive', nodes: ['drive', 'ground'] }, ...pairs.flat(), end],
      probes: { end: { of: 'flow', element: 'end' } },
      outlets: [],
    },
    values: { ...Object.fromEntries(numbers.flat()), end: 500 },
  };
}

function planSweep(network: Network, at: Float64Array) {
  const { slots, probes, network: made } = compilePlan(network.topology);
  const { sweep } = made(valuesOf(slots, network.values));
  const out = probes.map(() => complexColumn(at.length));
  if (sweep(at, out) >= 0) throw new Error('undamped');
  return () => sweep(at, out);
}

function gradientSweep(at: Float64Array) {
  const gradient = compileGradient(networkB, 'radiatedFlow');
  const out = gradientColumns(gradient, at.length);
  return () => gradient.sweep(at, out);
}

/** By whichever road is chosen, compiled once. */
function sweepOf(network: Network) {
  const { probes, sweep } = compileNetwork(network);
  const out = probes.map(() => complexColumn(POINTS));
  return () => sweep(grid, out);
}

/** Several vented chambers, each with a driver of its own. */
const chambers = (count: number) =>
  mixedBox({
    drivers: {
      parallel: Array.from(
        { length: count },
        (_, k): DriverNet => ({ name: `${k}`, driver: drivers.driver, chamber: `box ${k}` }),
      ),
    },
    chambers: Object.fromEntries(
      Array.from({ length: count }, (_, k) => [
        `box ${k}`,
        {
          netVolume: si('volume', 0.03 + 0.01 * k),
          fb: si('frequency', 28 + 4 * k),
          QL: 7,
          ventArea: si('area', 0.005),
        },
      ]),
    ),
  });

const drive = { driveVoltageRms: si('voltageRms', 20) };
const one = Float64Array.of(30);
const drivers = system.spec.drivers;
const limits = travelLimit({ ...drivers.driver, Xmax: si('displacementPeak', 0.009) });
const inputs = { netVolume: 0.06, fb: 28, QL: 7, QA: 50, QP: 60 };
const make = ({ netVolume, fb, QL, QA, QP }: typeof inputs) =>
  ventedBox({ drivers, netVolume: si('volume', netVolume), fb: si('frequency', fb), QL, QA, QP });

await runRow({
  ...Object.fromEntries(
    [10, 20, 50, 100].flatMap((count) => [
      [`chain-${count}`, () => ({ call: planSweep(chain(count), grid), per: count })],
      [`chain-plan-${count}`, () => ({ call: () => compilePlan(chain(count).topology), per: count })],
    ]),
  ),
  'topology-closed': () => {
    const { topology } = closedBox({ drivers, netVolume: '40 L' }).network;
    return { call: () => compilePolynomials(topology), warming: COMPILING };
  },
  'topology-vented': () => ({ call: () => compilePolynomials(networkB.topology), warming: COMPILING }),
  'plan-vented': () => ({ call: () => compilePlan(networkB.topology), warming: COMPILING }),
  coefficients: () => {
    const { slots, network } = compile(networkB.topology);
    const values = valuesOf(slots, networkB.values);
    const { load } = network(values);
    return { call: () => load(values) };
  },
  ...Object.fromEntries(
    ([2, 3] as const).map((count) => [
      `compile-${count}-chambers`,
      () => {
        const { topology } = chambers(count).network;
        return { call: () => compile(topology), warming: COMPILING };
      },
    ]),
  ),
  features: () => ({ call: () => features(system) }),
  'safe-frequency': () => ({ call: () => lowestSafeFrequency(system, limits, drive) }),
  'coils-sweep': () => ({ call: sweepOf(twoLossyCoils.network) }),
  'plain-sweep': () => ({ call: sweepOf(networkB) }),
  'coils-features': () => ({ call: () => features(twoLossyCoils) }),
  'coils-safe-frequency': () => ({ call: () => lowestSafeFrequency(twoLossyCoils, limits, drive) }),
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
