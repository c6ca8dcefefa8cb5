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

/** Several complex columns in one buffer: the engine takes longer to make a buffer than to fill it. */
export function complexColumns(count: number, length: number): readonly ComplexColumn[] {
  const room = new Float64Array(2 * count * length);
  const part = (k: number) => room.subarray(k * length, (k + 1) * length);
  return Array.from({ length: count }, (_, k) => ({ re: part(2 * k), im: part(2 * k + 1) }));
}
