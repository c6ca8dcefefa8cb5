import { branchLaw, type Element, isBranch, type Network } from './element.js';
import { nodesOf } from './equations.js';
import { numberedEquations } from './numbered-equations.js';

/** A number as circuit simulators read it: with all digits and no suffix. */
const exact = (value: number) => value.toExponential(16);

/** Marks a name made here, so that it differs from every name of the network. */
const OURS = '\0';

/** Names for circuit simulators, which ignore case and allow no special characters. Names that would become equal are numbered. */
function plainNames(names: Iterable<string>): ReadonlyMap<string, string> {
  const plain = new Map<string, string>();
  const taken = new Set(['0', 'gnd']);
  for (const name of new Set(names)) {
    const stem = name.replace(OURS, '').replace(/[^A-Za-z0-9]+/g, '_');
    let own = stem;
    for (let n = 2; taken.has(own.toLowerCase()); n++) own = `${stem}_${n}`;
    taken.add(own.toLowerCase());
    plain.set(name, own);
  }
  return plain;
}

function lines(
  element: Element,
  numbers: readonly number[],
  plain: (name: string) => string,
  node: (name: string) => string,
): readonly string[] {
  const [number = 0] = numbers;
  const name = plain(element.name);
  if (isBranch(element)) {
    const [a, b] = element.nodes.map(node);
    const [exponent, power] = branchLaw[element.kind];
    // Admittance value^±1 · s^power is a capacitor, resistor or inductor of that value or its inverse.
    const letter = power === 1 ? 'C' : power === 0 ? 'R' : 'L';
    const value = power === 0 && exponent === 1 ? 1 / number : number;
    // A short is a source of 0 V; an element without effect gets no line.
    if (value === (letter === 'C' ? Infinity : 0)) return [`V_${name}_short ${a} ${b} 0`];
    if (value === Infinity || value === 0) return [`* ${name}: nothing`];
    return [`${letter}_${name} ${a} ${b} ${exact(value)}`];
  }
  if (element.kind === 'source' || element.kind === 'meter') {
    const [a, b] = element.nodes.map(node);
    return [element.kind === 'source' ? `V_${name} ${a} ${b} DC 0 AC 1` : `V_${name} ${a} ${b} 0`];
  }
  if (element.kind === 'motor') {
    const [a, b] = element.electrical.map(node);
    const [u, v] = element.mechanical.map(node);
    const sense = plain(sensor(element));
    // Voltage = Bl × velocity behind a 0 V source that senses the current; force = Bl × that current.
    return [
      `V_${sense} ${a} ${node(sensed(element))} 0`,
      `E_${name} ${node(sensed(element))} ${b} ${u} ${v} ${exact(number)}`,
      `F_${name} ${v} ${u} V_${sense} ${exact(number)}`,
    ];
  }
  if (element.kind === 'piston') {
    const [u, v] = element.mechanical.map(node);
    const front = node(element.front);
    const rear = node(element.rear);
    return [
      `G_${name}_flow ${rear} ${front} ${u} ${v} ${exact(number)}`,
      `G_${name}_force ${u} ${v} ${front} ${rear} ${exact(number)}`,
    ];
  }
  if (element.netlist !== undefined) {
    return element.netlist(numbers, name, [node(element.nodes[0]), node(element.nodes[1])]);
  }
  const instead = element.kind === 'law' && element.like ? '; its lumpedFit can be written' : '';
  return [`* ${name}: given over frequency, not written${instead}`];
}

/** The node between a motor's voltage source and the source that senses its current. */
const sensed = (element: Element) => `sensed ${element.name}${OURS}`;
const sensor = (element: Element) => `sense ${element.name}${OURS}`;

/**
 * The network as netlist text for a circuit simulator, all nodes grounded as in {@link Element}: velocities and pressures
 * come out as voltages. Append an `.ac` line and `.end`. It gives an independent check of every number of a sweep. The option in
 * the text skips the operating point, which does not exist for a box that is closed by air alone.
 *
 * @validity lumped elements, and elements over frequency that give lines of their own; any other element becomes a comment
 * @neglects nothing of lumped elements
 * @returns lines of text, the title first
 * @throws InputError for a network without meaning
 * @source desoer1969 (controlled sources for transformers and gyrators)
 * @example `${netlist(closedBox({ drivers, netVolume: '40 L' }).network)}\n.ac dec 20 10 1000\n.end`
 */
export function netlist(network: Network, title = 'airspring network'): string {
  const { topology, slots, values } = numberedEquations(network);
  const { elements } = topology;
  const motors = elements.filter(({ kind }) => kind === 'motor');
  const nodes = plainNames([...elements.flatMap(nodesOf).filter((node) => node !== 'ground'), ...motors.map(sensed)]);
  const names = plainNames([...elements.map((element) => element.name), ...motors.map(sensor)]);
  const node = (name: string) => nodes.get(name) ?? '0';
  const written = elements.flatMap((element) => {
    const { at, count } = slots.of.get(element.name) ?? { at: 0, count: 0 };
    const numbers = [...values.subarray(at, at + count)];
    return lines(element, numbers, (name) => names.get(name) as string, node);
  });
  return [title.replace(/\s+/g, ' '), ...written, '.options noopac'].join('\n');
}
