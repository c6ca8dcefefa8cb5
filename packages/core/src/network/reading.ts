import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { addScaled, type Factor, multiply } from './column-arithmetic.js';
import { isBranch, type Reading, type Topology } from './element.js';
import type { Equations, Signed } from './equations.js';
import type { ListedColumns } from './listed-columns.js';
import type { Form, Slots } from './slots.js';

/** One part of what a probe reads: sign × number of the symbol × s^power × the sum of some unknowns, later by a delay. */
export interface ReadTerm {
  readonly unknowns: Signed;
  /** Place of an element; −1 stands for 1. */
  readonly symbol: number;
  readonly power: -1 | 0 | 1;
  readonly sign: 1 | -1;
  /** Slot of the delay, or −1. */
  readonly delay: number;
}

/** What a probe reads: a sum of terms, times the number of a slot. */
export interface ProbeRow {
  readonly name: string;
  readonly terms: readonly ReadTerm[];
  /** Slot of the factor, or −1. */
  readonly factor: number;
}

/** The flow out of the whole system: the sum over its outlets. */
export const RADIATED_FLOW = 'radiatedFlow';

/** What each probe reads from the unknowns: the flow out of the system first, then the probes of the topology. */
export function probeRows(topology: Topology, equations: Equations, slots: Slots): readonly ProbeRow[] {
  const place = (slot: string | undefined): number => (slot === undefined ? -1 : (slots.of.get(slot)?.at ?? -1));
  const sum = topology.outlets.map(({ flow, delay }) => readTerm(topology, equations, flow, place(delay)));
  return [
    ...(sum.length > 0 ? [{ name: RADIATED_FLOW, terms: sum, factor: -1 }] : []),
    ...Object.entries(topology.probes).map(([name, probe]) => ({
      name,
      terms: [readTerm(topology, equations, probe, -1)],
      factor: place(probe.factor),
    })),
  ];
}

function readTerm({ elements }: Topology, equations: Equations, reading: Reading, delay: number): ReadTerm {
  const { nodes, flowUnknown, forms } = equations;
  const { sign = 1 } = reading;
  const at = (node: string | undefined, turn: 1 | -1): Signed =>
    node === undefined || !nodes.includes(node) ? [] : [[nodes.indexOf(node), turn]];
  if (reading.of === 'potential') return { unknowns: at(reading.node, 1), symbol: -1, power: 0, sign, delay };
  const symbol = elements.findIndex((element) => element.name === reading.element);
  const element = elements[symbol];
  const own = flowUnknown[symbol] ?? -1;
  if (own >= 0 || element === undefined) return { unknowns: [[own, 1]], symbol: -1, power: 0, sign, delay };
  const [from, to] = element.kind === 'piston' ? element.mechanical : 'nodes' in element ? element.nodes : [];
  const power = isBranch(element) ? (forms[symbol] as Form).power : 0;
  return { unknowns: [...at(from, 1), ...at(to, -1)], symbol, power, sign, delay };
}

/** What multiplies the unknowns of a term, over a block of frequencies: one number, or a column made for each block. */
export function termWeight(
  { symbol, power, sign, delay }: ReadTerm,
  block: number,
): (
  frequencies: Float64Array,
  numbers: Float64Array,
  values: Float64Array,
  listed: readonly (ListedColumns | undefined)[],
) => Factor {
  const column = complexColumn(block);
  return (frequencies, numbers, values, listed) => {
    const table = listed[symbol]?.law;
    const number = sign * (symbol < 0 || table !== undefined ? 1 : numbers[symbol]!);
    if (table === undefined && power === 0 && delay < 0) return number;
    const count = frequencies.length;
    const { re, im } = column;
    for (let i = 0; i < count; i++) {
      const omega = 2 * Math.PI * frequencies[i]!;
      re[i] = power === 0 ? number : 0;
      im[i] = power === 0 ? 0 : power === 1 ? number * omega : -number / omega;
    }
    if (table !== undefined) multiply(column, column, table, count);
    if (delay >= 0) turnByDelay(column, frequencies, values[delay]!);
    return column;
  };
}

/** z ← z e^(−jωτ). */
export function turnByDelay({ re, im }: ComplexColumn, frequencies: Float64Array, delay: number): void {
  for (let i = 0; i < frequencies.length; i++) {
    const angle = 2 * Math.PI * frequencies[i]! * delay;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const [a, b] = [re[i]!, im[i]!];
    re[i] = a * c + b * s;
    im[i] = b * c - a * s;
  }
}

/** out ← weight × the sum of one or two columns, each with its sign, from `offset` on; or out ← out + that. */
export function fillReading(
  [one, two]: Signed,
  columns: readonly ComplexColumn[],
  weight: Factor,
  count: number,
  { re, im }: ComplexColumn,
  offset = 0,
  added = false,
): void {
  if (!added) {
    re.fill(0, offset, offset + count);
    im.fill(0, offset, offset + count);
  }
  if (one === undefined) return;
  const isNumber = typeof weight === 'number';
  if (isNumber && two === undefined) {
    addScaled({ re, im }, columns[one[0]] as ComplexColumn, one[1] * weight, count, offset);
    return;
  }
  const { re: ar, im: ai } = columns[one[0]] as ComplexColumn;
  const { re: br, im: bi } = columns[(two ?? one)[0]] as ComplexColumn;
  const [a, b] = [one[1], two === undefined ? 0 : two[1]];
  const [wr, wi] = isNumber ? [re, im] : [weight.re, weight.im];
  for (let i = 0; i < count; i++) {
    const x = a * ar[i]! + b * br[i]!;
    const y = a * ai[i]! + b * bi[i]!;
    const c = isNumber ? weight : wr[i]!;
    const d = isNumber ? 0 : wi[i]!;
    re[offset + i]! += x * c - y * d;
    im[offset + i]! += x * d + y * c;
  }
}
