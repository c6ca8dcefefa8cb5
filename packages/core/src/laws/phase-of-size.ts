import type { ComplexColumn } from '../numeric/index.js';

/** Every so many frequencies are enough: the sign of a phase is asked, not its digits. */
const EVERY = 4;
const TERMS = 25;
/** rad, below which a phase is rounding. */
const LEAST = 1e-4;

/** ∫ ln coth(v/2) dv from 0 to u, the weight of a slope over that stretch of ln f. */
function weight(u: number): number {
  let sum = 0;
  for (let n = 1; n < 2 * TERMS; n += 2) sum += (2 * (1 - Math.exp(-n * Math.abs(u)))) / n ** 2;
  return Math.sign(u) * sum;
}

/**
 * Finds a phase that runs against its size. The impedance of a passive part is of minimum phase, so that its phase follows from
 * how its size rises with frequency (@source bode1945 ch. 14). Beyond the band the rise is taken to go on, so only the sign of
 * their correlation is judged: it turns where the imaginary part has the wrong sign.
 */
export function phaseFault({ re, im }: ComplexColumn, frequencies: Float64Array): string | undefined {
  const places = Array.from({ length: Math.floor((frequencies.length - 1) / EVERY) + 1 }, (_, i) => EVERY * i);
  const size = places.map((i) => Math.log(Math.hypot(re[i]!, im[i]!)));
  if (size.some((value) => !Number.isFinite(value)) || places.length < 3) return undefined;
  const at = places.map((i) => Math.log(frequencies[i]!));
  const last = places.length - 1;
  const rise = at.slice(1).map((x, i) => (size[i + 1]! - size[i]!) / (x - at[i]!));
  const follows = (x: number): number => {
    const inside = rise.reduce((sum, slope, i) => sum + slope * (weight(at[i + 1]! - x) - weight(at[i]! - x)), 0);
    const below = rise[0]! * (weight(at[0]! - x) + Math.PI ** 2 / 4);
    const above = rise.at(-1)! * (Math.PI ** 2 / 4 - weight(at[last]! - x));
    return (below + inside + above) / Math.PI;
  };
  const [own, due] = [places.map((i) => Math.atan2(im[i]!, re[i]!)), at.map(follows)];
  const product = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, one, i) => sum + one * b[i]!, 0) / a.length;
  const scale = Math.sqrt(product(own, own) * product(due, due));
  if (!(scale > LEAST ** 2)) return undefined;
  const agreement = product(own, due) / scale;
  return agreement < -0.5
    ? `its phase has the sign opposite to that of its rise (correlation ${agreement})`
    : undefined;
}
