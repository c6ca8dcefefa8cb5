import type { ComplexColumn } from '../numeric/index.js';
import type { Network } from './element.js';
import { compileGradient, gradientColumns, type NetworkGradient } from './gradient.js';

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** A probe at one frequency, and how it changes. */
export interface ProbeGradient {
  readonly value: Complex;
  /** ∂value/∂ln(value in the slot), by slot name: the effect of a relative change. */
  readonly byElement: Readonly<Record<string, Complex>>;
  /**
   * ∂value/∂(number as it stands in the equations), by slot name. It also exists where that number is 0 and a relative change
   * has no meaning. An element stands with its value or with the inverse of it.
   */
  readonly byNumber: Readonly<Record<string, Complex>>;
  /** ∂value/∂ln f. */
  readonly byFrequency: Complex;
}

/** The gradient of a probe, prepared, at one frequency; `undefined` where nothing damps the network. */
export function gradientAt(gradient: NetworkGradient, frequency: number): ProbeGradient | undefined {
  const out = gradientColumns(gradient, 1);
  if (gradient.sweep(Float64Array.of(frequency), out) >= 0) return undefined;
  const first = ({ re, im }: ComplexColumn): Complex => ({ re: re[0]!, im: im[0]! });
  const byNumber = gradient.numbers.map(({ name }, i) => [name, first(out.byNumber[i] as ComplexColumn)] as const);
  const byElement = gradient.numbers.map(({ name, number, exponent }, i) => {
    const { re, im } = (byNumber[i] as (typeof byNumber)[number])[1];
    return [name, { re: exponent * number * re, im: exponent * number * im }] as const;
  });
  return {
    value: first(out.value),
    byElement: Object.fromEntries(byElement),
    byNumber: Object.fromEntries(byNumber),
    byFrequency: first(out.byFrequency),
  };
}

/**
 * The gradient of a probe at one frequency, by name.
 *
 * @validity as {@link compileGradient}
 * @neglects nothing
 * @returns `undefined` at a frequency where nothing damps the network
 * @throws InputError as {@link compileGradient}
 * @source own (one frequency of `compileGradient`)
 * @example probeGradient(network, 'radiatedFlow', 30)?.byElement['Cab']
 */
export const probeGradient = (network: Network, name: string, frequency: number): ProbeGradient | undefined =>
  gradientAt(compileGradient(network, name), frequency);
