import type { Driver } from '../driver/index.js';
import { bracketedRoot } from '../numeric/index.js';

/**
 * Highest resonance of the cones of a chamber on their suspensions and on the air that they share, terminals open and
 * nothing damped: the root above every driver's own of
 *
 * $$ \sum_i \frac{S_i^2 / M_i}{\omega^2 - 1/(M_i C_i)} = C_{ab} $$
 *
 * For one driver, or several alike, it is the system resonance of the closed box. In rad/s.
 */
export function chamberResonance(drivers: readonly Driver[], Cab: number): number {
  const parts = drivers.map(({ Sd, Mms, Cms }) => ({ weight: Sd ** 2 / Mms / Cab, own: 1 / (Mms * Cms) }));
  const highest = parts.reduce((most, { own }) => Math.max(most, own), 0);
  // In x, the distance above the highest of them. All as high as the highest would put the root at the sum of the weights,
  // the highest alone at its own weight: in between the sum falls through 1.
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  const least = parts.reduce((sum, { weight, own }) => sum + (own === highest ? weight : 0), 0);
  if (least >= total) return Math.sqrt(highest + total);
  const excess = (x: number) => parts.reduce((sum, { weight, own }) => sum + weight / (x + highest - own), -1);
  const root = bracketedRoot(excess, least, total);
  // No change of sign: the others are lost in rounding, and either end is the root.
  return Math.sqrt(highest + (root.ok ? root.x : least));
}
