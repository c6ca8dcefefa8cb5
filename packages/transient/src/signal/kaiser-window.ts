/** Bessel function I₀, by its series; for arguments up to some tens. */
function besselI0(x: number): number {
  let [sum, term] = [1, 1];
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/**
 * The Kaiser window at a place from −1 to 1; zero beyond the ends.
 *
 * @source kaiser1974
 */
export function kaiserWindow(shape: number): (place: number) => number {
  const scale = 1 / besselI0(shape);
  return (place) => (Math.abs(place) <= 1 ? scale * besselI0(shape * Math.sqrt(1 - place * place)) : 0);
}
