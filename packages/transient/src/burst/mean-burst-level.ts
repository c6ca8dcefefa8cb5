import { refuse } from '@airspring/core/fault';
import { type Level, si } from '@airspring/core/quantity';

/**
 * The level of a band of bursts: that of the mean of their sound pressures.
 *
 * $$ L = 20\log_{10}\frac1n\sum_i 10^{L_i/20} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L_i$ | `levels` | dB | levels of the bursts of a band, as 20, 25 and 31.5 Hz |
 *
 * @validity levels of one kind, rms or peak
 * @neglects nothing
 * @returns dB
 * @throws InputError `empty`, `not-finite`
 * @source primercea2010 how the test works
 * @example meanBurstLevel([101.1, 107.3, 116.3]) // 110.4
 */
export function meanBurstLevel(levels: readonly number[]): Level {
  if (!(levels.length > 0)) {
    const remedy = 'Give the levels of the bursts of a band.';
    refuse([{ code: 'empty', path: 'levels', got: levels, expected: 'at least one level', remedy }]);
  }
  refuse(
    levels.flatMap((level, i) =>
      Number.isFinite(level)
        ? []
        : [
            {
              code: 'not-finite' as const,
              path: `levels[${i}]`,
              got: level,
              expected: 'a level in dB',
              remedy: 'Give one.',
            },
          ],
    ),
  );
  // Relative to the greatest, so that no power overflows.
  const top = Math.max(...levels);
  const mean = levels.reduce((sum, one) => sum + 10 ** ((one - top) / 20), 0) / levels.length;
  return si('level', top + 20 * Math.log10(mean));
}
