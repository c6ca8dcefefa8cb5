import type { Limit } from '@airspring/core/limit';
import type { Simulated } from '../simulation/index.js';
import { atOwnPath, outputAt } from '../timeline/at-own-path.js';
import { judgesOf, outputOf, VOLTAGE } from '../timeline/limits-in-time.js';
import type { BurstChoices } from './burst-options.js';
import { type BurstRun, burstRunner, ofEachRun } from './burst-runner.js';

/** A burst that was tried, and which limit or band it uses most. */
export interface Tried {
  /** V rms, of a sine with the peak of the burst. */
  readonly drive: number;
  readonly burst: BurstRun;
  readonly worst: { readonly name: string; readonly used: number };
  readonly isPassed: boolean;
}

/** A limit that is passed by less than this share is kept: the rest is rounding. */
const ROUNDING = 1e-9;

/** Prepares bursts of one frequency that are judged by limits and thresholds. Limits that are means over a long time are left out. */
export function triedBursts(system: Simulated, limits: readonly Limit[], frequency: number, choices: BurstChoices) {
  const { thresholds, models } = choices;
  const atOnce = limits.filter(({ averaged }) => !averaged);
  const outputs = [...new Set(atOnce.map(outputOf))].filter(
    (name) => name !== VOLTAGE && !ofEachRun.some((one) => one === name),
  );
  /** Where the reader asked for what a simulation calls by its place among its outputs. */
  const placeOf = (path: string): string => {
    const at = outputAt(path);
    const name = at === undefined ? undefined : outputs[at - ofEachRun.length];
    return name ? `burst.limits[${limits.findIndex((limit) => outputOf(limit) === name)}].probe` : path;
  };
  const { run, tone } = atOwnPath(placeOf, () => burstRunner(system, frequency, outputs, choices));
  const judges = judgesOf(atOnce, [...ofEachRun, ...outputs, VOLTAGE], 'burst.limits');
  const { stop } = models;
  const tried = (drive: number): Tried => {
    const burst = run(Math.SQRT2 * drive);
    const { spectrum, inmost, outmost, isSolved } = burst;
    const measured = {
      peak: Float64Array.of(...burst.peak, Math.SQRT2 * drive),
      lasting: burst.peak,
      airTravel: new Float64Array(0),
    };
    const meetsStop = stop !== undefined && (stop.energy(inmost) > 0 || stop.energy(outmost) > 0);
    const all = [
      ...judges.map(({ name, used }) => ({ name, used: used(measured) })),
      ...thresholds.bands.map(({ name, level }, i) => ({ name, used: 10 ** ((spectrum.levels[i]! - level) / 20) })),
      // These two are passed or not at all. Where they are passed, they count as worse than any limit.
      { name: 'stop', used: meetsStop ? Number.MAX_VALUE : 0 },
      { name: 'no solution', used: isSolved ? 0 : Infinity },
    ];
    const worst = all.reduce((most, one) => (one.used > most.used ? one : most));
    return { drive, burst, worst, isPassed: worst.used > 1 + ROUNDING };
  };
  return { tone, tried };
}
