import type { Design } from 'airspring';
import type { BriefFacts } from './brief-facts.js';
import { say } from './say.js';

/** What the dip of the impedance says of a box with one vented air space. SI. */
export interface Designed {
  readonly name: string;
  /** Where the dip was computed. */
  readonly dip: number;
  readonly effectiveLength: number;
  readonly netVolume: number;
  /** Those of the brief. */
  readonly units: Pick<BriefFacts, 'length' | 'volume'>;
}

/** What a measured dip of this design is held against; undefined where no single round vent, or several alike, tunes all of the air. */
export function designedOf(
  { name, vent, box, impedance }: Design,
  { air, length, volume }: Pick<BriefFacts, 'air' | 'length' | 'volume'>,
): Designed | undefined {
  if (!vent || vent.chamber !== undefined) return undefined;
  const apart = (f: number) => Math.abs(Math.log(f / vent.fb));
  const dip = impedance.minima
    .map(({ frequency }) => frequency)
    .reduce((nearest, f) => (apart(f) < apart(nearest) ? f : nearest), Number.POSITIVE_INFINITY);
  if (!(apart(dip) < Math.log(1.2))) return undefined;
  // (2π fb)² = c² n S / (V ℓ).
  const area = (vent.count * Math.PI * vent.diameter ** 2) / 4;
  const effectiveLength = (air.speedOfSound ** 2 * area) / ((2 * Math.PI * vent.fb) ** 2 * box.netVolume);
  return { name, dip, effectiveLength, netVolume: box.netVolume, units: { length, volume } };
}

/** Nearer than this is as designed; farther than that is no dip of the same box. Common practice. */
const [NEAR, FAR] = [0.02, 1.6];

/** What a measured dip tells: the tuning goes with 1/√(V ℓ), so that either the length or the air is off by the square of its ratio. */
export function builtText(measured: number, { name, dip, effectiveLength, netVolume, units }: Designed): string {
  const ratio = measured / dip;
  const computed = say('frequency', dip, 'Hz');
  if (!(ratio > 1 / FAR && ratio < FAR))
    return `This is too far from ${computed} to be the same dip. Look for the one between the two large peaks.`;
  if (Math.abs(ratio - 1) <= NEAR)
    return `That is within 2 % of ${computed}: you built box ${name} as it was computed.`;
  const off = ratio ** -2 - 1;
  const length = say('length', Math.abs(off) * effectiveLength, units.length, 2);
  const volume = say('volume', Math.abs(off) * netVolume, units.volume, 2);
  const percent = `${Math.round(100 * Math.abs(ratio - 1))}\u00a0% ${ratio > 1 ? 'above' : 'below'} ${computed}`;
  return ratio > 1
    ? `That is ${percent}. A vent that acts ${length} too short would explain it, and so would ${volume} less air than planned. A leak raises the dip as well: look for one first.`
    : `That is ${percent}. A vent that acts ${length} too long would explain it, and so would ${volume} more air than planned. Filling near the vent, or a panel close to its inner end, lowers the dip as well.`;
}
