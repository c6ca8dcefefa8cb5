import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import type { ThermalModel } from './thermal-model.js';

const RE = 'Re';
/** The probe that {@link withCoil} adds. */
export const COIL = 'coilCurrent';

/** The cold resistance of all coils together, and how many there are. */
export const coilOf = (system: System): { readonly Re: number; readonly count: number } => {
  const Re = system.network.values[RE];
  const { drivers } = system.spec as { readonly drivers?: { readonly count?: number } };
  if (typeof Re === 'number' && system.network.topology.elements.some(({ name }) => name === RE))
    return { Re, count: drivers?.count ?? 1 };
  const expected = 'a system with one driver, or several alike: an element Re';
  const remedy = 'Give a box with one kind of driver.';
  throw new InputError([{ code: 'inconsistent', path: 'system', got: system.family, expected, remedy }]);
};

/** The same system with coils of this resistance, whose current can be read. */
export function withCoil(system: System, resistance: number): System {
  const { topology, values } = system.network;
  const probes = { ...topology.probes, [COIL]: { of: 'flow', element: RE } as const };
  return { ...system, network: { topology: { ...topology, probes }, values: { ...values, [RE]: resistance } } };
}

/** How much the resistance of a coil rises, over the hot one, with each squared ampere of all coils together. */
export const warmingOf = (
  { coefficient, coilToMagnet, magnetToAir }: ThermalModel,
  Re: number,
  count: number,
): number => (coefficient * (coilToMagnet + magnetToAir) * Re) / count;

/** A system at one frequency whose coils have risen to (1 + rise) Re. */
export interface AtRise {
  /** By how much more drive the same current takes than with cold coils. */
  readonly factor: number;
  /** Real and imaginary part of a probe, per volt of drive. */
  readonly probe: (place: number) => readonly [re: number, im: number];
}

/**
 * Every probe at any resistance of the coils, from the columns at Re and at 2 Re. With z = Re Y, where Y is the admittance that the coil
 * sees in series with itself, 1 + z is the quotient of its currents in the two, and
 *
 * $$ I = \frac{I_0}{1 + \varrho z},\qquad X = X_0 + \frac{\varrho\,(1 + z)}{1 + \varrho z}\,(X_1 - X_0),\qquad R = (1 + \varrho) R_e $$
 */
export function atRise(
  cold: readonly ComplexColumn[],
  hot: readonly ComplexColumn[],
  coil: number,
  i: number,
  rise: number,
): AtRise {
  const [a, b, c, d] = [cold[coil]!.re[i]!, cold[coil]!.im[i]!, hot[coil]!.re[i]!, hot[coil]!.im[i]!];
  const size = c * c + d * d;
  const [re, im] = [(a * c + b * d) / size, (b * c - a * d) / size];
  const [turnRe, turnIm] = [1 + rise * (re - 1), rise * im];
  const turn = turnRe * turnRe + turnIm * turnIm;
  const shareRe = (rise * (re * turnRe + im * turnIm)) / turn;
  const shareIm = (rise * (im * turnRe - re * turnIm)) / turn;
  const probe = (place: number) => {
    const [from, to] = [cold[place]!, hot[place]!];
    const [x, y] = [from.re[i]!, from.im[i]!];
    const [dx, dy] = [to.re[i]! - x, to.im[i]! - y];
    return [x + shareRe * dx - shareIm * dy, y + shareRe * dy + shareIm * dx] as const;
  };
  return { factor: Math.sqrt(turn), probe };
}
