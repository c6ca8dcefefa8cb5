import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { BLOCK, blockSolver } from './block-solver.js';
import { addScaled, type Factor, multiply, timesPower } from './column-arithmetic.js';
import { columnRoom } from './column-room.js';
import type { Element, Network } from './element.js';
import { isListed } from './equations.js';
import { fillListedParameterSlope, fillListedSlope, type ListedColumns, listedColumns } from './listed-columns.js';
import { type NumberedEquations, numberedEquations } from './numbered-equations.js';
import { fillReading, type ProbeRow, probeRows, termWeight, turnByDelay } from './reading.js';
import { missingProbe } from './refusals.js';
import type { Form, Slots } from './slots.js';
import type { Pivot } from './step.js';
import { transposedSolver } from './transposed-solver.js';

/** A probe over frequency and how it changes, a column each. */
export interface GradientColumns {
  readonly value: ComplexColumn;
  /** ∂value/∂number of each slot, in the order of `numbers`; empty when these are not wanted. */
  readonly byNumber: readonly ComplexColumn[];
  /** ∂value/∂ln f. */
  readonly byFrequency: ComplexColumn;
}

/** A number by which a gradient is taken. */
export interface GradientNumber {
  /** The name of its slot. For a law or a line the parameter follows: `coil.exponent`. */
  readonly name: string;
  /** The number as it stands in the equations. */
  readonly number: number;
  /** −1 if that is the inverse of the value in the slot. */
  readonly exponent: 1 | -1;
}

/** The gradient of one probe, ready to be swept. */
export interface NetworkGradient {
  /** The numbers in the order of the columns. */
  readonly numbers: readonly GradientNumber[];
  /** Fills the columns, per volt of drive. Returns the first place at which nothing damps the network, or −1. A kernel. */
  readonly sweep: (frequencies: Float64Array, out: GradientColumns) => number;
}

/**
 * Prepares the gradient of a probe by every number of a network, from the adjoint equations. One elimination serves both the
 * solution and the adjoint, however many elements there are. A number may be zero, such as a resistance that is not there yet.
 *
 * $$ A x = b,\quad y = c^{\mathsf T} x,\quad A^{\mathsf T}\lambda = c,\quad
 *    \frac{\partial y}{\partial \theta} = \frac{\partial c^{\mathsf T}}{\partial\theta} x - \lambda^{\mathsf T}\frac{\partial A}{\partial\theta}\,x $$
 *
 * `inReference` leaves out the elements that are not in the reference level; there is no gradient by their numbers.
 *
 * @validity any network. If an element over frequency has no `slope` or `parameterSlope`, difference quotients
 * over ±10⁻⁵ are used
 * @neglects nothing
 * @returns the gradient, to be swept into {@link gradientColumns}
 * @throws InputError for a network without meaning; `empty` for a probe that is not there
 * @source director1969 adjoint network
 * @example compileGradient(network, 'radiatedFlow').sweep(frequencies, columns)
 */
export function compileGradient(network: Network, name: string, inReference = false): NetworkGradient {
  const numbered = numberedEquations(network, inReference);
  const { topology, system, slots } = numbered;
  const row = probeRows(topology, system, slots).find((one) => one.name === name);
  if (row === undefined) throw missingProbe(name);
  const left = inReference ? topology.elements.filter((one) => 'inReference' in one && one.inReference === false) : [];
  return gradientOf(numbered, row, [], left);
}

