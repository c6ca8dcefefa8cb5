import type { CoilModel } from './coil.js';
import type { Driver } from './driver.js';
import { inductorOf } from './inductor.js';

/** What a driver's coil has besides Re: its model, or its Le; `undefined` where it has neither. */
export const coilOf = ({ coil, Le }: Pick<Driver, 'coil' | 'Le'>): CoilModel | undefined =>
  coil ?? (Le ? inductorOf(Le) : undefined);
