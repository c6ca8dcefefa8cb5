import { type Filter, filterLevel } from '@airspring/core/filter';
import type { FrequencyGrid } from '@airspring/core/quantity';

/** The share of a voltage that a filter lets through at each frequency; 1 where there is no filter. */
export const passedBy = (filter: Filter | undefined, frequencies: ArrayLike<number>): Float64Array =>
  filter
    ? filterLevel(filter, frequencies as FrequencyGrid).map((level) => 10 ** (level / 20))
    : new Float64Array(frequencies.length).fill(1);
