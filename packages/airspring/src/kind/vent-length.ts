import type { Air } from '@airspring/core/air';
import { compileLengthForTuning, type VentSection } from '@airspring/core/vent';
import type { Point } from './point.js';

/** The length that tunes an air volume to a frequency. */
export type LengthFor = (netVolume: number, fb: number) => number;

const MM = 1e-3;
export const wholeMillimetres = (length: number): number => Math.round(length / MM) * MM;

/** For the vents of a point, the length that tunes an air volume to a frequency; compiled once for equal vents. */
export function ventLengths(
  { section: sectionOf }: { readonly section: (point: Point) => VentSection },
  air: Air,
): (point: Point) => LengthFor {
  const lengths = new Map<VentSection, LengthFor>();
  return (point) => {
    const section = sectionOf(point);
    let length = lengths.get(section);
    if (length === undefined) {
      length = compileLengthForTuning(section, air);
      lengths.set(section, length);
    }
    return length;
  };
}

const SETTLING = 12;

/**
 * Rounds a vent to whole millimetres, and finds the tuning that results. `airWith` is the air that resonates with a vent of a
 * length. `undefined` where the vent would be no longer than its panel, or leave no more than the least air.
 */
export function wholeVent(
  length: LengthFor,
  airWith: (length: number) => number,
  tuned: number,
  panel: number,
  leastAir: number,
): { readonly length: number; readonly netVolume: number; readonly fb: number } | undefined {
  let [netVolume, ventLength, fb] = [airWith(0), 0, tuned];
  // The vent takes volume, and a smaller volume needs a longer vent: first the fixed point, then whole millimetres.
  for (let i = 0; i < SETTLING; i++) {
    const before = ventLength;
    ventLength = length(netVolume, fb);
    netVolume = airWith(ventLength);
    if (!(ventLength > panel) || netVolume <= leastAir) return undefined;
    if (Math.abs(ventLength - before) < 1e-5) break;
  }
  ventLength = wholeMillimetres(ventLength);
  netVolume = airWith(ventLength);
  return { length: ventLength, netVolume, fb: tuningOf(length, netVolume, ventLength, fb) };
}

/** The tuning that a length gives, near another: two secant steps. */
export function tuningOf(length: LengthFor, netVolume: number, ventLength: number, near: number): number {
  let fb = near;
  for (let i = 0; i < 2; i++) {
    const off = length(netVolume, fb) - ventLength;
    const slope = (length(netVolume, fb * 1.001) - ventLength - off) / (0.001 * fb);
    fb -= off / slope;
  }
  return fb;
}

/** A length that a tuning gives agrees with the one that is wanted within this, m. */
const AGREES = 1e-8;

/**
 * The tuning that a length gives, from any beginning. The length is nearly linear in 1/f², so that secant steps in 1/f² arrive
 * at once. `undefined` where no tuning gives it, as where it is less than the flares and bends take.
 */
export function tuningBy(length: LengthFor, netVolume: number, ventLength: number, near: number): number | undefined {
  let before = 1 / near ** 2;
  let atBefore = length(netVolume, near);
  let now = 1.2 * before;
  for (let i = 0; i < SETTLING && now > 0; i++) {
    const fb = 1 / Math.sqrt(now);
    const atNow = length(netVolume, fb);
    if (Math.abs(atNow - ventLength) < AGREES) return fb;
    const next = now + ((ventLength - atNow) * (now - before)) / (atNow - atBefore);
    before = now;
    atBefore = atNow;
    now = next;
  }
  return undefined;
}
