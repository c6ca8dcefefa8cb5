import { isInputError } from '../fault/index.js';
import { normalisedFilter } from '../filter/filter.js';
import type { Filter } from '../filter/index.js';
import type { Field } from '../quantity/index.js';

/** A field that holds a filter of any source; its faults have paths within that field. */
export const filterField: Field<Filter> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value !== 'object' || value === null) {
      const remedy = "Make it with highPass or lowPass of '@airspring/core/filter'.";
      faults.push({ code: 'inconsistent', path, got: value, expected: 'a filter', remedy });
      return undefined;
    }
    try {
      normalisedFilter(value as Filter, path);
      return value as Filter;
    } catch (error) {
      if (!isInputError(error)) throw error;
      faults.push(...error.faults);
      return undefined;
    }
  },
};
