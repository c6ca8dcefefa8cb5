import { NANOMETRE } from '@airspring/core/quantity';
import { usualPrinters } from '@airspring/core/vent';

/** How far one printed piece reaches into the next, the gap around it, and how exactly its place is chosen, m (common practice). */
const [OVERLAP, CLEARANCE, STEP] = [0.012, 1.5e-4, 1e-3];
/** How long the spigot of a printed piece is, m. */
export const SPIGOT = OVERLAP;
/** Fewest lines of a nozzle in each half of a joint (common practice). */
const LEAST_LINES = 2;
/** How thick a flange is, m (common practice). */
const FLANGE = 4e-3;

/** The nozzle of most printers, m (common practice). */
export const USUAL_NOZZLE = 0.4e-3;

/** The least whole number of lines of a nozzle that is as thick as a wall, m. */
export const wholeLines = (wall: number, nozzle: number): number => Math.ceil(wall / nozzle - 1e-6) * nozzle;

/** What a printer takes, m; infinite where none is stated. */
export interface Printer {
  readonly height: number;
  readonly width: number;
}

/** A tube as a printer makes it, m. */
export interface PrintedTube {
  readonly diameter: number;
  /** In whole lines of the nozzle. */
  readonly wall: number;
  readonly nozzle: number;
  readonly flangeDiameter: number;
  /** How much each end widens on each side, and how far that reaches along the tube. */
  readonly widening: { readonly inner: number; readonly outer: number };
  readonly depth: { readonly inner: number; readonly outer: number };
}

/** The radius of an elbow and the least straight length before it, m. */
export interface Bend {
  readonly bendRadius: number;
  readonly firstLeg: number;
}

/** The width of the bed that a tube asks for: that of its flange, or of a wider end. */
export const widthOf = ({ diameter, wall, flangeDiameter, widening: { inner, outer } }: PrintedTube): number =>
  Math.max(flangeDiameter, diameter + 2 * (wall + Math.max(inner, outer)));

/** How far from an end the first joint may be. */
const endOf = (depth: number, wall: number): number => (depth > 0 ? Math.max(depth, wall) : 0);

/** How far the flange and the outer end reach along a tube. */
const headOf = ({ depth, wall }: PrintedTube): number => Math.max(endOf(depth.outer, wall), FLANGE);

/** Whether a printer makes a tube of any length: its wall holds a joint, and a piece with two of them is not too high. */
export function isJoined(tube: PrintedTube, { height }: Printer): boolean {
  if (height === Infinity) return true;
  const { wall, nozzle, depth } = tube;
  if (wall < 2 * LEAST_LINES * nozzle + CLEARANCE - NANOMETRE) return false;
  return 3 * (OVERLAP + STEP) + Math.max(headOf(tube), endOf(depth.inner, wall)) <= height;
}

/**
 * The height and the width that the printed elbow of a tube needs, with a spigot and a socket: lying on its side, or else standing on
 * its outer end; `undefined` where a printer takes neither. `firstLeg` is the least straight length before the bend: where it is too
 * short for a joint, the elbow has the flange.
 */
export function elbowIn(tube: PrintedTube, { bendRadius, firstLeg }: Bend, printer: Printer): Printer | undefined {
  const { diameter, wall, widening, depth } = tube;
  if (printer.height < Infinity && (!isJoined(tube, printer) || firstLeg < Math.max(FLANGE, wall) - NANOMETRE))
    return undefined;
  const radius = diameter / 2 + wall;
  const leg = OVERLAP + STEP;
  const head = headOf(tube);
  const near =
    firstLeg >= head + leg - NANOMETRE ? { reach: radius, leg } : { reach: widthOf(tube) / 2, leg: head + leg };
  const far = { reach: radius + widening.inner, leg: leg + endOf(depth.inner, wall) };
  const across = 2 * Math.max(near.reach, far.reach);
  const [high, wide] = [near.leg + bendRadius + far.reach, near.reach + bendRadius + far.leg];
  return [
    { height: across, width: Math.max(high, wide) },
    { height: high, width: Math.max(wide, across) },
  ].find(({ height, width }) => height <= printer.height + NANOMETRE && width <= printer.width + NANOMETRE);
}

/** A straight part in as few pieces as a printer takes, equally high; each but the last has a spigot, which its length leaves out. */
export function cutInto(part: number, { height }: Printer): number[] {
  if (part <= height + NANOMETRE) return [part];
  const count = Math.ceil((part - OVERLAP) / Math.max(STEP, height - OVERLAP) - 1e-9);
  const high = (part + (count - 1) * OVERLAP) / count;
  return Array.from({ length: count }, (_, i) => (i < count - 1 ? high - OVERLAP : high));
}

const usual = usualPrinters.map((edge): Printer => ({ height: edge, width: edge }));

/** The smallest usual printer whose bed is this wide, where a brief states none; `undefined` where none is. */
export const usualWidth = (width: number): Printer | undefined =>
  usual.find((printer) => width <= printer.width + NANOMETRE);

/** The smallest usual printer that makes a tube, where a brief states none; `undefined` where none does. */
export const usualPrinter = (tube: PrintedTube, length: number, bend?: Bend): Printer | undefined =>
  usual.find((printer) => {
    if (widthOf(tube) > printer.width + NANOMETRE) return false;
    return bend ? elbowIn(tube, bend, printer) !== undefined : length <= printer.height || isJoined(tube, printer);
  });
