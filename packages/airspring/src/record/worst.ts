import type { At } from './load.js';

/** The greatest value of a column, or the least with a sign of −1, and where it occurs. */
export const worst = (frequencies: ArrayLike<number>, values: ArrayLike<number>, sign = 1): At => {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (sign * values[i]! > sign * values[at]!) at = i;
  return { frequency: frequencies[at]!, value: values[at]! };
};
