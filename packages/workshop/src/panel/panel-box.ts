import { type Fault, type Impossible, type Reason, refuse } from '@airspring/core/fault';
import { type Length, si } from '@airspring/core/quantity';
import { type Face, innerSize, type Size, type ThicknessInput } from '@airspring/core/space';
import { axisOf, edgeOf, facesOn, isFar, neighboursOf } from './box-edges.js';
import { braceFaults, bracePieces } from './brace-pieces.js';
import { gapsOf } from './closed.js';
import type { Cutout } from './cutout.js';
import { cutoutReasons } from './cutout-fits.js';
import type { EdgeCut } from './joint.js';
import { type BoxOfPanels, type PanelBoxInput, readPanelBox } from './panel-box-input.js';
import { bySide, type Piece, type PieceEdge, pieceOf, pointAt } from './piece.js';
import { facesAround, inPlane, type Plane, planeOf } from './plane.js';
import { covers, depthOf, wallOf } from './wall.js';

/** A box as pieces of board. */
export interface PanelBox {
  readonly ok: true;
  readonly outer: Size;
  readonly inner: Size;
  /** How thick the wall of each face is with its inner layer and from the edge that it stands back from: for core's space. */
  readonly walls: Readonly<Record<Face, Length>> & ThicknessInput;
  readonly pieces: readonly Piece[];
}

/** How a panel is made where it meets another one. */
function edgeAt(box: BoxOfPanels, face: Face, other: Face): PieceEdge & { readonly setback: number } {
  const over = covers(box, face, other);
  const edge = edgeOf(face, other);
  const [own, theirs] = [wallOf(box, face), wallOf(box, other)];
  const joint = box.jointAt(edge);
  const met = over ? joint.meet(own.panel, theirs.panel).over : joint.meet(theirs.panel, own.panel).under;
  const cuts = met.cuts.map(
    (cut): EdgeCut => (cut.form === 'groove' ? { ...cut, from: si('length', cut.from + theirs.recess) } : cut),
  );
  const roundOver = over || cuts.some(({ form }) => form === 'bevel') ? box.roundOver[edge] : undefined;
  return {
    meets: other,
    edge,
    joint: joint.name,
    covers: over,
    visible: over && !cuts.some(({ form }) => form === 'bevel'),
    cuts,
    ...(roundOver !== undefined && { roundOver }),
    setback: met.setback + (over ? 0 : theirs.recess),
  };
}

/** The enclosing cuboid of a board: its edges given by their distance from the outer sides of the box. */
function placeOf(
  { outer }: BoxOfPanels,
  face: Face,
  from: number,
  thickness: number,
  setback: (other: Face) => number,
): Piece['place'] {
  const axis = axisOf(face);
  const fromTo = (k: 0 | 1 | 2): readonly [from: number, to: number] => {
    const [near, far] = facesOn(k);
    if (k !== axis) return [setback(near), outer[k] - setback(far)];
    const low = isFar(face) ? outer[k] - from - thickness : from;
    return [low, low + thickness];
  };
  const [x, y, z] = [fromTo(0), fromTo(1), fromTo(2)];
  return { least: pointAt(x[0], y[0], z[0]), greatest: pointAt(x[1], y[1], z[1]) };
}

const sizeIn = ({ axes }: Plane, { least, greatest }: Piece['place']) => {
  const [width, height] = axes.map((axis) => si('length', greatest[axis]! - least[axis]!));
  return { width: width!, height: height! };
};

const grainIn = (box: BoxOfPanels, face: Face): Pick<Piece, 'grain'> => {
  if (!box.boardOf(face).grained) return {};
  const along = box.grain[face] ?? (axisOf(face) === 1 ? 'width' : 'height');
  const axis = ['width', 'height', 'depth'].indexOf(along);
  return { grain: planeOf(face).axes[0] === axis ? 'width' : 'height' };
};

const cutoutsIn = (box: BoxOfPanels, face: Face, place: Piece['place'], keep: (one: Cutout) => Cutout): Cutout[] =>
  box.cutouts
    .filter((one) => one.face === face)
    .map(({ face: _, ...one }) => {
      const at = inPlane(planeOf(face), place.least, place.greatest, [one.across, one.up]);
      return keep({ ...one, across: si('length', at[0]), up: si('length', at[1]) });
    })
    .filter(({ opening, recess, bolts }) => opening || recess || bolts);

function panelPiece(box: BoxOfPanels, face: Face): Piece {
  const { recess, panel, layer } = wallOf(box, face);
  const around = facesAround(planeOf(face));
  const made = Object.fromEntries(neighboursOf(face).map((other) => [other, edgeAt(box, face, other)]));
  const place = placeOf(box, face, recess, panel, (other) => made[other]!.setback);
  const edges = bySide((side): PieceEdge => {
    const { setback: _, ...edge } = made[around[side]]!;
    return edge;
  });
  return pieceOf({
    name: face,
    face,
    ...sizeIn(planeOf(face), place),
    thickness: si('length', panel),
    board: box.boardOf(face),
    ...grainIn(box, face),
    edges,
    // The inner edge of an opening is that of the inner layer, where there is one.
    cutouts: cutoutsIn(box, face, place, ({ roundOver, ...one }) =>
      roundOver && !layer ? { ...one, roundOver } : one,
    ),
    place,
  });
}

