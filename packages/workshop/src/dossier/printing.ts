import type { Impossible } from '@airspring/core/fault';
import { type Mass, si } from '@airspring/core/quantity';
import { usualPrinters } from '@airspring/core/vent';
import { extentOf, type Mesh, type Part, preview, volumeOf } from '../mesh/index.js';
import {
  ellipticFlare,
  exponentialFlare,
  type Flare,
  flareThrough,
  printedTuning,
  roundFlare,
  type VentSolidInput,
  ventSegments,
  ventSolid,
} from '../solid/index.js';
import { usualNozzle, wholeLines } from '../solid/whole-lines.js';
import type { Says } from './says.js';
import type { WorkFlare, WorkTools, WorkVent } from './work.js';

/** Equal vents as a printer makes them. */
export interface Printing {
  readonly ok: true;
  readonly vent: WorkVent;
  /** Its wall in whole lines of the nozzle, and the nozzle, m. */
  readonly wall: number;
  readonly nozzle: number;
  readonly flangeDiameter: number;
  /** The pieces of one vent, from its outer end inwards. */
  readonly parts: readonly Part[];
  /** Where the pieces meet, along the centre line, m. */
  readonly cuts: readonly number[];
  /** Whether each piece lies on its side in the printer. */
  readonly lying: readonly boolean[];
  /** A picture of one vent in one piece. */
  readonly picture: string;
  /** Of all vents, printed solid. */
  readonly mass: Mass;
  /** Tuning of the printed part, from that of its drawing, over it; left out where the air in the box is not known. */
  readonly detuning?: number;
}

const metres = (value: number) => si('length', value);

/** How coarse a picture may be, m. */
export const COARSE = metres(5e-4);
/** Of PLA, the usual plastic of printers, kg/m³ (common practice). */
export const PLASTIC = 1240;
/** How thick a flange is, m (common practice). */
export const FLANGE = 4e-3;
/** What a printer builds where the workshop states none (common practice). */
const USUAL_PRINTER: Printer = { height: usualPrinters[0], width: usualPrinters[0] };

/** That a usual printer is meant, where the workshop states none; nothing where it does. */
export function printerAssumed(
  { printer }: WorkTools,
  says: Says,
  made: readonly { readonly printer?: Printer }[] = [],
): readonly string[] {
  const largest = says(Math.max(...made.map(({ printer: own = USUAL_PRINTER }) => own.height), USUAL_PRINTER.height));
  return printer
    ? []
    : [
        `The brief states no printer. The pieces are for one that builds ${largest} in each direction (common practice): write what yours builds into "printer" of the brief, and make these pages again.`,
      ];
}

type Printer = NonNullable<WorkTools['printer']>;

/** What the printer of the workshop builds, or the one that a part was designed for. */
export function bedOf(tools: WorkTools, made: { readonly printer?: Printer } = {}) {
  const printer = tools.printer ?? made.printer ?? USUAL_PRINTER;
  const width = metres(printer.width);
  return { width, depth: width, height: metres(printer.height) };
}

/** How wide, deep and high a piece is as it lies in the printer, from its solid. */
export const onBed = (mesh: Mesh, says: Says): string =>
  extentOf(mesh)
    .edges.map((edge) => says(Math.round(edge * 1e4) / 1e4))
    .join(' × ');

const sized = ({ depth, widening }: { readonly depth: number; readonly widening: number }) => ({
  depth: metres(depth),
  widening: metres(widening),
});

/** The flare of an end: of its form, or a quarter round; nothing where it is sharp. */
function flareOf(radius: number, { ellipse, exponential, profile }: WorkFlare = {}): Flare | undefined {
  if (ellipse) return ellipticFlare(sized(ellipse));
  if (exponential) return exponentialFlare(sized(exponential));
  if (profile) return flareThrough(profile);
  return radius > 0 ? roundFlare({ radius: metres(radius) }) : undefined;
}

/** The wall of a vent as its design has it, m. */
export const designedWall = ({ outerDiameter, diameter }: Pick<WorkVent, 'outerDiameter' | 'diameter'>): number =>
  (outerDiameter - diameter) / 2;

/** The same in whole lines of the nozzle, m. */
const printedWall = (vent: WorkVent, { nozzle = usualNozzle }: WorkTools): number =>
  wholeLines(designedWall(vent), nozzle);

/** How wide the flange of a vent is as it is printed, m. */
export const printedFlange = (vent: WorkVent, tools: WorkTools): number => flangeOf(vent, printedWall(vent, tools));

/** As wide as the design has it, and at least as the mouth: a flange may be without a collar. */
const flangeOf = ({ diameter, flangeDiameter, flare }: WorkVent, wall: number): number =>
  Math.max(flangeDiameter, diameter + 2 * (wall + (flare?.outer ?? 0)));

const drawn = (vent: WorkVent, wall: number, nozzle: number): VentSolidInput => ({
  diameter: metres(vent.diameter),
  length: metres(vent.length),
  wall: metres(wall),
  nozzle: metres(nozzle),
  outerFlare: vent.flare && flareOf(vent.flare.outer, vent.flare.outerForm),
  innerFlare: vent.flare && flareOf(vent.flare.inner, vent.flare.innerForm),
  flange: { diameter: metres(flangeOf(vent, wall)), thickness: metres(FLANGE) },
  ...(vent.bend && {
    bends: [
      {
        leg: metres(vent.bend.firstLeg),
        angle: si('angle', Math.PI / 2),
        centreLineRadius: metres(vent.bend.radius),
      },
    ],
  }),
});

/** Vents as solids, divided for the printer, with what the solid itself says of its tuning; or why they cannot be printed so. */
export function printingOf(vent: WorkVent, tools: WorkTools, netVolume: number | undefined): Printing | Impossible {
  const { nozzle = usualNozzle } = tools;
  const wall = printedWall(vent, tools);
  const input = drawn(vent, wall, nozzle);
  const printer = bedOf(tools, vent);
  // The piece with the flange goes through a hole that an elbow does not pass; where no joint has room before the bend, they are one.
  const through = vent.bend && ventSegments({ vent: input, printer, firstWithin: metres(vent.bend.firstLeg) });
  const pieces = through?.ok ? through : ventSegments({ vent: input, printer });
  if (!pieces.ok) return pieces;
  const solid = ventSolid(input);
  const picture = preview(ventSolid({ ...input, fineness: COARSE }).mesh, {
    title: 'The vent, printed in one piece',
    azimuth: 2.4,
    elevation: 0.35,
  });
  const volume = vent.count * pieces.parts.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0);
  return {
    ok: true,
    vent,
    wall,
    nozzle,
    flangeDiameter: flangeOf(vent, wall),
    parts: pieces.parts,
    cuts: pieces.cuts,
    lying: pieces.lying,
    picture,
    mass: si('mass', volume * PLASTIC),
    ...(netVolume !== undefined && {
      detuning: printedTuning({ vent: solid, netVolume: si('volume', netVolume) }).difference,
    }),
  };
}
