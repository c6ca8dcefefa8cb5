/** What a quantity over displacement comes to at a swing of some peak: for a force in phase with the displacement, and in quadrature. */
export interface TravelAverages {
  readonly inPhase: number;
  readonly quadrature: number;
}

/**
 * The describing functions of a curve that multiplies a swinging quantity, over its value at rest: the fundamental of
 * c(x̂ cos θ) cos θ in cos θ, and that of c(x̂ cos θ) sin θ in sin θ. Of a power n of the displacement, which is even,
 *
 * $$ \frac1\pi\int_0^{2\pi}\cos^{n+2}\theta\,d\theta = 2\,\frac{(n+1)!!}{(n+2)!!},\qquad
 *    \frac1\pi\int_0^{2\pi}\cos^n\theta\,\sin^2\theta\,d\theta = \frac{2}{n+2}\,\frac{(n-1)!!}{n!!} $$
 *
 * An odd power has no fundamental.
 */
export function travelAverages(coefficients: readonly number[], peak: number): TravelAverages {
  const [atRest = 1] = coefficients;
  let [inPhase, quadrature] = [0, 0];
  // The mean of cosⁿθ, from power to power.
  let mean = 1;
  for (let n = 0; n < coefficients.length; n += 2) {
    const share = (coefficients[n]! / atRest) * peak ** n;
    const next = (mean * (n + 1)) / (n + 2);
    inPhase += 2 * share * next;
    quadrature += 2 * share * (mean - next);
    mean = next;
  }
  return { inPhase, quadrature };
}