function layerPiece(box: BoxOfPanels, face: Face): Piece {
  const { recess, panel, layer } = wallOf(box, face);
  const place = placeOf(box, face, recess + panel, layer, (other) => {
    const wall = wallOf(box, other);
    return wall.recess + wall.panel + (covers(box, other, face) ? wall.layer : 0);
  });
  const around = facesAround(planeOf(face));
  return pieceOf({
    name: `${face}, inner layer`,
    face,
    ...sizeIn(planeOf(face), place),
    thickness: si('length', layer),
    board: box.boardOf(face),
    ...grainIn(box, face),
    edges: bySide((side) => ({ meets: around[side], covers: false, visible: false, cuts: [] })),
    cutouts: cutoutsIn(box, face, place, ({ recess: _, ...one }) => one),
    place,
  });
}

/** Rounded edges that would lay a joint open, and grains that run across a panel. */
function edgeFaults(box: BoxOfPanels): Fault[] {
  const faults: Fault[] = [];
  for (const [edge, radius] of Object.entries(box.roundOver) as [keyof typeof box.roundOver, Length][]) {
    const [one, other] = edge.split('-') as [Face, Face];
    const [over, under] = covers(box, one, other) ? [one, other] : [other, one];
    const thick = [wallOf(box, over).panel, wallOf(box, under).panel] as const;
    const met = box.jointAt(edge).meet(...thick);
    const most = met.under.cuts.some(({ form }) => form === 'bevel') ? Math.min(...thick) : met.under.setback;
    if (radius <= most) continue;
    const expected = `at most ${most} m, or the joint is laid open`;
    faults.push({
      code: 'inconsistent',
      path: `box.roundOver.${edge}`,
      got: radius,
      expected,
      remedy: 'Use a smaller radius.',
    });
  }
  for (const [face, along] of Object.entries(box.grain) as [Face, string][]) {
    if (['width', 'height', 'depth'].indexOf(along) !== axisOf(face)) continue;
    const expected = 'an axis in the plane of the panel';
    faults.push({
      code: 'inconsistent',
      path: `box.grain.${face}`,
      got: along,
      expected,
      remedy: 'Name another axis.',
    });
  }
  return faults;
}

/**
 * The pieces of a cuboid box: six panels, inner layers and braces, each with its size, its edges, its grain and what is cut into it.
 *
 * $$ \ell = L - s_1 - s_2, \qquad \sum V_{pieces} = V_{outer} - V_{inner} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `outer` | m | outer edge of the box |
 * | $s_1, s_2$ | `joint`, `covering` | m | how far a piece stands back at both ends: 0 where it covers, the thickness of the other panel in a butt joint, less the step in a rabbet |
 * | $V$ | `pieces[].volume` | m³ | before holes are cut |
 *
 * A box is refused unless its panels, with their joints, fill the walls everywhere once.
 *
 * @validity flat panels at right angles; thicknesses as measured
 * @neglects glue, sanding, the width of a saw in the joints; rounded edges that meet at a corner are counted twice there
 * @returns the pieces, or why cutouts and braces do not fit
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `conflict`, `inconsistent` when the panels leave nothing or the joints leave gaps
 * @source own geometry of a cuboid
 * @example panelBox({ outer: { width: '300 mm', height: '400 mm', depth: '350 mm' }, thickness: '18 mm' }) // six pieces
 */
export function panelBox(input: PanelBoxInput): PanelBox | Impossible {
  const box = readPanelBox(input);
  refuse([...edgeFaults(box), ...braceFaults(box)]);
  const panels = box.covering.map((face) => panelPiece(box, face));
  const layers = box.covering.filter((face) => box.innerLayer[face]).map((face) => layerPiece(box, face));
  refuse(gapsOf(box, [...panels, ...layers]));
  const braces = bracePieces(box);
  const because: Reason[] = [...braces.because, ...cutoutReasons(box, panels, braces.pieces)];
  if (because.length > 0) return { ok: false, because };
  const [width, height, depth] = box.outer.map((edge) => si('length', edge)) as [Length, Length, Length];
  const walls = Object.fromEntries(
    box.covering.map((face) => {
      return [face, si('length', depthOf(wallOf(box, face)))];
    }),
  ) as Record<Face, Length>;
  const outer = { width, height, depth };
  return {
    ok: true,
    outer,
    inner: innerSize({ outer, thickness: walls }),
    walls,
    pieces: [...panels, ...layers, ...braces.pieces],
  };
}
