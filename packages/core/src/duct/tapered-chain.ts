import { putProduct, startProduct, timesStep } from './chain-product.js';
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
  let zr = 0;
  let zi = 0;
  let yr = 0;
  let yi = 0;
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

/** Coefficients 1/(2n)! and 1/(2n + 1)! of the series in q² of cosh q and of sinh q over q, from the highest on. */
const COSH = [1 / 87178291200, 1 / 479001600, 1 / 3628800, 1 / 40320, 1 / 720, 1 / 24, 1 / 2, 1] as const;
const SINH = [1 / 1307674368000, 1 / 6227020800, 1 / 39916800, 1 / 362880, 1 / 5040, 1 / 120, 1 / 6, 1] as const;
/** Below it, as |q²|², what the series leaves out is less than the rounding of its sum. */
const SMALL = 1 / 16;

/** cosh q and sinh q over q, of a complex q² = r + i·j, to room[0 …]. */
function hyperbolic(r: number, j: number, room: Float64Array): void {
  if (r * r + j * j < SMALL) {
    let cr = 0;
    let ci = 0;
    let fr = 0;
    let fi = 0;
    for (let n = 0; n < COSH.length; n++) {
      const c = cr * r - ci * j + COSH[n]!;
      ci = cr * j + ci * r;
      cr = c;
      const f = fr * r - fi * j + SINH[n]!;
      fi = fr * j + fi * r;
      fr = f;
    }
    room[0] = cr;
    room[1] = ci;
    room[2] = fr;
    room[3] = fi;
    return;
  }
  // The square root with a real part of zero or more, as the attenuation of a line.
  const size = Math.hypot(r, j);
  const x = Math.sqrt(Math.max(0, (size + r) / 2));
  const y = Math.sqrt(Math.max(0, (size - r) / 2)) * (j < 0 ? -1 : 1);
  const held = Math.min(x, mostNepers / STEPS);
  const ch = Math.cosh(held);
  const sh = Math.sinh(held);
  const cos = Math.cos(y);
  const sin = Math.sin(y);
  room[0] = ch * cos;
  room[1] = sh * sin;
  const unit = x * x + y * y;
  room[2] = (sh * cos * x + ch * sin * y) / unit;
  room[3] = (ch * sin * x - sh * cos * y) / unit;
}

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
  const product = new Float64Array(8);
  const h = length / STEPS;
  const areas = points.map((share) => at(share).area);
  const sections = (alike ? [0.5] : nodes).map(at);
  const known = new Float64Array(4 * sections.length);
  return (frequencies, out) => {
    for (let i = 0; i < frequencies.length; i++) {
      const omega = 2 * Math.PI * frequencies[i]!;
      for (let j = 0; j < sections.length; j++) {
        perMetre(sections[j]!, medium, omega, room, FIRST);
        for (let k = 0; k < 4; k++) known[4 * j + k] = room[FIRST + k]!;
      }
      startProduct(product);
      for (let n = 0; n < STEPS; n++) {
        between(known, alike ? ALIKE : weights[2 * n]!, areas[2 * n]!, room, FIRST);
        between(known, alike ? ALIKE : weights[2 * n + 1]!, areas[2 * n + 1]!, room, SECOND);
        const z1r = room[FIRST]!;
        const z1i = room[FIRST + 1]!;
        const y1r = room[FIRST + 2]!;
        const y1i = room[FIRST + 3]!;
        const z2r = room[SECOND]!;
        const z2i = room[SECOND + 1]!;
        const y2r = room[SECOND + 2]!;
        const y2i = room[SECOND + 3]!;
        // Means, and the commutator, which is diagonal.
        const zr = (h / 2) * (z1r + z2r);
        const zi = (h / 2) * (z1i + z2i);
        const yr = (h / 2) * (y1r + y2r);
        const yi = (h / 2) * (y1i + y2i);
        const by = (GAUSS / 2) * h * h;
        const kr = by * (z1r * y2r - z1i * y2i - z2r * y1r + z2i * y1i);
        const ki = by * (z1r * y2i + z1i * y2r - z2r * y1i - z2i * y1r);
        hyperbolic(kr * kr - ki * ki + zr * yr - zi * yi, 2 * kr * ki + zr * yi + zi * yr, room);
        const cr0 = room[0]!;
        const ci0 = room[1]!;
        const fr = room[2]!;
        const fi = room[3]!;
        const gr = fr * kr - fi * ki;
        const gi = fr * ki + fi * kr;
        const tr = cr0 + gr;
        const ti = ci0 + gi;
        const wr = cr0 - gr;
        const wi = ci0 - gi;
        const ur = fr * zr - fi * zi;
        const ui = fr * zi + fi * zr;
        const vr = fr * yr - fi * yi;
        const vi = fr * yi + fi * yr;
        timesStep(product, tr, ti, ur, ui, vr, vi, wr, wi);
      }
      putProduct(product, out, i);
    }
  };
}
