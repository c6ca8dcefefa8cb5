import type { Chain } from './line-chain.js';
import { type LineAir, mostNepers } from './line-kernel.js';
import type { LineSection } from './line-section.js';

/** Steps of a line; the same at every frequency, so that nothing jumps. */
const STEPS = 20;
/** The Gauss points of all steps, two each, as shares of the length. */
const GAUSS = /* @__PURE__ */ Math.sqrt(3) / 6;
const points = /* @__PURE__ */ Array.from(
  { length: 2 * STEPS },
  (_, i) => ((i >> 1) + 0.5 + (i % 2 === 0 ? -GAUSS : GAUSS)) / STEPS,
);
/** Where the losses at the walls are worked out; a polynomial tells them in between, which is good to 1e-8 of the whole. */
const NODES = 8;
const nodes = /* @__PURE__ */ Array.from(
  { length: NODES },
  (_, j) => (1 - Math.cos((Math.PI * (j + 0.5)) / NODES)) / 2,
);
const weights = /* @__PURE__ */ points.map((x) =>
  nodes.map((at, j) =>
    nodes.reduce((product, other, k) => (k === j ? product : (product * (x - other)) / (at - other)), 1),
  ),
);

/** Where the work space holds series impedance and shunt admittance for each metre at both Gauss points, after F and 1 − F. */
const [FIRST, SECOND] = [4, 8] as const;

/** Series impedance times area and shunt admittance over area, for each metre, to room[at …]. */
function perMetre({ layer }: LineSection, medium: LineAir, omega: number, room: Float64Array, at: number): void {
  const { density, speed, surplus, viscous, thermal } = medium;
  const root = Math.sqrt(omega);
  layer(thermal * root, room);
  const shunt = omega / (density * speed * speed);
  room[at + 2] = -shunt * surplus * room[1]!;
  room[at + 3] = shunt * (1 + surplus * room[0]!);
  layer(viscous * root, room);
  const [c, d] = [room[2]!, room[3]!];
  const series = (omega * density) / (c * c + d * d);
  room[at] = series * d;
  room[at + 1] = series * c;
}

/** The same at a Gauss point of this area, from what is known at the nodes. */
function between(known: Float64Array, by: readonly number[], area: number, room: Float64Array, at: number): void {
  let [zr, zi, yr, yi] = [0, 0, 0, 0];
  for (let j = 0; j < by.length; j++) {
    const weight = by[j]!;
    zr += weight * known[4 * j]!;
    zi += weight * known[4 * j + 1]!;
    yr += weight * known[4 * j + 2]!;
    yi += weight * known[4 * j + 3]!;
  }
  room[at] = zr / area;
  room[at + 1] = zi / area;
  room[at + 2] = yr * area;
  room[at + 3] = yi * area;
}
const ALIKE: readonly number[] = [1];

/** A line whose section changes: at a share of its length. */
export interface ChangingSection {
  readonly at: (share: number) => LineSection;
  /** Whether only its area changes, so that the air moves alike in all of it: walls without friction. */
  readonly alike: boolean;
}

/**
 * The chain matrix of a line whose section changes evenly, by a Magnus expansion of fourth order with two Gauss points a step: it is exact
 * where the section does not change, and its error falls as the fourth power of the number of steps. Unchecked.
 */
export function taperedChain({ at, alike }: ChangingSection, length: number, medium: LineAir): Chain {
  const room = new Float64Array(12);
  const h = length / STEPS;
  const areas = points.map((share) => at(share).area);
  const sections = (alike ? [0.5] : nodes).map(at);
  const known = new Float64Array(4 * sections.length);
  return (frequencies, { A, B, C, D }) => {
    for (let i = 0; i < frequencies.length; i++) {
      const omega = 2 * Math.PI * frequencies[i]!;
      for (let j = 0; j < sections.length; j++) {
        perMetre(sections[j]!, medium, omega, room, FIRST);
        for (let k = 0; k < 4; k++) known[4 * j + k] = room[FIRST + k]!;
      }
      let [ar, ai, br, bi, cr, ci, dr, di] = [1, 0, 0, 0, 0, 0, 1, 0];
      for (let n = 0; n < STEPS; n++) {
        between(known, alike ? ALIKE : weights[2 * n]!, areas[2 * n]!, room, FIRST);
        between(known, alike ? ALIKE : weights[2 * n + 1]!, areas[2 * n + 1]!, room, SECOND);
        const [z1r, z1i, y1r, y1i] = [room[FIRST]!, room[FIRST + 1]!, room[FIRST + 2]!, room[FIRST + 3]!];
        const [z2r, z2i, y2r, y2i] = [room[SECOND]!, room[SECOND + 1]!, room[SECOND + 2]!, room[SECOND + 3]!];
        // Means, and the commutator, which is diagonal.
        const zr = (h / 2) * (z1r + z2r);
        const zi = (h / 2) * (z1i + z2i);
        const yr = (h / 2) * (y1r + y2r);
        const yi = (h / 2) * (y1i + y2i);
        const by = (GAUSS / 2) * h * h;
        const kr = by * (z1r * y2r - z1i * y2i - z2r * y1r + z2i * y1i);
        const ki = by * (z1r * y2i + z1i * y2r - z2r * y1i - z2i * y1r);
        // The square root with a real part of zero or more, as the attenuation of a line.
        const qr = kr * kr - ki * ki + zr * yr - zi * yi;
        const qi = 2 * kr * ki + zr * yi + zi * yr;
        const size = Math.hypot(qr, qi);
        const x = Math.sqrt(Math.max(0, (size + qr) / 2));
        const y = Math.sqrt(Math.max(0, (size - qr) / 2)) * (qi < 0 ? -1 : 1);
        const held = Math.min(x, mostNepers / STEPS);
        const [ch, sh, cos, sin] = [Math.cosh(held), Math.sinh(held), Math.cos(y), Math.sin(y)];
        const [cr0, ci0] = [ch * cos, sh * sin];
        const [sr0, si0] = [sh * cos, ch * sin];
        // sinh q over q.
        const unit = x * x + y * y;
        const fr = unit === 0 ? 1 : (sr0 * x + si0 * y) / unit;
        const fi = unit === 0 ? 0 : (si0 * x - sr0 * y) / unit;
        const [gr, gi] = [fr * kr - fi * ki, fr * ki + fi * kr];
        const [tr, ti, wr, wi] = [cr0 + gr, ci0 + gi, cr0 - gr, ci0 - gi];
        const [ur, ui] = [fr * zr - fi * zi, fr * zi + fi * zr];
        const [vr, vi] = [fr * yr - fi * yi, fr * yi + fi * yr];
        [ar, ai, br, bi] = [
          ar * tr - ai * ti + br * vr - bi * vi,
          ar * ti + ai * tr + br * vi + bi * vr,
          ar * ur - ai * ui + br * wr - bi * wi,
          ar * ui + ai * ur + br * wi + bi * wr,
        ];
        [cr, ci, dr, di] = [
          cr * tr - ci * ti + dr * vr - di * vi,
          cr * ti + ci * tr + dr * vi + di * vr,
          cr * ur - ci * ui + dr * wr - di * wi,
          cr * ui + ci * ur + dr * wi + di * wr,
        ];
      }
      A.re[i] = ar;
      A.im[i] = ai;
      B.re[i] = br;
      B.im[i] = bi;
      C.re[i] = cr;
      C.im[i] = ci;
      D.re[i] = dr;
      D.im[i] = di;
    }
  };
}
