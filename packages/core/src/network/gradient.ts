import { solveComplexFactored, solveComplexFactoredTransposed } from '../numeric/index.js';
import { dense, factorDense } from './dense.js';
import { branchLaw, isBranch, type Network } from './element.js';
import { equations, isListed, symbolValue } from './equations.js';
import { fillListed, listedColumns } from './listed-columns.js';
import { readingOf } from './reading.js';
import { missingProbe, refuseBadNetwork } from './refusals.js';

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** A probe at one frequency, and how it changes. */
export interface ProbeGradient {
  readonly value: Complex;
  /** ∂value/∂ln(element value), for each element with a value, by name: what a relative change of it does. */
  readonly byElement: Readonly<Record<string, Complex>>;
  /** ∂value/∂ln f. */
  readonly byFrequency: Complex;
}

/** Relative step of the difference quotient for elements given over frequency. */
const STEP = 1e-5;

/**
 * Prepares the gradient of any probe by every element, by the adjoint equations: one factorisation serves the solution
 * and the adjoint, whatever the number of elements.
 *
 * $$ A x = b,\quad y = c^{\mathsf T} x,\quad A^{\mathsf T}\lambda = c,\quad
 *    \frac{\partial y}{\partial \theta} = \frac{\partial c^{\mathsf T}}{\partial\theta} x - \lambda^{\mathsf T}\frac{\partial A}{\partial\theta}\,x $$
 *
 * @validity any network; an element given over frequency has no derivative by a value, and its slope over frequency is a
 * difference quotient over ±10⁻⁵
 * @neglects nothing
 * @returns `undefined` at a frequency where nothing damps the network
 * @throws InputError for a network without meaning; `empty` for a probe that is not there
 * @source director1969 adjoint network
 * @check network.gradient
 * @example compileGradient(network)('radiatedFlow', 30)?.byElement['Cab']
 */
export function compileGradient(network: Network): (probe: string, frequency: number) => ProbeGradient | undefined {
  refuseBadNetwork(network);
  const { elements } = network;
  const system = equations(network);
  const { size, stamps, driven } = system;
  const values = Float64Array.from(elements, symbolValue);
  const listed = elements.map((element) => listedColumns(element, 3));
  const matrix = dense(size);
  const [xr, xi, lr, li] = [0, 1, 2, 3].map(() => new Float64Array(size)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const at = new Float64Array(3);

  return (name, frequency) => {
    const probe = Object.hasOwn(network.probes, name) ? network.probes[name] : undefined;
    if (probe === undefined) throw missingProbe(name);
    const { plus, minus, symbol, power, factor } = readingOf(network, system, probe);
    at.set([frequency, frequency * (1 - STEP), frequency * (1 + STEP)]);
    elements.forEach((element, i) => {
      const columns = listed[i];
      if (columns !== undefined) fillListed(element, at, columns);
    });
    if (factorDense(system, values, listed, 0, frequency, matrix) === 0) return undefined;
    const { re, im, rowScale, exchanges } = matrix;
    const w = 2 * Math.PI * frequency;

    xr.fill(0);
    xi.fill(0);
    for (const row of driven) xr[row] = rowScale[row] as number;
    solveComplexFactored(size, re, im, exchanges, xr, xi, 1);

    // What the probe multiplies its unknowns by, and that over frequency.
    const table = symbol < 0 ? undefined : listed[symbol]?.Y;
    const reads = (k: number, omega: number): Complex => {
      const weight = symbol < 0 || table !== undefined ? factor : factor * (values[symbol] as number);
      if (table !== undefined) return { re: weight * (table.re[k] as number), im: weight * (table.im[k] as number) };
      if (power === 0) return { re: weight, im: 0 };
      return { re: 0, im: power === 1 ? weight * omega : -weight / omega };
    };
    const read = reads(0, w);
    const across = {
      re: (plus < 0 ? 0 : (xr[plus] as number)) - (minus < 0 ? 0 : (xr[minus] as number)),
      im: (plus < 0 ? 0 : (xi[plus] as number)) - (minus < 0 ? 0 : (xi[minus] as number)),
    };
    const value = times(read, across);

    lr.fill(0);
    li.fill(0);
    for (const [unknown, sign] of [
      [plus, 1],
      [minus, -1],
    ] as const) {
      if (unknown < 0) continue;
      lr[unknown] = sign * read.re;
      li[unknown] = sign * read.im;
    }
    solveComplexFactoredTransposed(size, re, im, exchanges, lr, li, 1);
    for (let row = 0; row < size; row++) {
      (lr[row] as number) *= rowScale[row] as number;
      (li[row] as number) *= rowScale[row] as number;
    }

    const slopes = elements.map(() => ({ re: 0, im: 0 }));
    const byFrequency = { re: 0, im: 0 };
    for (const stamp of stamps) {
      const { row, column, sign, symbol: element, power: p, listed: corner } = stamp;
      if (element < 0) continue;
      // λ x, times the entry of A by ln(its value) and by ln f.
      const pair = times(
        { re: lr[row] as number, im: li[row] as number },
        { re: xr[column] as number, im: xi[column] as number },
      );
      const columns = corner === undefined ? undefined : listed[element]?.[corner];
      if (columns !== undefined) {
        const slope = {
          re: (sign * ((columns.re[2] as number) - (columns.re[1] as number))) / (2 * STEP),
          im: (sign * ((columns.im[2] as number) - (columns.im[1] as number))) / (2 * STEP),
        };
        subtract(byFrequency, times(pair, slope));
        continue;
      }
      const size = sign * (values[element] as number);
      const entry = p === 0 ? { re: size, im: 0 } : { re: 0, im: p === 1 ? size * w : -size / w };
      const change = times(pair, entry);
      subtract(slopes[element] as { re: number; im: number }, change);
      if (p !== 0) subtract(byFrequency, { re: p * change.re, im: p * change.im });
    }
    // The probe's own dependence on the element it reads.
    if (symbol >= 0) {
      if (table !== undefined) {
        const [below, above] = [reads(1, w), reads(2, w)];
        const slope = { re: (above.re - below.re) / (2 * STEP), im: (above.im - below.im) / (2 * STEP) };
        subtract(byFrequency, times({ re: -slope.re, im: -slope.im }, across));
      } else {
        subtract(slopes[symbol] as { re: number; im: number }, { re: -value.re, im: -value.im });
        subtract(byFrequency, { re: -power * value.re, im: -power * value.im });
      }
    }
    const byElement = Object.fromEntries(
      elements.flatMap((element, i) => {
        if (element.kind === 'source' || element.kind === 'meter' || isListed(element)) return [];
        // An element whose symbol is the inverse of its value turns the sign of the logarithm.
        const turned = isBranch(element) && branchLaw[element.kind][0] === -1 ? -1 : 1;
        const { re: a, im: b } = slopes[i] as Complex;
        return [[element.name, { re: turned * a, im: turned * b }] as const];
      }),
    );
    return { value, byElement, byFrequency };
  };
}

const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });

function subtract(from: { re: number; im: number }, what: Complex): void {
  from.re -= what.re;
  from.im -= what.im;
}
