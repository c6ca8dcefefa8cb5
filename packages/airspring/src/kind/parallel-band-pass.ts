import { parallelBandPassFamily } from '@airspring/core/enclosure';
import { sixthOrder } from './sixth-order.js';

/** A parallel band-pass box of sixth order: the chamber in front of the drivers and the one behind them each have vents outside. */
export const parallelBandPass = sixthOrder(parallelBandPassFamily, 'out', {
  name: 'parallel-band-pass',
  called: 'a parallel band-pass box',
});
