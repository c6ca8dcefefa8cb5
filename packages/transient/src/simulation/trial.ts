import type { LawResult } from '@airspring/core/laws';

/** Runs a trial, which returns the fault that it found, if any. An exception breaks the law just as a wrong number does. */
export function tried(law: string, detail: string, fault: () => string | undefined): LawResult {
  try {
    const found = fault();
    return found === undefined ? { law, holds: true, detail } : { law, holds: false, detail: found };
  } catch (error) {
    return { law, holds: false, detail: `threw ${error instanceof Error ? error.message : String(error)}` };
  }
}

/** The first that is wrong, in words. */
export function first<T>(tries: readonly T[], wrong: (one: T) => string | undefined): string | undefined {
  for (const one of tries) {
    const fault = wrong(one);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** Far enough for any cone: used where a model has no end, m. */
const FAR = 0.02;
export const POINTS = 61;
/** Slopes by differences are as good as this part of the greatest value in their neighbourhood. */
const AGREEMENT = 1e-4;

/** Displacements from −1.3 to 1.3 times the reach; none of them at an end, where a curve may have a corner. */
export function places(reach: number): readonly number[] {
  const far = Number.isFinite(reach) ? reach : FAR;
  return Array.from({ length: POINTS }, (_, i) => 1.3 * far * ((2 * i) / (POINTS - 1) - 1) + 1e-4 * far);
}

export const filled = (
  at: (x: number, out: Float64Array) => void,
  x: number,
): readonly [value: number, slope: number] => {
  const out = new Float64Array(2);
  at(x, out);
  return [out[0]!, out[1]!];
};

/** Whether a slope is that of a value at x, told by differences over ±step; a corner in between is passed over. */
export function slopeFault(value: (x: number) => number, slope: number, x: number, step: number): string | undefined {
  const [before, here, after] = [value(x - step), value(x), value(x + step)];
  const [left, right] = [(here - before) / step, (after - here) / step];
  const size = Math.max(Math.abs(before), Math.abs(here), Math.abs(after)) / step;
  if (Math.abs(left - right) > 0.01 * Math.max(Math.abs(left), Math.abs(right), 1e-3 * size)) return undefined;
  return Math.abs((left + right) / 2 - slope) <= AGREEMENT * Math.max(Math.abs(slope), 1e-5 * size)
    ? undefined
    : `the slope at ${x} is ${slope}, but differences give ${(left + right) / 2}`;
}
