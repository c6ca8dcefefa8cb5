import type { Fit, Layout, VentBody } from '@airspring/core/space';
import { compileBeside } from './beside-drivers.js';
import { type DesignVent, type Hole, holeAt } from './build-record.js';
import { cutInto, elbowIn, type PrintedTube, type Printer, usualPrinter, wholeLines } from './printed-tube.js';
import type { RoundVentSettings } from './round-vent-fields.js';
import { PLAY, type VentHole, ventHole } from './vent-hole.js';

/** Distance between neighbouring flanges in a row, m. */
export const ROW_GAP = 0.005;

/** The settings that shape a tube. */
type TubeSettings = Pick<RoundVentSettings, 'wall' | 'collar' | 'flare' | 'holeSaws'>;

const tubeDiameter = ({ wall }: TubeSettings, diameter: number): number => diameter + 2 * wall;
/** Outer diameter of the outer mouth, which passes through the panel. */
export const mouthDiameter = (settings: TubeSettings, diameter: number): number =>
  tubeDiameter(settings, diameter) + 2 * settings.flare.outer;

/**
 * Sizes of a vent's parts by its inner diameter, as people print them: a collar, and an elbow whose radius is one outer
 * diameter. Around a flared vent, the room of its wider end is kept free over its whole length.
 */
function ventBody(settings: TubeSettings, diameter: number): VentBody {
  const tube = tubeDiameter(settings, diameter);
  const { inner, outer } = settings.flare;
  const outerDiameter = tube + 2 * Math.max(inner, outer);
  return {
    outerDiameter,
    flangeDiameter: Math.max(outerDiameter, mouthDiameter(settings, diameter) + 2 * settings.collar),
    clearance: diameter,
    bendRadius: Math.max(tube, outerDiameter / 2),
  };
}

/** The hole that the tubes pass. */
export const holeOf = (settings: TubeSettings, diameter: number): VentHole =>
  ventHole(settings.holeSaws, mouthDiameter(settings, diameter), ventBody(settings, diameter).flangeDiameter);

/**
 * The same with free room around it: that of its hole, where that is wider. Without a collar, it is the hole that must keep its
 * distance from its neighbours.
 */
export function bodyWithPlay(settings: TubeSettings, diameter: number): VentBody {
  const body = ventBody(settings, diameter);
  const free = body.outerDiameter + 2 * PLAY;
  const outerDiameter = Math.max(free, holeOf(settings, diameter).diameter);
  return {
    ...body,
    outerDiameter,
    flangeDiameter: Math.max(body.flangeDiameter, outerDiameter),
    // The elbow of a wide mouth turns around the free room as well.
    bendRadius: Math.max(body.bendRadius, free / 2),
  };
}

/** How far each end reaches along the tube, m. */
export const depthsOf = ({ flare, formed }: Pick<RoundVentSettings, 'flare' | 'formed'>) => ({
  inner: formed.inner?.flare.depth ?? flare.inner,
  outer: formed.outer?.flare.depth ?? flare.outer,
});

/** A tube as a printer makes it. */
export const printedTube = (settings: RoundVentSettings, diameter: number): PrintedTube => ({
  diameter,
  wall: wholeLines(settings.wall, settings.nozzle),
  nozzle: settings.nozzle,
  flangeDiameter: ventBody(settings, diameter).flangeDiameter,
  widening: settings.flare,
  depth: depthsOf(settings),
});

/** What the printer needs for the elbow of a tube whose panel is this thick; `undefined` where it takes none. */
export const printedElbow = (settings: RoundVentSettings, diameter: number, panel: number): Printer | undefined =>
  elbowIn(
    printedTube(settings, diameter),
    { bendRadius: ventBody(settings, diameter).bendRadius, firstLeg: panel },
    settings.printer,
  );

/** The height that a printer needs: that of the highest straight piece, and of the elbow. */
export const printedHeight = ({ pieces, bend }: DesignVent, elbow: Printer | undefined): number =>
  Math.max(...pieces.map((piece) => (piece === bend?.arc ? (elbow?.height ?? 0) : piece)));

/** A round opening has no sides. */
const ROUND = [0, 0] as const;

