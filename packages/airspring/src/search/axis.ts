import type { Axis } from '../kind/point.js';

/** How far the search looks beyond the brief, and how finely. */
export interface Scope {
  /** Whether it also looks at what the brief forbids. */
  readonly beyond: boolean;
  /** Number of steps of the lattice taken at once. The walk in whole units follows in any case. */
  readonly step: number;
  /** Whether the surroundings of each walk's end are surveyed finely. */
  readonly thorough: boolean;
}
export const WITHIN: Scope = { beyond: false, step: 1, thorough: true };
export const BEYOND: Scope = { beyond: true, step: 2, thorough: false };

/** The greatest value of an axis that the search looks at. */
export const upperOf = ({ to, beyond = 1 }: Pick<Axis, 'to' | 'beyond'>, scope: Scope): number =>
  scope.beyond ? to * beyond : to;

/**
 * Values of an axis on the lattice: those of a ladder that does not depend on the bounds, and both bounds. A wider bound
 * therefore only adds values.
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

/** A value from a whole number of units, clamped to the bounds, so that the bounds themselves can be reached. */
export const valueAt = (whole: number, unit: number, from: number, to: number): number =>
  // Division, not multiplication: 73 / 1000 is the double nearest to 0.073.
  Math.min(to, Math.max(from, whole / (1 / unit)));

/** The whole numbers at the bounds or just beyond them. */
export const wholeBounds = (unit: number, from: number, to: number): [lower: number, upper: number] => [
  Math.ceil(from / unit - 1e-6) - (from / unit - Math.floor(from / unit) > 1e-6 ? 1 : 0),
  Math.floor(to / unit + 1e-6) + (Math.ceil(to / unit) - to / unit > 1e-6 ? 1 : 0),
];
