import { InputError } from '../fault/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { assign } from './column-arithmetic.js';
import type { Law } from './element.js';
import type { Slots } from './slots.js';

/** Fills the column of a law. A value that is not finite is refused with the name of the law. */
export function fillLaw(
  law: Law,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  out: ComplexColumn,
): void {
  assign(out, 0, frequencies.length);
  law.fill(values, slots.of.get(law.name)?.at ?? 0, frequencies, out);
  refuseNoNumber(law.name, frequencies, out);
}

/** Relative step of the difference quotients of elements given over frequency. */
export const STEP = 1e-5;

/** ∂/∂ln f of the column of a law: its own slope where it has one, else a difference quotient. */
export function fillLawSlope(
  law: Law,
  values: Float64Array,
  slots: Slots,
  frequencies: Float64Array,
  out: ComplexColumn,
): void {
  if (law.slope !== undefined) {
    fillLaw({ ...law, fill: law.slope }, values, slots, frequencies, out);
    return;
  }
  const below = complexColumn(frequencies.length);
  const beside = (ratio: number) => frequencies.map((f) => f * ratio);
  fillLaw(law, values, slots, beside(1 - STEP), below);
  fillLaw(law, values, slots, beside(1 + STEP), out);
  differenceQuotient(out, below, 2 * STEP, frequencies.length);
}

/** above ← (above − below) / step */
export function differenceQuotient(above: ComplexColumn, below: ComplexColumn, step: number, count: number): void {
  for (let i = 0; i < count; i++) {
    above.re[i] = (above.re[i]! - below.re[i]!) / step;
    above.im[i] = (above.im[i]! - below.im[i]!) / step;
  }
}

export function refuseNoNumber(name: string, frequencies: Float64Array, { re, im }: ComplexColumn): void {
  let sum = 0;
  for (let i = 0; i < frequencies.length; i++) sum += re[i]! + im[i]!;
  if (Number.isFinite(sum)) return;
  const i = frequencies.findIndex((_, k) => !Number.isFinite(re[k]! + im[k]!));
  if (i < 0) return;
  const [path, remedy] = [`elements.${name}`, `Correct the values that '${name}' fills.`];
  const [got, expected] = [re[i]! + im[i]!, `a finite number at ${frequencies[i]} Hz`];
  throw new InputError([{ code: 'not-finite', path, got, expected, remedy }]);
}
