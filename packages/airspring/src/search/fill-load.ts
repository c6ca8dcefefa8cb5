import type { ComplexColumn } from '@airspring/core/numeric';

/** Peaks of a load at some drives: those of the reading that is greatest. */
export function fillLoad(
  readings: readonly ComplexColumn[],
  integrated: boolean | undefined,
  drives: Float64Array,
  grid: Float64Array,
  out: Float64Array,
): void {
  for (let k = 0; k < readings.length; k++) {
    const { re, im } = readings[k]!;
    for (let i = 0; i < out.length; i++) {
      const square = re[i]! * re[i]! + im[i]! * im[i]!;
      if (k === 0 || square > out[i]!) out[i] = square;
    }
  }
  for (let i = 0; i < out.length; i++) {
    const peak = Math.SQRT2 * Math.sqrt(out[i]!) * drives[i]!;
    out[i] = integrated ? peak / (2 * Math.PI * grid[i]!) : peak;
  }
}