/**
 * An upper bound of the longest vent between inner edges: what a box would leave where drivers stand in the way of its mouth
 * alone. What depends on the layout only is worked out once.
 *
 * @source own geometry of cylinders and cuboids
 */
export function compileStraightOrBentAtMost(layout: Layout) {
  const { thickness, vent, cutoutMargin, edgeMargin } = layout;
  const widest = Math.max(...thickness);
  const places = vent.faces.map((face) => {
    const axis = face >> 1;
    const [one, other] = [(axis + 1) % 3, (axis + 2) % 3] as const;
    return { axis, one, other, panel: thickness[face]!, fitsBeside: compileBeside(layout, face, one, other) };
  });
  return (inner: ArrayLike<number>, { outerDiameter, flangeDiameter, clearance, bendRadius }: VentBody): number => {
    const margin = Math.max(outerDiameter / 2 + cutoutMargin, flangeDiameter / 2 + edgeMargin - widest);
    const mouth = { sizes: ROUND, radius: flangeDiameter / 2, margin };
    let most = -1;
    for (const { axis, one, other, panel, fitsBeside } of places) {
      if (!fitsBeside(inner, mouth)) continue;
      const inwards = inner[axis]!;
      most = Math.max(most, panel + inwards - clearance);
      if (!vent.bend) continue;
      const first = inwards - bendRadius - outerDiameter / 2;
      if (first < 0) continue;
      const second = Math.max(inner[one]!, inner[other]!) - clearance - bendRadius - outerDiameter / 2;
      most = Math.max(most, panel + first + (Math.PI / 2) * bendRadius + Math.max(0, second));
    }
    return most;
  };
}

/** The forms of ends that are no quarter rounds. */
const formsOf = ({ formed: { inner, outer } }: Pick<RoundVentSettings, 'formed'>) => ({
  ...(inner && { innerForm: inner.form }),
  ...(outer && { outerForm: outer.form }),
});

/** The vent where it was placed. */
export function ventOf(
  settings: RoundVentSettings,
  { count, diameter, length, fb }: Pick<DesignVent, 'count' | 'diameter' | 'length' | 'fb'>,
  { placement, slack }: Fit,
): DesignVent {
  const placed = placement.vent as NonNullable<Fit['placement']['vent']>;
  const body = ventBody(settings, diameter);
  const bend = placed.bend && { bendRadius: body.bendRadius, firstLeg: placed.firstLeg };
  const usual =
    settings.printer.height < Infinity ? undefined : usualPrinter(printedTube(settings, diameter), length, bend);
  return {
    count,
    diameter,
    outerDiameter: tubeDiameter(settings, diameter),
    flangeDiameter: body.flangeDiameter,
    ...(Math.max(settings.flare.inner, settings.flare.outer) > 0 && {
      flare: { ...settings.flare, ...formsOf(settings) },
    }),
    length,
    fb,
    face: placed.face,
    ...(placed.bend && {
      bend: {
        radius: body.bendRadius,
        firstLeg: placed.firstLeg,
        arc: placed.bend.length,
        secondLeg: placed.bend.secondLeg,
        towards: placed.bend.towards,
      },
    }),
    pieces: piecesOf(
      placed.bend && [placed.firstLeg, placed.bend.length, placed.bend.secondLeg],
      length,
      usual ?? settings.printer,
    ),
    ...(usual && { printer: usual }),
    clearance: body.clearance,
    spare: slack.ventLength ?? 0,
  };
}

/** The pieces to print: straight parts are cut into pieces that the printer takes; an elbow is one piece. */
function piecesOf(parts: readonly number[] | undefined, length: number, printer: Printer): number[] {
  if (parts === undefined) return cutInto(length, printer);
  const [first = 0, arc = 0, second = 0] = parts;
  return [...cutInto(first, printer), arc, ...(second > 1e-4 ? cutInto(second, printer) : [])];
}

/** The holes through which the tubes pass. */
export const ventHoles = (settings: TubeSettings, diameter: number, { placement: { vent } }: Fit): Hole[] =>
  (vent?.centres ?? []).map((centre) =>
    holeAt('vent', vent?.face ?? 'front', holeOf(settings, diameter).diameter, centre),
  );
