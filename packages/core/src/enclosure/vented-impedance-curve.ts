/** A vented box that loses, its losses as inverse quality factors. */
export interface LossyBox {
  readonly h: number;
  readonly alpha: number;
  readonly Qes: number;
  readonly suspension: number;
  readonly leak: number;
  readonly absorption: number;
  readonly vent: number;
}

/** Magnitude of Z/Re at u = f/fb, and the slope of its logarithm over that of the frequency: the equations of `lossyVentedImpedance`. */
export function impedanceAt(
  { h, alpha, Qes, suspension: g, leak, absorption: a, vent: p }: LossyBox,
  u: number,
  out: { size: number; slope: number },
): void {
  // Compliance with its absorption, ju/(1 + jua); the vent, 1/(p + ju); the leak.
  const ua = 1 + (u * a) ** 2;
  const up = p * p + u * u;
  const yRe = (u * u * a) / ua + p / up + leak;
  const yIm = u / ua - u / up;
  // Their slopes: j/(1 + jua)² and −j/(p + ju)².
  const dyRe = (2 * u * a) / ua ** 2 - (2 * p * u) / up ** 2;
  const dyIm = (1 - (u * a) ** 2) / ua ** 2 - (p * p - u * u) / up ** 2;
  const r = h * u - 1 / (h * u);
  const dr = h + 1 / (h * u * u);
  // M = y/D with D = y (g + jr) + alpha/h; M' = (y' alpha/h − y² j r')/D².
  const DRe = yRe * g - yIm * r + alpha / h;
  const DIm = yRe * r + yIm * g;
  const D2 = DRe * DRe + DIm * DIm;
  const zRe = 1 + (yRe * DRe + yIm * DIm) / D2 / Qes;
  const zIm = (yIm * DRe - yRe * DIm) / D2 / Qes;
  const nRe = (dyRe * alpha) / h + 2 * yRe * yIm * dr;
  const nIm = (dyIm * alpha) / h - (yRe * yRe - yIm * yIm) * dr;
  const [sRe, sIm] = [DRe * DRe - DIm * DIm, 2 * DRe * DIm];
  const slopeRe = (nRe * sRe + nIm * sIm) / (D2 * D2) / Qes;
  const slopeIm = (nIm * sRe - nRe * sIm) / (D2 * D2) / Qes;
  const size2 = zRe * zRe + zIm * zIm;
  out.size = Math.sqrt(size2);
  out.slope = (u * (zRe * slopeRe + zIm * slopeIm)) / size2;
}
