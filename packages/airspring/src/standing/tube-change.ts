import { isInputError } from '@airspring/core/fault';
import { bracketedRoot } from '@airspring/core/numeric';
import { NANOMETRE } from '@airspring/core/quantity';
import { type Bend, elbowIn, type PrintedTube, type Printer, usualPrinter, widthOf } from '../kind/printed-tube.js';
import type { RowDone, RowNot } from './row.js';
import { type Legs, othersOf, type Standing, type StandingVent } from './standing.js';
import { tunedBy, ventOf } from './state.js';
import { outerOf, sectionTaken, type Tube, WALL } from './tube.js';
import { wayBehind } from './way.js';

const MM = 1e-3;
/** Free room between a tube and its hole, all round. */
const PLAY = 0.5e-3;

/** The longest tube that is tried, m. */
const LONGEST = 3;

/**
 * The length for which tubes of this section tune the box beside the other vents; whole millimetres. `undefined` where no
 * length does, or where core refuses the sizes.
 */
export function lengthOrNone(
  { job, airBeforeVents, panelThickness: t, tuningRatio }: Standing,
  section: Omit<Tube, 'length'>,
  fb: number,
  others: readonly Tube[] = [],
  air = airBeforeVents,
): number | undefined {
  const wanted = fb / tuningRatio;
  const tuningAt = (length: number): number => {
    const found = tunedBy([...others, { ...section, length }].map(ventOf), air, t, job.air);
    return found.ok ? found.fb : 0;
  };
  // A longer tube tunes lower, until it has taken half of the air.
  const least = Math.max(t + MM, 2 * section.rounding);
  const most = Math.min(LONGEST, t + air / 2 / sectionTaken(section));
  if (!(most > least)) return undefined;
  try {
    const found = bracketedRoot((length) => Math.log(tuningAt(length) / wanted), least, most, 1e-7);
    return found.ok ? Math.round(found.x / MM) * MM : undefined;
  } catch (error) {
    if (!isInputError(error)) throw error;
    return undefined;
  }
}

/** The hole that a tube passes, and how it is made. */
export interface Passage {
  readonly hole: number;
  readonly how: 'as it is' | 'joined inside' | 'enlarged' | 'freehand';
}

/** Whether one of the saws makes a hole of this diameter. */
export const sawn = (holeSaws: readonly number[], hole: number): boolean =>
  holeSaws.some((saw) => Math.abs(saw - hole) < NANOMETRE);

/** How a hole becomes another, and how a tube gets in. */
export function passageBetween(
  { workshop: { holeSaws } }: Standing,
  hole: number,
  after: number,
  outer: number,
): Passage {
  if (after <= hole + NANOMETRE) return { hole, how: outer <= hole + NANOMETRE ? 'as it is' : 'joined inside' };
  return { hole: after, how: sawn(holeSaws, after) ? 'enlarged' : 'freehand' };
}

/** The widest bore of a tube, its wall, and how it gets in. */
export interface Bore {
  readonly bore: number;
  readonly wall: number;
  readonly passage: Passage;
  /** A pipe at hand has this bore and no other. */
  readonly fixed?: true;
}

/**
 * The ways to a tube behind a hole: through the hole as it is; glued to the panel from inside, as wide as the hole, brought in
 * through a cutout; through the hole made larger by each saw; and every pipe that passes one of these holes.
 */
export function boresFor(standing: Standing, { hole }: StandingVent): Bore[] {
  const { workshop, drivers } = standing;
  const { cutoutDiameter = 0 } = drivers.driver;
  const asItIs: Passage = { hole, how: 'as it is' };
  const sawn = workshop.holeSaws
    .filter((saw) => saw > hole + NANOMETRE)
    .map((saw): Passage => ({ hole: saw, how: 'enlarged' }));
  const printed = (bore: number) =>
    Math.min(bore, Math.floor((workshop.printer.width - 2 * (WALL + REACH)) / MM + 1e-6) * MM);
  const bore = printed(Math.floor(hole / MM + 1e-6) * MM);
  const inside: Bore = { bore, wall: WALL, passage: { hole, how: 'joined inside' } };
  const all = [
    ...[asItIs, ...sawn].map((passage): Bore => ({ bore: printed(boreFor(passage.hole)), wall: WALL, passage })),
    ...(bore + 2 * WALL <= cutoutDiameter ? [inside] : []),
    ...workshop.pipes.flatMap(({ inner, outer }): Bore[] => {
      const passage = [asItIs, ...sawn].find((one) => outer <= one.hole + NANOMETRE);
      return passage ? [{ bore: inner, wall: (outer - inner) / 2, passage, fixed: true } as const] : [];
    }),
  ];
  return all.filter(({ bore }) => bore >= LEAST_BORE);
}

/** A hole or a printer that allows no more allows no tube, m. */
const LEAST_BORE = 5e-3;

