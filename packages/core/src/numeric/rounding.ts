/**
 * Says whether the remainder of a sum is only rounding. Terms that cancel leave a few bits of the largest of them. Eight
 * units in the last place are allowed for the few operations that make a term.
 *
 * $$ |s| \le 8\,\epsilon \sum |t_i| $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $s$ | `sum` | any | the sum |
 * | $\sum \lvert t_i \rvert$ | `sizes` | any | sum of the magnitudes of its terms |
 *
 * @returns true when the sum counts as 0
 * @source own (units in the last place of a sum)
 * @example isRounding(0.1 + 0.2 - 0.3, 0.6) // true
 */
export const isRounding = (sum: number, sizes: number): boolean => Math.abs(sum) <= 8 * Number.EPSILON * sizes;
