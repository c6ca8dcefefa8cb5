import type { EndCorrection, Opening } from './end-correction.js';

/**
 * End correction of a rectangular piston in a wide wall, exact at low frequency. It serves for the flush end of a slot, for
 * which no better formula is known to us. It uses the `aspect` of the opening, and its `radius` as that of a circle of the
 * same area.
 *
 * $$ \Delta\ell = \frac{1}{2\pi S}\iint\frac{dS\,dS'}{|r - r'|}
 *   = \frac{1}{\pi}\left[w\,\mathrm{arsinh}\frac hw + h\,\mathrm{arsinh}\frac wh\right]
 *   - \frac{1}{3\pi wh}\left[(w^2 + h^2)^{3/2} - w^3 - h^3\right] $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $w/h$ | `aspect` | 1 | ratio of the long to the short side; 1, a square, by default |
 * | $wh = S$ | `radius` | m² | area, $\pi a^2$ |
 *
 * @validity $ka \le 0.2$ and $kw \le 0.5$. It is an upper bound, because in a real opening the air moves faster at the rim; for
 *   a circle it is 3 % above the pipe.
 * @neglects the dependence on frequency, the edges of the wall.
 * @returns m
 * @source rayleigh1896 sec. 302, the integral over the rectangle in closed form; kemp2002
 * @example rectangularPiston({ radius: 0.05, aspect: 10 }, 0) // 0.031478 m
 */
export const rectangularPiston: EndCorrection = Object.assign(
  function rectangularPiston({ radius, aspect = 1 }: Opening): number {
    const h = radius * Math.sqrt(Math.PI / aspect);
    const w = aspect * h;
    // (w² + h²)^1.5 − w³ − h³ with the sides ordered by length, so that little cancels.
    const q = h / w;
    const cube = w ** 3 * (Math.expm1(1.5 * Math.log1p(q * q)) - q ** 3);
    return (w * Math.asinh(q) + h * Math.asinh(1 / q) - cube / (3 * w * h)) / Math.PI;
  },
  { sources: ['rayleigh1896', 'kemp2002'], greatestKa: 0.2, atAnyFrequency: true as const },
);

/**
 * End correction of a rectangular opening along one or two walls that meet its own wall at right angles. Each wall acts as a
 * mirror, and the opening and its image act as one opening of twice the size.
 *
 * $$ \Delta\ell = \Delta\ell_{piston}(w, 2h)\quad\text{along one long side},\qquad
 *    \Delta\ell_{piston}(2w, 2h)\quad\text{in a corner} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $w, h$ | `aspect`, `radius` | m | long side and short side |
 *
 * @validity as {@link rectangularPiston}, with walls much longer than the opening; it does not cover a slot from wall to wall.
 * @neglects as {@link rectangularPiston}.
 * @returns an {@link EndCorrection}
 * @source rayleigh1896 sec. 302, with the method of images; exact for the piston
 * @example alongWalls('one')({ radius: 0.05, aspect: 10 }, 0) // 0.0512 m
 */
export function alongWalls(walls: 'one' | 'two'): EndCorrection {
  const along = ({ radius, aspect = 1 }: Opening, k: number) =>
    walls === 'two'
      ? rectangularPiston({ radius: 2 * radius, aspect }, k)
      : rectangularPiston({ radius: Math.SQRT2 * radius, aspect: Math.max(aspect / 2, 2 / aspect) }, k);
  return Object.assign(along, { sources: rectangularPiston.sources, greatestKa: 0.2, atAnyFrequency: true as const });
}
