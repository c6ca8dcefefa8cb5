import type { CoilCurve } from './curve.js';

/** What the coil does over an interval, for a speed of the cone: filled by {@link CoilPort}. */
export const coil = {
  /** Mean current, A, and its derivative by the speed. */
  current: 0,
  currentSlope: 1,
  /** Mean voltage that the coil takes, V, and its derivative. */
  induced: 2,
  inducedSlope: 3,
  /** Force on the cone, N, and its derivative. */
  force: 4,
  forceSlope: 5,
  /** Flux at the end, V·s, and its derivative. */
  flux: 6,
  fluxSlope: 7,
} as const;

/** What a coil is made of. */
export interface CoilParts {
  readonly Bl: number;
  readonly forceFactor: CoilCurve;
  /** Inductance at rest that moves with the cone, H; with its curve, or none. */
  readonly inductance: { readonly Le: number; readonly curve: CoilCurve } | undefined;
}

/** For moves shorter than this share of the reach, the slope in the middle has as many digits as the quotient. */
const SHORT = 1e-5;

/**
 * A coil over an interval: the voltage that it takes, and the force on the cone. Its force factor is that of the middle, for voltage
 * and force alike, so that it passes on all power. Where the inductance depends on displacement, the flux λ is a state with the energy
 * $W = \lambda^2 / 2L(x)$. Current and reluctance force are its mean slopes over the interval, by λ and by x, each taken halfway
 * between the two orders in which one can go from start to end (@source itoh1988), so that
 * $\bar i\,\Delta\lambda - \bar F \Delta x = \Delta W$ exactly:
 *
 * $$ \bar i = \bar\lambda\,\tfrac12\left(\frac1{L_0} + \frac1{L_1}\right),\quad
 *    \bar F = \tfrac14(\lambda_0^2 + \lambda_1^2)\,\frac{(L_1 - L_0)/(x_1 - x_0)}{L_0 L_1} $$
 *
 * The current then follows from speed and flux without a search: $i = i_0 - Y e$, with $e = Bl\,v + \Delta\lambda/h + \Delta R\,i$.
 */
export type CoilPort = (
  displacement: number,
  speed: number,
  interval: number,
  flux: number,
  currentFree: number,
  admittance: number,
  addedResistance: number,
  out: Float64Array,
) => void;

export function coilPort({ Bl, forceFactor, inductance }: CoilParts): CoilPort {
  const curve = new Float64Array(2);
  const motor: CoilPort = (x, v, h, _flux, free, Y, added, out) => {
    forceFactor.at(x + (h / 2) * v, curve);
    const b = Bl * curve[0]!;
    const slope = ((Bl * h) / 2) * curve[1]!;
    const part = 1 / (1 + Y * added);
    const current = (free - Y * b * v) * part;
    const currentSlope = -Y * (b + slope * v) * part;
    out[coil.current] = current;
    out[coil.currentSlope] = currentSlope;
    out[coil.induced] = b * v + added * current;
    out[coil.inducedSlope] = b + slope * v + added * currentSlope;
    out[coil.force] = b * current;
    out[coil.forceSlope] = slope * current + b * currentSlope;
  };
  if (inductance === undefined) return motor;
  const { Le, curve: moving } = inductance;
  const shortest = SHORT * moving.reach;
  const start = new Float64Array(2);
  return (x, v, h, flux, free, Y, added, out) => {
    forceFactor.at(x + (h / 2) * v, curve);
    const b = Bl * curve[0]!;
    const slope = ((Bl * h) / 2) * curve[1]!;
    const move = h * v;
    moving.at(x, start);
    moving.at(x + move, curve);
    const L0 = Le * start[0]!;
    const L1 = Le * curve[0]!;
    const L1Slope = Le * curve[1]!;
    // (1/L₀ + 1/L₁)/2 and its derivative by the speed.
    const gamma = 0.5 / L0 + 0.5 / L1;
    const gammaSlope = (-0.5 * h * L1Slope) / (L1 * L1);
    const denominator = gamma * (1 + Y * added) + (2 * Y) / h;
    const mean = (free - Y * b * v + ((2 * Y) / h) * flux) / denominator;
    const meanSlope = (-Y * (b + slope * v) - mean * gammaSlope * (1 + Y * added)) / denominator;
    const current = gamma * mean;
    const currentSlope = gamma * meanSlope + gammaSlope * mean;
    let quotient = 0.5 * (Le * start[1]! + L1Slope);
    let quotientSlope = 0;
    if (Math.abs(move) >= shortest) {
      quotient = (L1 - L0) / move;
      quotientSlope = (L1Slope - quotient) / v;
    }
    const end = 2 * mean - flux;
    const squares = 0.25 * (flux * flux + end * end);
    const pull = quotient / (L0 * L1);
    const pullSlope = quotientSlope / (L0 * L1) - (pull * h * L1Slope) / L1;
    out[coil.current] = current;
    out[coil.currentSlope] = currentSlope;
    out[coil.induced] = b * v + (2 / h) * (mean - flux) + added * current;
    out[coil.inducedSlope] = b + slope * v + (2 / h) * meanSlope + added * currentSlope;
    out[coil.force] = b * current + squares * pull;
    out[coil.forceSlope] = slope * current + b * currentSlope + end * meanSlope * pull + squares * pullSlope;
    out[coil.flux] = end;
    out[coil.fluxSlope] = 2 * meanSlope;
  };
}
