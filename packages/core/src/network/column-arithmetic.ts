// Complex arithmetic on columns of frequencies, one loop an operation, in place. Offsets count numbers.

/** z ← 1/z, by blocks. */
export function invert(re: Float64Array, im: Float64Array, at: number, count: number): void {
  for (let i = at; i < at + count; i++) {
    const a = re[i] as number;
    const b = im[i] as number;
    // Divided by its own size first: squares of very small or large units would leave double precision.
    const size = Math.abs(a) + Math.abs(b);
    const c = a / size;
    const d = b / size;
    const unit = 1 / ((c * c + d * d) * size);
    re[i] = c * unit;
    im[i] = -d * unit;
  }
}

/** z ← z w, by blocks. */
export function multiply(
  zr: Float64Array,
  zi: Float64Array,
  z: number,
  wr: Float64Array,
  wi: Float64Array,
  w: number,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    const a = zr[z + i] as number;
    const b = zi[z + i] as number;
    const c = wr[w + i] as number;
    const d = wi[w + i] as number;
    zr[z + i] = a * c - b * d;
    zi[z + i] = a * d + b * c;
  }
}

/** z ← z − f w, by blocks. */
export function subtractProduct(
  zr: Float64Array,
  zi: Float64Array,
  z: number,
  fr: Float64Array,
  fi: Float64Array,
  f: number,
  wr: Float64Array,
  wi: Float64Array,
  w: number,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    const a = fr[f + i] as number;
    const b = fi[f + i] as number;
    const c = wr[w + i] as number;
    const d = wi[w + i] as number;
    (zr[z + i] as number) -= a * c - b * d;
    (zi[z + i] as number) -= a * d + b * c;
  }
}

/** z ← −z, by blocks. */
export function negate(zr: Float64Array, zi: Float64Array, z: number, count: number): void {
  for (let i = z; i < z + count; i++) {
    zr[i] = -(zr[i] as number);
    zi[i] = -(zi[i] as number);
  }
}
