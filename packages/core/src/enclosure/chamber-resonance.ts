import type { Driver } from '../driver/index.js';
import { bracketedRoot } from '../numeric/index.js';

/**
 * Highest resonance of the cones of a chamber on their suspensions and on the air that they share, without damping and with
 * open terminals. It is the root, above the resonance of every single driver, of
 *
 * $$ \sum_i \frac{S_i^2 / M_i}{\omega^2 - 1/(M_i C_i)} = C_{ab} $$
 *
 * For one driver, or for several equal ones, it is the system resonance of the closed box. Returns rad/s.
 */
export function chamberResonance(drivers: readonly Driver[], Cab: number): number {
  const parts = drivers.map(({ Sd, Mms, Cms }) => ({ weight: Sd ** 2 / Mms / Cab, own: 1 / (Mms * Cms) }));
  const highest = parts.reduce((most, { own }) => Math.max(most, own), 0);
  // x is the distance above the highest resonance. If all were as high, the root would be the sum of the weights; with the
  // highest alone it would be that one's weight. Between these two bounds the sum falls through 1.
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  const least = parts.reduce((sum, { weight, own }) => sum + (own === highest ? weight : 0), 0);
  if (least >= total) return Math.sqrt(highest + total);
  const excess = (x: number) => parts.reduce((sum, { weight, own }) => sum + weight / (x + highest - own), -1);
  const root = bracketedRoot(excess, least, total);
  // If the sign does not change, the other drivers are too small to count, and either bound is the root.
  return Math.sqrt(highest + (root.ok ? root.x : least));
}
