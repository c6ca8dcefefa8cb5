import { type Impossible, impossible } from '@airspring/core/fault';
import { type Mass, NANOMETRE, si } from '@airspring/core/quantity';
import { type Drawing, sectionDrawing } from '../drawing/index.js';
import { type Part, preview, volumeOf } from '../mesh/index.js';
import { roundFlare, type VentSolidInput, ventSegments, ventSolid } from '../solid/index.js';
import type { WorkTube } from './change.js';
import { bedOf, COARSE, FLANGE, PLASTIC } from './printing.js';
import { airBehind, printedFb } from './tube-air.js';
import type { WorkTools } from './work.js';

/** Equal tubes as a printer makes them. */
export interface TubePrinting {
  readonly ok: true;
  readonly name: string;
  readonly count: number;
  readonly diameter: number;
  /** As it is printed, m. */
  readonly outerDiameter: number;
  readonly flangeDiameter?: number;
  /** Of the printed part, along the centre line, m. */
  readonly length: number;
  readonly parts: readonly Part[];
  readonly cuts: readonly number[];
  /** Whether each piece lies on its side in the printer. */
  readonly lying: readonly boolean[];
  readonly bent: boolean;
  readonly picture: string;
  readonly section: Drawing;
  /** Of all of them, printed solid. */
  readonly mass: Mass;
  /** The tuning that it was designed for, and that of the printed part, Hz. */
  readonly designed: number;
  readonly printed: number;
}

const metres = (value: number) => si('length', value);

/** Play of a printed tube in its hole, on the diameter (common practice); how far a flange reaches beyond tube and hole, m. */
const PLAY = 5e-4;
const [REACH, COVER] = [1e-2, 5e-3];
/** Fewest lines of a nozzle in a wall that is joined: two in each half (common practice), and their clearance, m. */
export const leastWall = ({ nozzle = 4e-4 }: WorkTools): number => 4 * nozzle + 1.5e-4;

const flareOf = (radius: number) => (radius > 0 ? roundFlare({ radius: metres(radius) }) : undefined);

/** The wall that leaves a tube its play in its hole, m. */
export const wallWithin = ({ diameter, wall }: Pick<WorkTube, 'diameter' | 'wall'>, hole: number): number =>
  Math.min(wall, (hole - PLAY - diameter) / 2);

const tooNarrow = (name: string): Impossible =>
  impossible(
    'hole-too-narrow',
    `The ${name} is not made as a solid: its hole leaves too little for a wall. Give the diameter of the hole, or a saw for a wider one.`,
  );

/** Tubes as solids in pieces for the printer, with the tuning of the solid; or why there are none. */
export function tubePrinting(tube: WorkTube, tools: WorkTools, panelThickness: number): TubePrinting | Impossible {
  const { name, count, diameter, length, rounding, hole, stands, bend } = tube;
  const behind = stands === 'in the hole' ? undefined : stands;
  const wall = behind ? tube.wall : wallWithin(tube, hole);
  if (wall < leastWall(tools) - NANOMETRE) return tooNarrow(name);
  const ahead = behind ? panelThickness : 0;
  const outerDiameter = diameter + 2 * wall;
  const mouth = outerDiameter + (behind ? 0 : 2 * rounding);
  const flangeDiameter = behind
    ? Math.min(outerDiameter + 2 * REACH, behind.behindWithin - PLAY)
    : Math.max(mouth + 2 * REACH, hole + 2 * COVER);
  const flanged = flangeDiameter > mouth;
  const input: VentSolidInput = {
    diameter: metres(diameter),
    length: metres(length - ahead),
    wall: metres(wall),
    nozzle: tools.nozzle === undefined ? undefined : metres(tools.nozzle),
    outerFlare: behind ? undefined : flareOf(rounding),
    innerFlare: flareOf(rounding),
    ...(flanged && { flange: { diameter: metres(flangeDiameter), thickness: metres(FLANGE) } }),
    ...(bend && {
      bends: [
        {
          leg: metres(bend.firstLeg - ahead),
          angle: si('angle', Math.PI / 2),
          centreLineRadius: metres(bend.radius),
        },
      ],
    }),
  };
  // What is wider than the hole, or turns, is joined inside.
  const widens = outerDiameter + 2 * rounding + PLAY > hole;
  const within = bend ? bend.firstLeg : widens && rounding > 0 ? length - rounding : undefined;
  const firstWithin = behind || within === undefined ? undefined : metres(within);
  const pieces = ventSegments({ vent: input, printer: bedOf(tools, tube), firstWithin });
  if (!pieces.ok) return pieces;
  const solid = ventSolid(input);
  const thickness = flanged ? FLANGE : 0;
  const outside = behind ? 0 : thickness;
  const inside = length - ahead - outside - (behind ? 0 : panelThickness);
  const collar = behind && flanged ? airBehind(flangeDiameter, thickness) - airBehind(outerDiameter, thickness) : 0;
  const printed = printedFb(
    solid,
    tube,
    { ...tube, flow: tube.ofBox.flow },
    {
      ahead,
      takes: tube.ofBox.count * (airBehind(outerDiameter, inside) + collar),
      counted: tube.ofBox.count * airBehind(diameter + 2 * tube.wall, length - panelThickness),
    },
  );
  return {
    ok: true,
    name,
    count,
    diameter,
    outerDiameter,
    ...(flanged && { flangeDiameter }),
    length: length - ahead,
    parts: pieces.parts.map((part) => ({ ...part, name: part.name.replace(/^vent/, name) })),
    cuts: pieces.cuts,
    lying: pieces.lying,
    bent: bend !== undefined,
    picture: preview(ventSolid({ ...input, fineness: COARSE }).mesh, {
      title: `The ${name}, printed in one piece`,
      azimuth: 2.4,
      elevation: 0.35,
    }),
    section: sectionDrawing({
      title: `The ${name} in its panel`,
      parts: [{ name, mesh: solid.mesh }],
      length: length - ahead,
      bore: diameter,
      outerDiameter,
      ...(flanged && { flangeDiameter }),
      panel: { from: behind ? -panelThickness : outside, thickness: panelThickness, hole },
      cuts: bend ? [] : pieces.cuts,
    }),
    mass: si('mass', count * pieces.parts.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0) * PLASTIC),
    designed: tube.fb,
    printed,
  };
}
