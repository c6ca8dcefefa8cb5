import { compileFilter, type Filter } from '@airspring/core/filter';
import { denseStep } from '../simulation/dense-step.js';
import { firstOrderHold } from '../simulation/index.js';

/**
 * A filter over time, in straight lines between samples: the controllable form of its transfer function, in units of its corner.
 *
 * @source franklin1998 §4.3 (discrete equivalents by holds)
 */
export function filteredDrive(filter: Filter, sampleRate: number) {
  // Refuses what is no stable filter.
  compileFilter(filter);
  const { numerator, denominator } = filter;
  const order = denominator.findLastIndex((a) => a !== 0);
  const last = denominator[order]!;
  const scale = order === 0 ? 1 : Math.abs(denominator[0]! / last) ** (1 / order);
  // Divided by scaleⁿ aₙ, so that the first and the last coefficient are 1.
  const normalised = (list: readonly number[]) =>
    Array.from({ length: order + 1 }, (_, k) => (list[k] ?? 0) / (last * scale ** (order - k)));
  const [b, a] = [normalised(numerator), normalised(denominator)];
  const d = b[order]!;
  const A = Float64Array.from({ length: order * order }, (_, i) => {
    const [row, column] = [Math.floor(i / order), i % order];
    if (row === order - 1) return -scale * a[column]!;
    return column === row + 1 ? scale : 0;
  });
  const B = Float64Array.from({ length: order }, (_, k) => (k === order - 1 ? scale : 0));
  const c = Float64Array.from({ length: order }, (_, k) => b[k]! - d * a[k]!);
  return denseStep({ size: order, A, B }, [{ c, d }], 1 / sampleRate, firstOrderHold);
}