/** The gradient for equations with their numbers, eliminated in an order found before; not by the numbers that are left out. */
export function gradientOf(
  numbered: NumberedEquations,
  row: ProbeRow,
  order: readonly Pivot[] = [],
  left: readonly Element[] = [],
): NetworkGradient {
  const { topology, slots, system, values, numbers } = numbered;
  const { elements } = topology;
  const wanted = system.couplings.flatMap(({ columns }) => columns.map(([unknown]) => unknown));
  const { listed, solution, factored, load, solve } = blockSolver(numbered, wanted, order);
  const weights = row.terms.map((term) => termWeight(term, BLOCK));
  let factors: Factor[] = row.terms.map(() => 1);
  const transposed = transposedSolver(
    factored,
    BLOCK,
    row.terms.map(({ unknowns }, t) => ({ unknowns, weight: () => factors[t] as Factor })),
  );
  const { adjoint } = transposed;
  const listedSlopes = elements.map((element) => listedColumns(element, columnRoom(BLOCK).take));
  const told = toldNumbers(topology.elements, left, slots, system.forms, values, numbers, row);
  const places = new Map(told.map(({ name }, k) => [name, k]));
  const [reach, pair, weighted] = [complexColumn(BLOCK), complexColumn(BLOCK), complexColumn(BLOCK)];
  const scale = row.factor < 0 ? 1 : values[row.factor]!;

  const block = (frequencies: Float64Array, out: GradientColumns, offset: number): number => {
    load(frequencies);
    elements.forEach((element, symbol) => {
      const tables = listedSlopes[symbol];
      if (tables !== undefined && numbers[symbol] !== 0) fillListedSlope(element, values, slots, frequencies, tables);
    });
    factors = weights.map((weight) => weight(frequencies, numbers, values, listed));
    const stopped = solve(transposed);
    const count = stopped < 0 ? frequencies.length : stopped;
    const { value, byNumber, byFrequency } = out;
    for (const { re, im } of [...byNumber, byFrequency]) {
      re.fill(0, offset, offset + count);
      im.fill(0, offset, offset + count);
    }
    row.terms.forEach(({ unknowns }, t) => {
      fillReading(unknowns, solution, factors[t] as Factor, count, value, offset, t > 0);
    });
    const columnOf = (name: string): ComplexColumn | undefined => byNumber[places.get(name) ?? -1];

    /** Adds sign × pair × ∂(what the element stands with) to the columns: by its numbers, and by ln f. */
    const addChange = (symbol: number, corner: ListedColumns, power: -1 | 0 | 1, sign: 1 | -1) => {
      const element = elements[symbol] as Element;
      const [name] = Object.keys(corner) as (keyof ListedColumns)[];
      if (name === undefined) {
        const column = columnOf(element.name);
        if (power === 0) {
          if (column) addScaled(column, pair, sign, count, offset);
          return;
        }
        timesPower(pair, sign, power, frequencies, count);
        if (column) addScaled(column, pair, 1, count, offset);
        addScaled(byFrequency, pair, power * numbers[symbol]!, count, offset);
        return;
      }
      multiply(weighted, pair, listedSlopes[symbol]?.[name] as ComplexColumn, count);
      addScaled(byFrequency, weighted, sign, count, offset);
      if (byNumber.length === 0 || (element.kind !== 'law' && element.kind !== 'line')) return;
      const at = slots.of.get(element.name)?.at ?? 0;
      element.parameters.forEach((parameter, k) => {
        const column = columnOf(`${element.name}.${parameter}`);
        if (column === undefined) return;
        const tables = listedColumns(element, columnRoom(count).take) as ListedColumns;
        fillListedParameterSlope(element, values, slots, at + k, frequencies.subarray(0, count), tables);
        multiply(weighted, pair, tables[name] as ComplexColumn, count);
        addScaled(column, weighted, sign, count, offset);
      });
    };

    for (const { rows, columns, symbol, power, listed: corner } of system.couplings) {
      if (symbol < 0) continue;
      const [first, second] = rows;
      // Most laws enter one row: its column serves as it is, and its sign is left to the end.
      const alone = second === undefined ? first : undefined;
      if (alone === undefined) fillReading(rows, adjoint, 1, count, reach);
      fillReading(columns, solution, alone ? (adjoint[alone[0]] as ComplexColumn) : reach, count, pair);
      addChange(symbol, corner === undefined ? {} : { [corner]: pair }, power, alone?.[1] === -1 ? 1 : -1);
    }
    // The probe itself depends on the element that it reads, on its delay and on its factor.
    row.terms.forEach(({ unknowns, symbol, power, sign, delay }, t) => {
      if (symbol >= 0) {
        const isLaw = listed[symbol] !== undefined;
        fillReading(unknowns, solution, sign, count, pair);
        if (delay >= 0) turnByDelay(pair, frequencies.subarray(0, count), values[delay]!);
        addChange(symbol, isLaw ? { law: pair } : {}, power, 1);
      }
      if (delay < 0) return;
      fillReading(unknowns, solution, factors[t] as Factor, count, pair);
      const tau = values[delay]!;
      // ∂/∂τ is −jω, and ∂/∂ln f is τ times that.
      timesPower(pair, -1, 1, frequencies, count);
      addScaled(byFrequency, pair, tau, count, offset);
      const column = byNumber[told.findIndex(({ name }) => slots.of.get(name)?.at === delay)];
      if (column) addScaled(column, pair, 1, count, offset);
    });
    if (row.factor >= 0) {
      const column = byNumber[told.findIndex(({ name }) => slots.of.get(name)?.at === row.factor)];
      if (column) addScaled(column, { re: value.re.subarray(offset), im: value.im.subarray(offset) }, 1, count, offset);
      for (const one of new Set([value, byFrequency, ...byNumber])) {
        if (one !== column) timesFrom(one, scale, count, offset);
      }
    }
    return stopped;
  };

  const sweep = (frequencies: Float64Array, out: GradientColumns): number => {
    for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
      const stopped = block(frequencies.subarray(offset, offset + BLOCK), out, offset);
      if (stopped >= 0) return offset + stopped;
    }
    return -1;
  };
  return { numbers: told, sweep };
}

/** The numbers by which a gradient is taken: those of each element, the factor of the probe, and its delays. */
function toldNumbers(
  elements: readonly Element[],
  left: readonly Element[],
  slots: Slots,
  forms: readonly Form[],
  values: Float64Array,
  numbers: Float64Array,
  row: ProbeRow,
): GradientNumber[] {
  const own = elements.flatMap((element, i): GradientNumber[] => {
    const slot = slots.of.get(element.name);
    if (slot === undefined || left.includes(element)) return [];
    if (element.kind === 'law' || element.kind === 'line') {
      return element.parameters.map((parameter, k) => ({
        name: `${element.name}.${parameter}`,
        number: values[slot.at + k]!,
        exponent: 1,
      }));
    }
    if (isListed(element)) return [];
    return [{ name: element.name, number: numbers[i]!, exponent: (forms[i] as Form).exponent }];
  });
  const read = new Set([row.factor, ...row.terms.map(({ delay }) => delay)]);
  const others = [...slots.of].flatMap(([name, { at }]): GradientNumber[] =>
    read.has(at) && !elements.some((element) => element.name === name)
      ? [{ name, number: values[at]!, exponent: 1 }]
      : [],
  );
  return [...own, ...others];
}

/** Room for a gradient over a number of frequencies. */
export const gradientColumns = ({ numbers }: NetworkGradient, length: number): GradientColumns => ({
  value: complexColumn(length),
  byNumber: numbers.map(() => complexColumn(length)),
  byFrequency: complexColumn(length),
});

function timesFrom({ re, im }: ComplexColumn, by: number, count: number, offset: number): void {
  for (let i = offset; i < offset + count; i++) {
    re[i] = re[i]! * by;
    im[i] = im[i]! * by;
  }
}
