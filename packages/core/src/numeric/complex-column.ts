/** Complex values over frequency, as one column of real parts and one of imaginary parts. */
export interface ComplexColumn {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** A complex column filled with zeros. */
export const complexColumn = (length: number): ComplexColumn => ({
  re: new Float64Array(length),
  im: new Float64Array(length),
});
