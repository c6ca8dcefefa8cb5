/**
 * Bessel functions J and Y of order 0 or 1 at large x, by their expansion in 1/x; a kernel.
 *
 * $$ J_\nu \pm jY_\nu \sim \sqrt{\frac{2}{\pi x}}\, e^{\pm j\chi} \sum_k (\pm j)^k \frac{a_k(\nu)}{x^k},\quad
 * \chi = x - \tfrac{\nu\pi}{2} - \tfrac\pi4 $$
 *
 * @validity x ≥ 25: the smallest term is about $e^{-2x}$
 * @neglects terms after the first one below rounding
 * @returns 1
 * @source dlmf 10.17.3, 10.17.4
 */
export function hankelExpansion(order: 0 | 1, x: number, kind: 'J' | 'Y'): number {
  let term = 1;
  let p = 1;
  let q = 0;
  for (let k = 1; k < 60 && Math.abs(term) > 1e-18; k++) {
    term *= (4 * order * order - (2 * k - 1) ** 2) / (8 * k * x);
    if (k % 2 === 1) q += k % 4 === 1 ? term : -term;
    else p += k % 4 === 0 ? term : -term;
  }
  // √2 cos(x − π/4) and √2 sin(x − π/4) without rounding the difference; order 1 lags by a quarter turn.
  const s = Math.sin(x);
  const c = Math.cos(x);
  const cosine = order === 0 ? c + s : s - c;
  const sine = order === 0 ? s - c : -(s + c);
  return (kind === 'J' ? p * cosine - q * sine : p * sine + q * cosine) / Math.sqrt(Math.PI * x);
}
