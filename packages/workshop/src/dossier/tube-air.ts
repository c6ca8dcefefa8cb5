import { finiteFlange, flanged, flared } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { printedTuning, type VentSolid } from '../solid/index.js';
import type { WorkSetTube, WorkTube } from './change.js';

/** A tube of the box, as its design has it. */
type Designed = Pick<WorkTube, 'diameter' | 'wall' | 'length' | 'rounding'>;
/** The box around it. */
type Around = Pick<WorkSetTube, 'fb' | 'netVolume' | 'flow'>;

const metres = (value: number) => si('length', value);
const rounded = (radius: number, end: typeof flanged) => (radius > 0 ? flared({ radius: metres(radius), end }) : end);

/**
 * The tuning of the box with the printed tube, from the solid: its clear areas slice by slice, the end that its wall gives it, and the
 * air that it takes.
 *
 * $$ f' = f\sqrt{\left(1 + u\left(\frac{\ell}{\ell'} - 1\right)\right)\frac{V}{V'}} $$
 *
 * u is the part of the flow that goes through it, ℓ its effective length, V the air in the box; with a dash as printed.
 */
export function printedFb(
  solid: VentSolid,
  designed: Designed,
  { fb, netVolume, flow }: Around,
  { ahead, takes, counted }: { readonly ahead: number; readonly takes: number; readonly counted: number },
): number {
  const ends = { outerEnd: rounded(designed.rounding, flanged), innerEnd: rounded(designed.rounding, finiteFlange) };
  const drawn = tuning({
    vent: {
      diameter: metres(designed.diameter),
      wall: metres(designed.wall),
      length: metres(designed.length),
      ...ends,
    },
    netVolume: si('volume', netVolume),
  });
  if (!drawn.ok) throw new Error(drawn.because[0]!.text);
  const net = netVolume + counted - takes;
  // The rounding of a hole in front of the tube is no part of the solid.
  const outer = ahead > 0 && { outerEnd: ends.outerEnd };
  const printed = printedTuning({ vent: solid, netVolume: si('volume', net), ahead: metres(ahead), ...outer });
  const mass = 1 + flow * (drawn.effectiveLength / printed.effectiveLength - 1);
  return fb * Math.sqrt((mass * netVolume) / net);
}

/** The air that a tube takes behind its panel, m³. */
export const airBehind = (outerDiameter: number, length: number): number =>
  (Math.PI / 4) * outerDiameter ** 2 * Math.max(0, length);
