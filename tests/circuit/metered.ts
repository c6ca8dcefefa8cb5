/** What a network's probes read, off the circuit simulator: each flow that is asked for runs through a meter. */
import { compile, type Network, type Nodes, type Reading } from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { type Numbered, networkOf, outletsOf, partsOf, probesOf } from '../arbitrary/network-of.js';
import { minus, type Swept, scaled } from './compare.js';
import { simulate } from './simulator.js';

const plain = (name: string) => name.replace(/[^A-Za-z0-9]+/g, '_').toLowerCase();

/** A meter in series with every element of two nodes whose flow is asked for. */
function metered(network: Network): Network {
  const asked = new Set(
    [...Object.values(network.topology.probes), ...network.topology.outlets.map(({ flow }) => flow)].flatMap((one) =>
      one.of === 'flow' ? [one.element] : [],
    ),
  );
  const parts = partsOf(network).flatMap((one): Numbered[] => {
    if (!asked.has(one.name) || !('nodes' in one) || one.kind === 'source' || one.kind === 'meter') return [one];
    const [from, to] = one.nodes;
    const behind = `behind ${one.name}`;
    const nodes: Nodes = [from, behind];
    return [{ ...one, nodes } as Numbered, { kind: 'meter', name: `through ${one.name}`, nodes: [behind, to] }];
  });
  return networkOf(parts, {}, []);
}

/** Every probe and the flow out of the whole system, from node voltages and branch currents. */
export async function simulatedProbes(
  network: Network,
  from: number,
  to: number,
  points: number,
): Promise<{ readonly frequencies: Float64Array; readonly columns: Swept }> {
  const run = await simulate(metered(network), from, to, points);
  const named = (name: string): ComplexColumn => {
    const column = run.get(name);
    if (column === undefined) throw new Error(`the simulator gave no ${name}: ${[...run.keys()].join(' ')}`);
    return column;
  };
  const frequencies = named('frequency').re;
  const none = () => complexColumn(frequencies.length);
  const potential = (node: string) => (node === 'ground' ? none() : named(`v(${plain(node)})`));
  const read = (reading: Reading): ComplexColumn => {
    const sign = reading.sign ?? 1;
    if (reading.of === 'potential') return scaled(potential(reading.node), sign);
    const element = partsOf(network).find(({ name }) => name === reading.element) as Numbered;
    const name = plain(element.name);
    if (element.kind === 'source') return scaled(named(`i(v_${name})`), -sign); // counted into the plus pole
    if (element.kind === 'meter') return scaled(named(`i(v_${name})`), sign);
    if (element.kind === 'motor') return scaled(named(`i(v_sense_${name})`), sign);
    if (element.kind !== 'piston') return scaled(named(`i(v_through_${name})`), sign);
    const [cone, frame] = element.mechanical.map(potential) as [ComplexColumn, ComplexColumn];
    return scaled(minus(cone, frame), sign * (element.values as number));
  };
  const probes = Object.entries(probesOf(network)).map(([name, probe]) => [name, scaled(read(probe), probe.by ?? 1)]);
  const leaving = outletsOf(network).map(({ flow, later = 0 }) => {
    const { re, im } = read(flow);
    const turned = complexColumn(frequencies.length);
    frequencies.forEach((f, i) => {
      const angle = 2 * Math.PI * f * later;
      turned.re[i] = re[i]! * Math.cos(angle) + im[i]! * Math.sin(angle);
      turned.im[i] = im[i]! * Math.cos(angle) - re[i]! * Math.sin(angle);
    });
    return turned;
  });
  const sum = leaving.reduce((all, one) => minus(all, scaled(one, -1)), none());
  const columns = Object.fromEntries([...probes, ...(leaving.length > 0 ? [['radiatedFlow', sum]] : [])]) as Swept;
  if (compile(network.topology).probes.some((name) => columns[name] === undefined)) throw new Error('a probe is lost');
  return { frequencies, columns };
}
