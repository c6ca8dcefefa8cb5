import { complexColumn, logarithmicSlope } from '../numeric/index.js';
import { type CompiledNetwork, probeIndex } from './compile.js';

/**
 * Group delay of the sound pressure, which is s times the radiated flow up to a constant. With polynomials it is exact:
 *
 * $$ \tau = -\frac{d\varphi}{d\omega} = \mathrm{Re}\!\left(\frac{D'}{D} - \frac{N'}{N}\right)_{s = j\omega} $$
 *
 * (the factor s adds a constant quarter turn and no delay). Without polynomials it is the difference quotient of the phase
 * over ±10⁻⁵ of the frequency.
 */
export function groupDelay(network: CompiledNetwork, frequencies: Float64Array): Float64Array {
  const row = probeIndex(network.probes, 'radiatedFlow');
  const { polynomials } = network;
  if (polynomials === undefined) return differenceQuotient(network, row, frequencies);
  const { coefficients, width, scale } = polynomials;
  const omega = frequencies.map((f) => (2 * Math.PI * f) / scale);
  const part = (r: number) => coefficients.subarray(r * width, (r + 1) * width);
  const denominator = logarithmicSlope(part(0), omega);
  const numerator = logarithmicSlope(part(1 + row), omega);
  return denominator.map((value, i) => (value - (numerator[i] as number)) / scale);
}

function differenceQuotient(network: CompiledNetwork, row: number, frequencies: Float64Array): Float64Array {
  const step = 1e-5;
  const at = (factor: number) => {
    const out = network.probes.map(() => complexColumn(frequencies.length));
    network.sweep(
      frequencies.map((f) => f * factor),
      out,
    );
    return out[row] as { re: Float64Array; im: Float64Array };
  };
  const below = at(1 - step);
  const above = at(1 + step);
  return frequencies.map((f, i) => {
    const [a, b, c, d] = [above.re[i], above.im[i], below.re[i], below.im[i]] as [number, number, number, number];
    return -Math.atan2(b * c - a * d, a * c + b * d) / (2 * Math.PI * f * 2 * step);
  });
}
