/** Complex values over frequency: real and imaginary part, one column each. Never an object a value. */
export interface ComplexColumn {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** An empty complex column. */
export const complexColumn = (length: number): ComplexColumn => ({
  re: new Float64Array(length),
  im: new Float64Array(length),
});
