import { type Impossible, impossible } from '@airspring/core/fault';
import { format, type Mass, NANOMETRE, si } from '@airspring/core/quantity';
import { type Drawing, plateDrawing, sectionDrawing } from '../drawing/index.js';
import { type Mesh, type Part, preview, volumeOf } from '../mesh/index.js';
import { roundFlare, type TwoPartVent, tubeSegments, twoPartVent, ventSolid } from '../solid/index.js';
import type { WorkTubeSet } from './change.js';
import { bedOf, PLASTIC } from './printing.js';
import { airBehind, printedFb } from './tube-air.js';
import { leastWall, wallWithin } from './tube-printing.js';
import type { Work, WorkTools } from './work.js';

/** One tube of a set: printed, or cut from a pipe. */
export interface SetTubePrinting {
  readonly name: string;
  readonly length: number;
  /** Its pieces; none where it is a pipe. */
  readonly parts: readonly Part[];
  readonly cuts: readonly number[];
  readonly section: Drawing;
  readonly designed: number;
  readonly printed: number;
}

/** The flange and the tubes of a set. */
export interface SetPrinting {
  readonly ok: true;
  readonly vent: TwoPartVent;
  readonly outerDiameter: number;
  readonly flange: Part;
  /** A ring with rim and groove, one for each pipe. */
  readonly collar?: Part;
  readonly face: Drawing;
  /** Flange and outer end of a tube, cut along the middle. */
  readonly head: Drawing;
  readonly tubes: readonly SetTubePrinting[];
  readonly pictures: readonly (readonly [picture: string, words: string])[];
  /** Of everything, printed solid. */
  readonly mass: Mass;
}

const metres = (value: number) => si('length', value);

/** The cord: thin enough for its groove in a usual wall, m. */
const CORD = metres(2e-3);
/** How coarse the picture of a ring may be, m. */
const FINER = metres(1.5e-4);
/** Gap for glue between a pipe and its collar, on the radius, and wall of the collar, m (common practice). */
const [GLUE, COLLAR] = [1e-4, 3e-3];
/** How far behind the panel the drawing of the head shows the tube, m. */
const SHOWN = 0.015;

/** A set of tubes for one flange as solids, each tube in pieces for the printer; or why there is none. */
export function setPrinting(
  set: WorkTubeSet,
  tools: WorkTools,
  panelThickness: number,
  unit: Work['unit'],
): SetPrinting | Impossible {
  const { diameter, hole, pipe, rounding, flangeDiameter } = set;
  const wall = pipe ? set.wall : wallWithin(set, hole);
  if (!pipe && wall < leastWall(tools) - NANOMETRE) {
    const text = 'The set of tubes is not made as solids: its hole leaves too little for a wall.';
    return impossible('hole-too-narrow', text);
  }
  const outerDiameter = diameter + 2 * wall;
  const flare = rounding > 0 ? roundFlare({ radius: metres(rounding) }) : undefined;
  const partsOf = (length: number | undefined, fineness?: typeof FINER) =>
    twoPartVent({
      diameter: metres(pipe ? outerDiameter + 2 * GLUE : diameter),
      wall: metres(pipe ? COLLAR : wall),
      length: length === undefined ? undefined : metres(length),
      panelThickness: metres(panelThickness),
      nozzle: tools.nozzle === undefined ? undefined : metres(tools.nozzle),
      outerFlare: pipe ? undefined : flare,
      innerFlare: pipe ? undefined : flare,
      hole: metres(hole),
      flangeDiameter: metres(flangeDiameter),
      cord: CORD,
      fineness,
    });
  const longest = Math.max(...set.tubes.map(({ length }) => length));
  const vent = partsOf(pipe ? undefined : longest);
  if (!vent.ok) return vent;
  const collar = pipe ? vent : undefined;
  const panel = { from: vent.proud, thickness: panelThickness, hole };
  const sized = { bore: diameter, outerDiameter, panel };
  const flange = { name: 'flange', mesh: vent.flange };
  const bodies = (tube: Mesh) => [
    { name: 'tube', mesh: tube },
    ...(collar ? [{ name: 'collar', mesh: collar.tube.mesh }] : []),
    flange,
  ];
  const tubes: SetTubePrinting[] = [];
  for (const tube of set.tubes) {
    const { length } = tube;
    const own = pipe ? undefined : partsOf(length);
    if (own?.ok === false) return own;
    const pieces = own && tubeSegments({ vent: own, printer: bedOf(tools, set) });
    if (pieces?.ok === false) return pieces;
    const solid = own?.tube ?? ventSolid({ diameter: metres(diameter), wall: metres(wall), length: metres(length) });
    const name = `tube ${tube.mark}, ${format('length', Math.round(length * 1e3) / 1e3, unit)}`;
    tubes.push({
      name,
      length,
      parts: (pieces?.parts ?? []).map((piece) => ({ ...piece, name: piece.name.replace(/^tube/, name) })),
      cuts: pieces?.cuts ?? [],
      section: sectionDrawing({
        title: `${name.replace('tube', 'Tube')}, in its flange`,
        parts: bodies(solid.mesh),
        length,
        ...sized,
        cuts: pieces?.cuts ?? [],
      }),
      designed: tube.fb,
      printed: printedFb(solid, { ...set, length }, tube, {
        ahead: 0,
        takes: airBehind(outerDiameter, length - vent.proud - panelThickness),
        counted: airBehind(diameter + 2 * set.wall, length - panelThickness),
      }),
    });
  }
  const end = Math.min(longest, vent.proud + panelThickness + SHOWN);
  const short = pipe ? undefined : partsOf(end);
  const headTube = short?.ok
    ? short.tube.mesh
    : ventSolid({ diameter: metres(diameter), wall: metres(wall), length: metres(end) }).mesh;
  const coarse = partsOf(pipe ? undefined : longest, FINER);
  const seen = { azimuth: 2.4, elevation: 0.35, size: 320 };
  const printedMeshes = [
    vent.flange,
    ...set.tubes.flatMap((_, i) => (collar ? [collar.tube.mesh] : tubes[i]!.parts.map(({ mesh }) => mesh))),
  ];
  return {
    ok: true,
    vent,
    outerDiameter,
    flange,
    ...(collar && { collar: { name: 'collar', mesh: collar.tube.mesh } }),
    face: plateDrawing({
      name: 'hole and flange',
      form: { diameter: hole },
      marked: [{ diameter: vent.flangeDiameter, what: 'edge of the flange' }],
    }),
    head: sectionDrawing({
      title: 'Flange and outer end of a tube',
      parts: bodies(headTube),
      length: end,
      ...sized,
      flangeDiameter: vent.flangeDiameter,
    }),
    tubes,
    pictures: coarse.ok
      ? [
          [preview(coarse.flange, { title: 'The flange', ...seen }), 'The flange, seen from the side of the panel.'],
          [
            preview(coarse.tube.mesh, { title: pipe ? 'The collar' : 'A tube', ...seen }),
            pipe ? 'The collar: it is glued over the outer end of a pipe.' : 'The longest tube, in one piece.',
          ],
        ]
      : [],
    mass: si('mass', printedMeshes.reduce((sum, mesh) => sum + volumeOf(mesh), 0) * PLASTIC),
  };
}
