import { factorComplexMatrix, solveComplexFactored } from '../numeric/index.js';
import { branchLaw, isBranch, type Network } from './element.js';
import { equations, refuseBadNetwork, symbolValue } from './equations.js';
import { type ComplexColumn, complexColumn } from './sweep.js';

/**
 * Elimination plan: any network, solved at each frequency with guarded pivots.
 *
 * Fills a column for each probe, per volt of drive. Where no pivot is left, at a resonance that nothing damps,
 * it stops and returns that index; else −1. Writes into columns handed in and allocates nothing per frequency.
 */
export interface Plan {
  readonly probes: readonly string[];
  readonly sweep: (frequencies: Float64Array, out: readonly ComplexColumn[]) => number;
}

/**
 * Prepares the elimination of a network, distributed and frequency-dependent elements included. Slower than
 * `compileTopology`, and a second road to the same numbers.
 *
 * @validity any network with a way to ground for each node
 * @neglects nothing
 * @throws InputError for a network without meaning
 * @source desoer1969 ch. 10
 * @check network.plan
 */
export function compilePlan(network: Network): Plan {
  refuseBadNetwork(network);
  const { elements } = network;
  const { size: n, nodes, stamps, driven, flowUnknown } = equations(network);
  const values = Float64Array.from(elements, symbolValue);
  const listed = elements.flatMap((element, symbol) => (element.kind === 'admittance' ? [{ element, symbol }] : []));
  const probes = Object.entries(network.probes).map(([name, probe]) => {
    const symbol = probe.of === 'flow' ? elements.findIndex(({ name }) => name === probe.element) : -1;
    const element = elements[symbol];
    const own = flowUnknown[symbol] ?? -1;
    const pair =
      probe.of === 'potential'
        ? [probe.node, 'ground']
        : element?.kind === 'piston'
          ? element.mechanical
          : element?.kind === 'motor' || element?.kind === 'source' || element === undefined
            ? []
            : element.nodes;
    const [plus, minus] = own >= 0 ? [own, -1] : pair.map((node) => nodes.indexOf(node));
    const power = own < 0 && element !== undefined && isBranch(element) ? branchLaw[element.kind][1] : 0;
    const weight = (probe.factor ?? 1) * (own >= 0 || symbol < 0 ? 1 : (values[symbol] as number));
    const list = own < 0 ? listed.findIndex((entry) => entry.symbol === symbol) : -1;
    return { name, plus: plus ?? -1, minus: minus ?? -1, power, weight, list };
  });

  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number => {
    const re = new Float64Array(n * n);
    const im = new Float64Array(n * n);
    const xr = new Float64Array(n);
    const xi = new Float64Array(n);
    const exchanges = new Int32Array(n);
    const tables = listed.map(({ element }) => {
      const table = complexColumn(frequencies.length);
      element.admittance(frequencies, table.re, table.im);
      return table;
    });
    const tableOf = elements.map((_, symbol) => listed.findIndex((entry) => entry.symbol === symbol));
    for (let i = 0; i < frequencies.length; i++) {
      const w = 2 * Math.PI * (frequencies[i] as number);
      re.fill(0);
      im.fill(0);
      xr.fill(0);
      xi.fill(0);
      for (let k = 0; k < stamps.length; k++) {
        const { row, column, sign, symbol, power } = stamps[k] as (typeof stamps)[number];
        const place = row * n + column;
        const table = symbol < 0 ? undefined : tables[tableOf[symbol] as number];
        if (table !== undefined) {
          (re[place] as number) += sign * (table.re[i] as number);
          (im[place] as number) += sign * (table.im[i] as number);
          continue;
        }
        const value = symbol < 0 ? sign : sign * (values[symbol] as number);
        if (power === 0) (re[place] as number) += value;
        else (im[place] as number) += power === 1 ? w * value : -value / w;
      }
      for (let k = 0; k < driven.length; k++) xr[driven[k] as number] = 1;
      balance(n, re, im, xr);
      if (factorComplexMatrix(n, re, im, exchanges) < 1e-14) return i;
      solveComplexFactored(n, re, im, exchanges, xr, xi, 1);
      for (let p = 0; p < probes.length; p++) {
        const { plus, minus, power, weight, list } = probes[p] as (typeof probes)[number];
        let a = weight * ((plus < 0 ? 0 : (xr[plus] as number)) - (minus < 0 ? 0 : (xr[minus] as number)));
        let b = weight * ((plus < 0 ? 0 : (xi[plus] as number)) - (minus < 0 ? 0 : (xi[minus] as number)));
        if (list >= 0) {
          const table = tables[list] as ComplexColumn;
          [a, b] = [a * table.re[i]! - b * table.im[i]!, a * table.im[i]! + b * table.re[i]!];
        } else if (power === 1) [a, b] = [-b * w, a * w];
        else if (power === -1) [a, b] = [b / w, -a / w];
        const { re: toRe, im: toIm } = out[p] as ComplexColumn;
        toRe[i] = a;
        toIm[i] = b;
      }
    }
    return -1;
  };
  return { probes: probes.map((probe) => probe.name), sweep };
}

/** Divides each row by its largest entry: ohms and acoustic compliances differ by ten powers of ten, and pivots are compared. */
function balance(n: number, re: Float64Array, im: Float64Array, right: Float64Array): void {
  for (let row = 0; row < n; row++) {
    let largest = 0;
    for (let k = row * n; k < (row + 1) * n; k++) largest = Math.max(largest, Math.abs(re[k]!), Math.abs(im[k]!));
    if (largest === 0) continue;
    const unit = 1 / largest;
    for (let k = row * n; k < (row + 1) * n; k++) {
      (re[k] as number) *= unit;
      (im[k] as number) *= unit;
    }
    (right[row] as number) *= unit;
  }
}
