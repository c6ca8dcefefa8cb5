import type { System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { givenSystem } from '../response/compile.js';
import { betweenSweeps, stepAdmittance } from '../response/two-sweeps.js';
import type { ThermalModel } from './thermal-model.js';

const RE = 'Re';
/** The probe that {@link withCoil} adds. */
export const COIL = 'coilCurrent';

/** The cold resistance of all coils together, and how many there are. */
export const coilOf = (system: System): { readonly Re: number; readonly count: number } => {
  const Re = givenSystem(system).network.values[RE];
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

/** Every probe where the coils have risen to (1 + rise) Re, from the columns at Re and at 2 Re: `betweenSweeps`. */
export function atRise(
  cold: readonly ComplexColumn[],
  hot: readonly ComplexColumn[],
  coil: number,
  i: number,
  rise: number,
): AtRise {
  const [re, im] = stepAdmittance(cold[coil]!, hot[coil]!, i);
  const { factor, shareRe, shareIm } = betweenSweeps(re, im, rise);
  const probe = (place: number) => {
    const [from, to] = [cold[place]!, hot[place]!];
    const [x, y] = [from.re[i]!, from.im[i]!];
    const [dx, dy] = [to.re[i]! - x, to.im[i]! - y];
    return [x + shareRe * dx - shareIm * dy, y + shareRe * dy + shareIm * dx] as const;
  };
  return { factor, probe };
}
