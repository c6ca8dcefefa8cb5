import { type Fault, refuse } from '@airspring/core/fault';
import { polynomialRoots } from '@airspring/core/numeric';
import { type DisplacementPeakInput, given, positive, readFields } from '@airspring/core/quantity';

/** A quantity of a driver over displacement, over its value at rest, as a polynomial. */
export interface PolynomialInput {
  /** The displacement that counts as 1, up to which the polynomial was measured or is meant. */
  readonly reach: DisplacementPeakInput;
  /** Of the first, second … power of displacement over reach: −0.3 in the second place takes 30 % off at both ends. */
  readonly coefficients: readonly number[];
}

/** 1 + c₁ξ + c₂ξ² + …, ξ = x / reach, and the reach in m. */
export interface PolynomialCurve {
  readonly reach: number;
  /** 1, c₁, c₂ … */
  readonly coefficients: Float64Array;
}

const MOST = 12;
const shape = { reach: positive('displacementPeak'), coefficients: given<readonly number[]>() };

/** Reads a polynomial that stays above zero up to its reach on both sides. `what` is a word for the quantity. */
export function readPolynomial(path: string, what: string, input: PolynomialInput): PolynomialCurve {
  const { reach, coefficients } = readFields(path, input, shape);
  const faults: Fault[] = [];
  const at = `${path}.coefficients`;
  if (!Array.isArray(coefficients) || coefficients.length > MOST) {
    const remedy = 'Give them in a list, from the first power on.';
    faults.push({
      code: 'out-of-range',
      path: at,
      got: coefficients,
      expected: `a list of at most ${MOST} numbers`,
      remedy,
    });
    refuse(faults);
  }
  coefficients.forEach((value, i) => {
    if (Number.isFinite(value) && Math.abs(value) <= 1e6) return;
    const code = typeof value === 'number' && Number.isFinite(value) ? 'out-of-range' : 'not-finite';
    faults.push({
      code,
      path: `${at}[${i}]`,
      got: value,
      expected: 'a plain number up to a million',
      remedy: 'Correct it.',
    });
  });
  refuse(faults);
  const all = [1, ...coefficients];
  const zero = nearestZero(all);
  if (zero !== undefined) {
    const remedy = 'Shorten the reach, or fit a polynomial that stays above zero.';
    const got = `zero at ${(zero * reach * 1e3).toPrecision(3)} mm`;
    const expected = `${what} above zero from −reach to reach`;
    refuse([{ code: 'not-positive', path: at, got, expected, remedy }]);
  }
  return { reach, coefficients: Float64Array.from(all) };
}

/** The root between −1 and 1 that is nearest to 0, if there is one. */
function nearestZero(coefficients: readonly number[]): number | undefined {
  if (coefficients.slice(1).every((value) => value === 0)) return undefined;
  const { re, im } = polynomialRoots(coefficients);
  const real = [...re].filter((x, i) => Math.abs(im[i]!) < 1e-9 && Math.abs(x) <= 1);
  return real.sort((a, b) => Math.abs(a) - Math.abs(b))[0];
}

/** Fills value and slope of Σ c_k ξ^k at x; beyond the reach the value stays as it is there. */
export function fillPolynomial({ reach, coefficients }: PolynomialCurve, x: number, out: Float64Array): void {
  const beyond = x > reach || x < -reach;
  const xi = x > reach ? 1 : x < -reach ? -1 : x / reach;
  let value = 0;
  let slope = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) {
    slope = slope * xi + value;
    value = value * xi + coefficients[k]!;
  }
  out[0] = value;
  out[1] = beyond ? 0 : slope / reach;
}
