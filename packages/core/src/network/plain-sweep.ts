import { type ComplexColumn, complexColumn, polynomialColumnOnImaginaryAxis } from '../numeric/index.js';
import type { CompiledNetwork, Polynomials } from './compiled.js';
import { sweepRows } from './sweep.js';

/** Sweep and slope of a network that consists of polynomials alone. */
export function plainSweep(polynomials: Polynomials): Pick<CompiledNetwork, 'sweep' | 'slope'> {
  const { coefficients, width, scale } = polynomials;
  let work = complexColumn(0);
  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number => {
    if (work.re.length < frequencies.length) work = complexColumn(frequencies.length);
    return sweepRows(coefficients, width, scale, frequencies, out, work);
  };

  const derived = new Float64Array(width);
  const column = () => complexColumn(work.re.length);
  let [value, change] = [column(), column()];
  const slope = (probe: number, frequencies: Float64Array, out: ComplexColumn): number => {
    const count = frequencies.length;
    if (value.re.length < count) [value, change] = [complexColumn(count), complexColumn(count)];
    logarithmicSlope(0, -1, frequencies, out);
    logarithmicSlope(1 + probe, 1, frequencies, out);
    return out.re.findIndex((re, i) => i < count && !Number.isFinite(re));
  };
  /** s P′/P, times a sign, into `out`, or added to it. */
  const logarithmicSlope = (row: number, sign: 1 | -1, frequencies: Float64Array, out: ComplexColumn) => {
    const unit = (2 * Math.PI) / scale;
    const own = coefficients.subarray(row * width, (row + 1) * width);
    for (let k = 0; k < width; k++) derived[k] = k * own[k]!;
    polynomialColumnOnImaginaryAxis(own, frequencies, value.re, value.im, unit);
    polynomialColumnOnImaginaryAxis(derived, frequencies, change.re, change.im, unit);
    for (let i = 0; i < frequencies.length; i++) {
      const [a, b] = [value.re[i]!, value.im[i]!];
      const [c, d] = [change.re[i]!, change.im[i]!];
      const size = a * a + b * b;
      const [re, im] = [(c * a + d * b) / size, (d * a - c * b) / size];
      out.re[i] = sign < 0 ? -re : out.re[i]! + re;
      out.im[i] = sign < 0 ? -im : out.im[i]! + im;
    }
  };
  return { sweep, slope };
}
