import type { Fault } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { faultOf, told } from '../words/told.js';
import type { Flare } from './flare.js';
import type { VentDrawing } from './vent-drawing.js';
import { ductLine, heightAt } from './vent-solid.js';
import { wallAround } from './wall-around.js';

/** Usual gap of a part that slides, on the radius, m; usual cord, m (common practice). */
const [usualClearance, usualCord] = [2.5e-4, 3e-3];
/** Part of a cord's thickness that is pressed together, and width of its groove over its thickness (common practice). */
export const [SQUEEZE, GROOVE] = [0.2, 1.35];
/** Thickness of the rim of the tube, m (common practice). */
export const RIM = 4e-3;
/** How far the rim rests on the flange, m (common practice). */
const REST = 4e-3;
/** Bevel that leads the cord into the flange, m. */
export const BEVEL = 1e-3;
/** Where the flange lies on the panel, the tube slides so far on each side of its groove, m. */
const LAND = 2e-3;
/** Fewest lines of a nozzle beneath a groove (common practice). */
const LEAST_LINES = 2;

/** Radii and positions along the centre line that tube and flange share, m. */
export interface TwoPartSizes {
  readonly clearance: number;
  readonly cord: number;
  /** Depth of the groove. */
  readonly groove: number;
  /** Position of the middle of the groove. */
  readonly grooveAt: number;
  readonly rim: number;
  readonly seat: number;
  readonly sleeve: number;
  readonly proud: number;
  /** End of the seat and of the flange's sleeve. */
  readonly end: number;
}

export const outerLine = (drawing: VentDrawing) => wallAround(ductLine(drawing), drawing.wall, drawing.fineness);
export const radiusOf = ({ section }: VentDrawing) => (section.form === 'round' ? section.diameter / 2 : 0);

/** What is asked of the seat of a tube, m. */
interface Seat {
  readonly clearance?: number | undefined;
  readonly cord?: number | undefined;
  readonly panelThickness: number;
  readonly widestInnerFlare?: Flare | undefined;
}

/** The sizes of a tube and of a flange with a sleeve in the hole. */
export function sizesOf(drawing: VentDrawing, fields: Seat): TwoPartSizes {
  const { clearance = usualClearance, cord = usualCord, panelThickness } = fields;
  const radius = radiusOf(drawing);
  const line = outerLine(drawing);
  const widest = Math.max(fields.widestInnerFlare?.widening ?? 0, drawing.innerFlare?.widening ?? 0);
  const behindRim = Math.max(
    heightAt(line, RIM),
    ...line.filter(([along]) => along >= RIM).map(([, offset]) => offset),
  );
  const seat = radius + Math.max(behindRim, widest + drawing.wall);
  const proud = RIM + drawing.wall;
  const end = Math.max(proud + panelThickness, RIM + BEVEL + GROOVE * cord + 3 * drawing.wall);
  return {
    clearance,
    cord,
    groove: (1 - SQUEEZE) * cord - clearance,
    grooveAt: (RIM + BEVEL + end) / 2,
    rim: Math.max(radius + line[0]![1], seat + clearance + BEVEL + REST),
    seat,
    sleeve: seat + clearance + drawing.wall,
    proud,
    end,
  };
}

/** The same with a flange that lies on the panel: the seat is in what stands out. */
export function onPanel(sizes: TwoPartSizes): TwoPartSizes {
  const end = RIM + BEVEL + GROOVE * sizes.cord + 2 * LAND;
  return {
    ...sizes,
    proud: end,
    end,
    grooveAt: end - LAND - (GROOVE * sizes.cord) / 2,
    sleeve: sizes.seat + sizes.clearance,
  };
}

/** Faults of a tube that is shorter than its seat, or whose groove leaves too little wall. */
export function grooveFaults(
  drawing: VentDrawing,
  { seat, groove, grooveAt, cord, clearance, end }: TwoPartSizes,
): Fault[] {
  const faults: Fault[] = [];
  const remedy = 'Take a thinner cord, or a thicker wall.';
  if (groove <= 0) {
    faults.push(
      faultOf({
        code: 'inconsistent',
        path: 'clearance',
        got: clearance,
        expected: told`less than ${(1 - SQUEEZE) * cord}, so that the cord is pressed`,
        remedy: 'Take a thicker cord, or less clearance.',
      }),
    );
  }
  const duct = ductLine(drawing);
  const half = (GROOVE * cord) / 2;
  const beneath = Math.min(
    ...[-half, half].map((by) => seat - groove - radiusOf(drawing) - heightAt(duct, Math.max(0, grooveAt + by))),
  );
  const least = LEAST_LINES * drawing.nozzle;
  if (beneath < least - NANOMETRE) {
    faults.push(
      faultOf({
        code: 'inconsistent',
        path: 'cord',
        got: cord,
        expected: told`a cord whose groove leaves ${least} of the wall; it leaves ${beneath}`,
        remedy,
      }),
    );
  }
  if (drawing.length < end + (drawing.innerFlare?.depth ?? 0) - NANOMETRE) {
    const expected = told`at least ${end + (drawing.innerFlare?.depth ?? 0)}, the seat in the flange and the inner flare`;
    const remedy = 'Lengthen the tube.';
    faults.push(faultOf({ code: 'inconsistent', path: 'length', got: drawing.length, expected, remedy }));
  }
  return faults;
}
