import type { Air } from '../air/index.js';
import type { Driver } from './driver.js';

/** Volume of air that is as compliant as the suspension of a driver, m³. SI numbers, unchecked. */
export const equivalentVolume = ({ Sd, Cms }: Pick<Driver, 'Sd' | 'Cms'>, air: Air): number =>
  air.density * air.speedOfSound ** 2 * Sd ** 2 * Cms;
