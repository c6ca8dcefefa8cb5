import type { ComplexColumn } from '../numeric/index.js';
import type { Network } from './element.js';
import { compileGradient, gradientColumns } from './gradient.js';

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
export function probeGradient(network: Network, name: string, frequency: number): ProbeGradient | undefined {
  const gradient = compileGradient(network, name);
  const out = gradientColumns(gradient, 1);
  if (gradient.sweep(Float64Array.of(frequency), out) >= 0) return undefined;
  const first = ({ re, im }: ComplexColumn): Complex => ({ re: re[0] as number, im: im[0] as number });
  const byElement = gradient.elements.map((element, i) => [element, first(out.byElement[i] as ComplexColumn)] as const);
  return { value: first(out.value), byElement: Object.fromEntries(byElement), byFrequency: first(out.byFrequency) };
}
