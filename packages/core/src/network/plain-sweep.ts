import { type ComplexColumn, complexColumns, polynomialColumnOnImaginaryAxis } from '../numeric/index.js';
import type { CompiledNetwork, Polynomials } from './compiled.js';
import type { SweepRows } from './sweep.js';

/** Sweep and slope of a network that consists of polynomials alone. */
export function plainSweep(
  { coefficients, width, scale }: Polynomials,
  sweepRows: SweepRows,
): Pick<CompiledNetwork, 'sweep' | 'slope'> {
  let room: readonly ComplexColumn[] = [];
  const roomFor = (count: number) => {
    if (!(room[0] && room[0].re.length >= count)) room = complexColumns(3, count);
    return room as readonly [ComplexColumn, ComplexColumn, ComplexColumn];
  };
  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number =>
    sweepRows(coefficients, width, scale, frequencies, out, roomFor(frequencies.length)[0]);

  const derived = new Float64Array(width);
  const slope = (probe: number, frequencies: Float64Array, out: ComplexColumn): number => {
    const [, value, change] = roomFor(frequencies.length);
    const unit = (2 * Math.PI) / scale;
    // N′/N − D′/D
    for (const row of [0, 1 + probe]) {
      const own = coefficients.subarray(row * width, (row + 1) * width);
      for (let k = 0; k < width; k++) derived[k] = k * own[k]!;
      polynomialColumnOnImaginaryAxis(own, frequencies, value.re, value.im, unit);
      polynomialColumnOnImaginaryAxis(derived, frequencies, change.re, change.im, unit);
      addQuotient(out, change, value, frequencies.length, row === 0);
    }
    for (let i = 0; i < frequencies.length; i++) if (!Number.isFinite(out.re[i])) return i;
    return -1;
  };
  return { sweep, slope };
}

/** out ← out + a / b, or −a / b to begin with. */
function addQuotient(
  { re, im }: ComplexColumn,
  { re: ar, im: ai }: ComplexColumn,
  { re: br, im: bi }: ComplexColumn,
  count: number,
  isFirst: boolean,
): void {
  for (let i = 0; i < count; i++) {
    const c = ar[i]!;
    const d = ai[i]!;
    const a = br[i]!;
    const b = bi[i]!;
    const size = a * a + b * b;
    const x = (c * a + d * b) / size;
    const y = (d * a - c * b) / size;
    re[i] = isFirst ? -x : re[i]! + x;
    im[i] = isFirst ? -y : im[i]! + y;
  }
}
