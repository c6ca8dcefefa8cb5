import { InputError } from '../fault/index.js';
import { branch, type Element, type Topology } from './element.js';

/** An element with two nodes of its own that one flow runs through. */
const isTwoEnded = (element: Element | undefined): element is Exclude<Element, { kind: 'motor' | 'piston' }> =>
  element !== undefined && 'nodes' in element;

/**
 * The same topology with an acoustic resistance behind one of its elements, through which the flow of the element runs. Its value is
 * set by its name; with 0 the network is what it was.
 *
 * @validity an acoustic element between two nodes
 * @throws InputError `empty` for an element that is not there, `conflict` for a name that is taken
 * @returns a topology
 * @source own (composition)
 * @example withSeriesResistance(system.network.topology, 'vent', 'jets')
 */
export function withSeriesResistance(topology: Topology, of: string, name: string): Topology {
  const element = topology.elements.find((one) => one.name === of);
  const remedy = 'Name an acoustic element between two nodes, such as the vent.';
  if (!isTwoEnded(element)) {
    const expected = `one of ${topology.elements
      .filter(isTwoEnded)
      .map((one) => one.name)
      .join(', ')}`;
    throw new InputError([{ code: 'empty', path: 'of', got: of, expected, remedy }]);
  }
  if (topology.elements.some((one) => one.name === name)) {
    const expected = 'a name that no element has';
    throw new InputError([{ code: 'conflict', path: 'name', got: name, expected, remedy: 'Choose another name.' }]);
  }
  const [from, to] = element.nodes;
  const between = `${of} ${name}`;
  const behind = branch('acousticResistance', name, [between, to], { stands: 'impedance' });
  const elements = topology.elements.flatMap((one): Element[] =>
    one === element ? [{ ...element, nodes: [from, between] }, behind] : [one],
  );
  return { ...topology, elements };
}
