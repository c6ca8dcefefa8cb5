import { compileFilter, type Filter } from '../filter/index.js';
import { complexColumn } from '../numeric/index.js';
import { frequencyGrid } from '../quantity/index.js';
import { type LawResult, tried } from './law.js';
import { lostByJson } from './plain-record.js';

/**
 * The laws of every filter, including your own. It must be stable: every root of the denominator lies to the left of the
 * imaginary axis, or its response to a click would grow for ever. The gain of a high-pass is 0 far below its corner and 1 far above it,
 * that of a low-pass the other way round; that of a shelf or a pole shift is 1 far above. It is a plain record.
 *
 * @validity filters of order up to 8 with corners of 0.01 Hz to 1 kHz
 * @neglects whether the corner is the stated one
 * @returns one result for each law
 * @source zverev1967 ch. 2
 * @example filterLaws(highPass(butterworthShape(4), '24 Hz')).every(({ holds }) => holds)
 */
export function filterLaws(filter: Filter): readonly LawResult[] {
  const gainAt = (frequency: number): number => {
    const response = complexColumn(1);
    response.re[0] = 1;
    compileFilter(filter)(frequencyGrid([frequency]), response);
    return Math.hypot(response.re[0]!, response.im[0]!);
  };
  const [below, above] = [
    ['below', '0.1 mHz', 1e-4],
    ['above', '10 MHz', 1e7],
  ] as const;
  type End = typeof below | typeof above;
  const silent = ([side, far, at]: End) =>
    tried(`silent far ${side} its corner`, far, () => (gainAt(at) <= 1e-2 ? undefined : `a gain of ${gainAt(at)}`));
  const one = ([side, far, at]: End) =>
    tried(`a gain of one far ${side} its corner`, far, () =>
      Math.abs(gainAt(at) - 1) <= 1e-3 ? undefined : `a gain of ${gainAt(at)}`,
    );
  const { kind } = filter;
  return [
    tried('stable', 'its denominator', () => {
      compileFilter(filter);
      return undefined;
    }),
    ...(kind === 'high-pass' || kind === 'low-pass' ? [silent(kind === 'high-pass' ? below : above)] : []),
    one(kind === 'low-pass' ? below : above),
    tried('survives JSON', 'once', () => lostByJson(filter)),
  ];
}
