import type { Axis } from '../kind/box-kind.js';

/** How far the search looks beyond the brief, and how fine. */
export interface Scope {
  /** Looks at what the brief forbids as well. */
  readonly beyond: boolean;
  /** How many steps of the lattice make one; the walk in whole units follows all the same. */
  readonly step: number;
  /** Whether the ends of walks are surveyed finely around. */
  readonly thorough: boolean;
}
export const WITHIN: Scope = { beyond: false, step: 1, thorough: true };
export const BEYOND: Scope = { beyond: true, step: 2, thorough: false };

/** The greatest value of an axis that is looked at. */
export const upperOf = ({ to, beyond = 1 }: Axis, scope: Scope): number => (scope.beyond ? to * beyond : to);

/**
 * Values of an axis on the lattice: those of a ladder that hangs on nothing, so that a wider bound only adds to them, and
 * both bounds.
 */
export function latticeOf(from: number, to: number, ratio: number): Float64Array {
  const step = Math.log(ratio);
  const values = [from];
  for (let k = Math.ceil(Math.log(from) / step + 1e-9); ; k++) {
    const value = Math.exp(k * step);
    if (value >= to * (1 - 1e-9)) break;
    if (value > from * (1 + 1e-9)) values.push(value);
  }
  if (to > from) values.push(to);
  return Float64Array.from(values);
}

/** A value from a whole number of units, held to the bounds: so the bounds themselves can be reached. */
export const valueAt = (whole: number, unit: number, from: number, to: number): number =>
  // Divided, not multiplied: 73 / 1000 is the number nearest to 0.073.
  Math.min(to, Math.max(from, whole / (1 / unit)));

/** The whole numbers at and just beyond the bounds. */
export const wholeBounds = (unit: number, from: number, to: number): [lower: number, upper: number] => [
  Math.ceil(from / unit - 1e-6) - (from / unit - Math.floor(from / unit) > 1e-6 ? 1 : 0),
  Math.floor(to / unit + 1e-6) + (Math.ceil(to / unit) - to / unit > 1e-6 ? 1 : 0),
];
