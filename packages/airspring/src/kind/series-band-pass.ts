import { seriesBandPassFamily } from '@airspring/core/enclosure';
import { sixthOrder } from './sixth-order.js';

/** A series band-pass box of sixth order: the chamber behind the drivers has its vents into the one in front, which has vents outside. */
export const seriesBandPass = sixthOrder(seriesBandPassFamily, 'through', {
  name: 'series-band-pass',
  called: 'a series band-pass box',
});
