import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { type Factor, multiply } from './column-arithmetic.js';
import { branchLaw, isBranch, type Network, type Probe } from './element.js';
import type { Equations, Signed } from './equations.js';
import type { ListedColumns } from './listed-columns.js';

/** What a probe reads: factor × symbol × s^power × the sum of some unknowns; symbol −1 stands for 1. */
export interface Reading {
  readonly unknowns: Signed;
  readonly symbol: number;
  readonly power: -1 | 0 | 1;
  readonly factor: number;
}

/** Turns a probe into what it reads of the unknowns. */
export function readingOf(network: Network, { nodes, flowUnknown }: Equations, probe: Probe): Reading {
  const factor = probe.factor ?? 1;
  const at = (node: string | undefined, sign: 1 | -1): Signed =>
    node === undefined || !nodes.includes(node) ? [] : [[nodes.indexOf(node), sign]];
  if (probe.of === 'potential') return { unknowns: at(probe.node, 1), symbol: -1, power: 0, factor };
  const symbol = network.elements.findIndex((element) => element.name === probe.element);
  const element = network.elements[symbol];
  const own = flowUnknown[symbol] ?? -1;
  if (own >= 0 || element === undefined) return { unknowns: [[own, 1]], symbol: -1, power: 0, factor };
  const [from, to] = element.kind === 'piston' ? element.mechanical : 'nodes' in element ? element.nodes : [];
  const power = isBranch(element) ? branchLaw[element.kind][1] : 0;
  return { unknowns: [...at(from, 1), ...at(to, -1)], symbol, power, factor };
}

/** What a reading multiplies its unknowns by, over a block of frequencies: one number, or a column that is made for each. */
export function readingWeight(
  { symbol, power, factor }: Reading,
  values: Float64Array,
  block: number,
): (frequencies: Float64Array, listed: readonly (ListedColumns | undefined)[]) => Factor {
  const value = symbol < 0 ? factor : factor * (values[symbol] as number);
  const column = complexColumn(symbol < 0 ? 0 : block);
  return (frequencies, listed) => {
    const table = listed[symbol]?.Y;
    if (table === undefined && power === 0) return value;
    if (table !== undefined) {
      multiply(column, factor, table, frequencies.length);
      return column;
    }
    for (let i = 0; i < frequencies.length; i++) {
      const omega = 2 * Math.PI * (frequencies[i] as number);
      column.im[i] = power === 1 ? value * omega : -value / omega;
    }
    return column;
  };
}

/** out ← weight × the sum of one or two columns, each with its sign, from `offset` on. */
export function fillReading(
  [one, two]: Signed,
  columns: readonly ComplexColumn[],
  weight: Factor,
  count: number,
  { re, im }: ComplexColumn,
  offset = 0,
): void {
  if (one === undefined) {
    re.fill(0, offset, offset + count);
    im.fill(0, offset, offset + count);
    return;
  }
  const { re: ar, im: ai } = columns[one[0]] as ComplexColumn;
  const { re: br, im: bi } = columns[(two ?? one)[0]] as ComplexColumn;
  const [a, b] = [one[1], two === undefined ? 0 : two[1]];
  if (typeof weight === 'number') {
    for (let i = 0; i < count; i++) {
      re[offset + i] = weight * (a * (ar[i] as number) + b * (br[i] as number));
      im[offset + i] = weight * (a * (ai[i] as number) + b * (bi[i] as number));
    }
    return;
  }
  for (let i = 0; i < count; i++) {
    const x = a * (ar[i] as number) + b * (br[i] as number);
    const y = a * (ai[i] as number) + b * (bi[i] as number);
    const c = weight.re[i] as number;
    const d = weight.im[i] as number;
    re[offset + i] = x * c - y * d;
    im[offset + i] = x * d + y * c;
  }
}