/** The bore of a printed tube that passes a hole, down to whole millimetres. */
const boreFor = (hole: number, wall = WALL): number => Math.floor((hole - 2 * wall - 2 * PLAY) / MM + 1e-6) * MM;

/** How far a flange reaches beyond its tube and beyond its hole, m (common practice). */
const [REACH, COVER] = [1e-2, 5e-3];

/** The flange of a tube that lies on its panel from outside, and covers the edge of its hole. */
export const flangeAround = (tube: Pick<Tube, 'diameter' | 'wall' | 'rounding'>, hole: number): number =>
  Math.max(outerOf(tube) + 2 * (tube.rounding + REACH), hole + 2 * COVER);

/** A tube with the flange by which it is glued to its panel, as a printer makes it. */
function printedTube(
  { workshop: { nozzle }, drivers: { driver } }: Standing,
  { diameter, wall, rounding }: Pick<Tube, 'diameter' | 'wall' | 'rounding'>,
  { hole, how }: Passage,
): PrintedTube {
  const outer = outerOf({ diameter, wall });
  const inside = how === 'joined inside';
  const flangeDiameter = inside
    ? Math.max(outer, Math.min(outer + 2 * REACH, driver.cutoutDiameter ?? Infinity))
    : flangeAround({ diameter, wall, rounding }, hole);
  const widening = { inner: rounding, outer: inside ? 0 : rounding };
  return { diameter, wall, nozzle, flangeDiameter, widening, depth: widening };
}

/** Whether the printer makes a tube, and its elbow. */
export function isPrinted(
  standing: Standing,
  tube: Pick<Tube, 'diameter' | 'wall' | 'rounding'>,
  passage: Passage,
  bend?: Legs | 'somewhere',
): boolean {
  const { printer } = standing.workshop;
  const printed = printedTube(standing, tube, passage);
  if (widthOf(printed) > printer.width + NANOMETRE) return false;
  const elbow = elbowOf(standing, tube, passage, bend);
  return elbow === undefined || elbowIn(printed, elbow, printer) !== undefined;
}

/** The usual printer that makes a tube, where the brief states none. */
export const usualFor = (
  standing: Standing,
  tube: Pick<Tube, 'diameter' | 'wall' | 'rounding' | 'length'>,
  passage: Passage,
  bend?: Legs | 'somewhere',
): Printer | undefined =>
  Number.isFinite(standing.workshop.printer.height)
    ? undefined
    : usualPrinter(printedTube(standing, tube, passage), tube.length, elbowOf(standing, tube, passage, bend));

/** The elbow of a tube with the straight part before it. Where its way is not known, a joint finds room there. */
function elbowOf(
  { panelThickness }: Standing,
  tube: Pick<Tube, 'diameter' | 'wall'>,
  { how }: Passage,
  bend?: Legs | 'somewhere',
): Bend | undefined {
  const ahead = how === 'joined inside' ? panelThickness : 0;
  return bend && { bendRadius: outerOf(tube), firstLeg: bend === 'somewhere' ? Infinity : bend.first - ahead };
}

/** A straight part behind an elbow that is shorter is left out, m. */
export const LEAST_LEG = 1e-3;

/** A tube that is longer than the way behind its hole. */
export type TooLong = NonNullable<RowNot['way']>;

/** How a tube stands behind its hole: straight, bent, or not at all. */
export type Stance =
  | { readonly fitting: RowDone['fitting']; readonly bent: boolean; readonly legs?: Legs }
  | {
      readonly fitting: 'does not fit';
      readonly way: TooLong;
    };

/** How a tube would stand in the place of a vent, beside the other vents. */
export function stanceOf(standing: Standing, vent: StandingVent, tube: Tube): Stance {
  const besides = [...othersOf(standing, vent), ...(standing.plugged ?? [])];
  const body = { outerDiameter: outerOf(tube), clearance: tube.diameter, bendRadius: outerOf(tube) };
  const way = wayBehind(standing, vent.place, body, besides);
  if (way === undefined) return { fitting: 'measure', bent: false };
  // The place of one hole says nothing of further ones.
  const fitting = way.certain && tube.count === 1 ? ('fits' as const) : ('measure' as const);
  if (tube.length <= way.straight + NANOMETRE) return { fitting, bent: false };
  // A bent tube is at least as long as panel and elbow.
  const least = standing.panelThickness + (Math.PI / 2) * outerOf(tube);
  if (tube.length >= least) {
    const legs = way.legs?.(tube.length);
    if (legs) return { fitting, bent: true, legs };
    if (!way.legs && tube.length <= way.bent() + NANOMETRE) return { fitting, bent: true };
  }
  return {
    fitting: 'does not fit',
    way: {
      vent: vent.index,
      diameter: tube.diameter,
      needed: tube.length,
      free: Math.max(way.straight, way.bent()),
    },
  };
}
