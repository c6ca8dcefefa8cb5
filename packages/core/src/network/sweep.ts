/** Complex values, one column each for real and imaginary part. */
export interface ComplexColumn {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** An empty complex column. */
export const complexColumn = (length: number): ComplexColumn => ({
  re: new Float64Array(length),
  im: new Float64Array(length),
});

/**
 * Evaluates rows of polynomials over one shared denominator on the imaginary axis, the frequency loop innermost.
 * `coefficients` are those of a topology: row 0 the denominator, row 1 + i goes into `out[i]`; `frequencies` in Hz.
 * Even powers of jω are real and odd ones imaginary: two Horner schemes in −ω².
 */
export function sweepRows(
  coefficients: Float64Array,
  width: number,
  scale: number,
  frequencies: Float64Array,
  out: readonly ComplexColumn[],
  work: ComplexColumn,
): void {
  const count = frequencies.length;
  const toUnit = (2 * Math.PI) / scale;
  const topEven = width - 1 - ((width - 1) % 2);
  const topOdd = width % 2 === 0 ? width - 1 : width - 2;
  const { re: inverseRe, im: inverseIm } = work;
  for (let row = 0; row <= out.length; row++) {
    const base = row * width;
    const column = row === 0 ? work : (out[row - 1] as ComplexColumn);
    const { re, im } = column;
    for (let i = 0; i < count; i++) {
      const w = (frequencies[i] as number) * toUnit;
      const square = -w * w;
      let even = 0;
      let odd = 0;
      for (let k = topEven; k >= 0; k -= 2) even = even * square + (coefficients[base + k] as number);
      for (let k = topOdd; k >= 1; k -= 2) odd = odd * square + (coefficients[base + k] as number);
      odd *= w;
      if (row === 0) {
        const unit = 1 / (even * even + odd * odd);
        re[i] = even * unit;
        im[i] = -odd * unit;
      } else {
        const a = inverseRe[i] as number;
        const b = inverseIm[i] as number;
        re[i] = even * a - odd * b;
        im[i] = even * b + odd * a;
      }
    }
  }
}
