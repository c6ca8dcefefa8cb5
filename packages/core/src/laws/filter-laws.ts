import { compileFilter, type Filter } from '../filter/index.js';
import { complexColumn } from '../numeric/index.js';
import { frequencyGrid } from '../quantity/index.js';
import { type LawResult, tried } from './law.js';
import { lostByJson } from './plain-record.js';

/**
 * The laws of every high-pass, including your own. It must be stable: every root of the denominator lies to the left of the
 * imaginary axis, or its response to a click would grow for ever. Its gain is 0 far below its corner and 1 far above it. It is
 * a plain record.
 *
 * @validity high-passes of order up to 8 with corners of 0.01 Hz to 1 kHz
 * @neglects whether the corner is the stated one
 * @returns one result for each law
 * @source zverev1967 ch. 2
 * @example filterLaws(butterworthHighPass({ order: 4, corner: '24 Hz' })).every(({ holds }) => holds)
 */
export function filterLaws(filter: Filter): readonly LawResult[] {
  const gainAt = (frequency: number): number => {
    const response = complexColumn(1);
    response.re[0] = 1;
    compileFilter(filter)(frequencyGrid([frequency]), response);
    return Math.hypot(response.re[0]!, response.im[0]!);
  };
  return [
    tried('stable', 'its denominator', () => {
      compileFilter(filter);
      return undefined;
    }),
    tried('silent far below its corner', '0.1 mHz', () =>
      gainAt(1e-4) <= 1e-2 ? undefined : `a gain of ${gainAt(1e-4)}`,
    ),
    tried('a gain of one far above its corner', '10 MHz', () =>
      Math.abs(gainAt(1e7) - 1) <= 1e-3 ? undefined : `a gain of ${gainAt(1e7)}`,
    ),
    tried('survives JSON', 'once', () => lostByJson(filter)),
  ];
}
