import type { Driver } from './driver.js';

/** Resonance of a driver on its own, Hz. SI numbers, unchecked. */
export const resonanceInAir = ({ Mms, Cms }: Pick<Driver, 'Mms' | 'Cms'>): number =>
  1 / (2 * Math.PI * Math.sqrt(Mms * Cms));
