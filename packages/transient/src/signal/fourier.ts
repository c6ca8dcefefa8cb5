/**
 * The discrete Fourier transform of a fixed length, a power of two, in place; a kernel.
 *
 * @source cooley1965
 */
export function fourier(length: number): (re: Float64Array, im: Float64Array) => void {
  const cos = Float64Array.from({ length: length / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / length));
  const sin = Float64Array.from({ length: length / 2 }, (_, k) => -Math.sin((2 * Math.PI * k) / length));
  const reversed = new Uint32Array(length);
  for (let i = 1; i < length; i++) reversed[i] = (reversed[i >> 1]! >> 1) | (i & 1 ? length >> 1 : 0);
  return (re, im) => {
    for (let i = 0; i < length; i++) {
      const j = reversed[i]!;
      if (j <= i) continue;
      [re[i], re[j]] = [re[j]!, re[i]!];
      [im[i], im[j]] = [im[j]!, im[i]!];
    }
    for (let half = 1; half < length; half *= 2) {
      const step = length / (2 * half);
      for (let start = 0; start < length; start += 2 * half) {
        for (let k = 0; k < half; k++) {
          const [c, s] = [cos[k * step]!, sin[k * step]!];
          const [a, b] = [start + k, start + k + half];
          const x = re[b]! * c - im[b]! * s;
          const y = re[b]! * s + im[b]! * c;
          re[b] = re[a]! - x;
          im[b] = im[a]! - y;
          re[a]! += x;
          im[a]! += y;
        }
      }
    }
  };
}
