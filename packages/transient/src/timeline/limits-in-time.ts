import { type Fault, refuse } from '@airspring/core/fault';
import type { Limit } from '@airspring/core/limit';
import type { Judge } from './slice.js';

/** The drive, as an output. */
export const VOLTAGE = 'voltage';

/** What a simulation is asked for, so that a limit can be judged. */
export function outputOf({ probe, integrated }: Limit): string {
  if (probe === undefined) return VOLTAGE;
  if (!integrated) return probe;
  return /^coneVelocity( |$)/.test(probe) ? probe.replace('coneVelocity', 'displacement') : `integral ${probe}`;
}

/**
 * Limits as they are judged at instants: the greatest magnitude may be √2 times the greatest rms value, as the peak of a sine is. Where
 * only what lasts counts, its root mean square over a long time is held against it.
 */
export function judgesOf(limits: readonly Limit[], outputs: readonly string[], path: string): readonly Judge[] {
  refuse(
    limits.flatMap(({ greatestRms }, i): Fault[] => {
      if (greatestRms > 0) return [];
      const code = Number.isNaN(greatestRms) ? 'not-finite' : 'not-positive';
      const remedy = 'Leave out what is no limit.';
      return [{ code, path: `${path}[${i}].greatestRms`, got: greatestRms, expected: 'a number above 0', remedy }];
    }),
  );
  return limits.map((limit) => {
    const { name, basis, greatestRms, averaged } = limit;
    const at = outputs.indexOf(outputOf(limit));
    const used: Judge['used'] = averaged
      ? (measured) => Math.sqrt(measured.lasting[at]!) / greatestRms
      : (measured) => measured.peak[at]! / (Math.SQRT2 * greatestRms);
    return { name, basis, used };
  });
}
