import { type Length, si } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { axisOf, facesOn, isFar } from './box-edges.js';
import { acrossAxis } from './brace-pieces.js';
import { halvesOf } from './cutout.js';
import type { PanelBox } from './panel-box.js';
import { type PanelResonance, rangeOf } from './panel-resonance.js';
import type { Piece } from './piece.js';
import { planeAcross, planeOf } from './plane.js';
import { type BraceOnPanelInput, type ReadPlate, readPlate, type Strips } from './plate-resonances.js';

/** A panel of a box as a plate. */
export interface BoxPanelResonance {
  readonly face: Face;
  /** Clear sizes between the panels around it, as it is seen from outside. */
  readonly width: Length;
  readonly height: Length;
  /** With its inner layer. */
  readonly thickness: Length;
  /** The braces that stand on it from edge to edge. */
  readonly braces: readonly { readonly across: 'width' | 'height'; readonly at: Length }[];
  /** Whether something is cut into it, which the numbers leave out. */
  readonly cut: boolean;
  readonly resonance: PanelResonance;
}

/** Nearer than this boards touch, m. */
const TOUCH = 1e-6;

/** How deep a brace is where it stands on a panel: from there to its first opening. */
function depthOf({ place: { least, greatest }, cutouts }: Piece, dividing: number, face: Face): number {
  const axis = axisOf(face);
  const k = planeAcross(dividing).axes.indexOf(axis);
  const size = greatest[axis]! - least[axis]!;
  const openings = cutouts.flatMap(({ across, up, opening }) => {
    if (opening === undefined) return [];
    const near = [across, up][k]! - halvesOf(opening)[k]!;
    return [isFar(face) ? size - near - 2 * halvesOf(opening)[k]! : near];
  });
  return Math.min(size, ...openings);
}

/** Braces that stand on a face from one of its edges to the other. */
function bracesOn({ inner, walls, outer, pieces }: PanelBox, face: Face): BraceOnPanelInput[] {
  const sizes = [outer.width, outer.height, outer.depth];
  const clear = [inner.width, inner.height, inner.depth];
  const from = (axis: number) => walls[facesOn(axis)[0]];
  const axis = axisOf(face);
  const surface = isFar(face) ? sizes[axis]! - walls[face] : walls[face];
  return pieces.flatMap((piece): BraceOnPanelInput[] => {
    if (piece.face !== undefined) return [];
    const { least, greatest } = piece.place;
    const dividing = acrossAxis(piece);
    if (dividing === axis) return [];
    const meets = isFar(face) ? greatest[axis]! > surface - TOUCH : least[axis]! < surface + TOUCH;
    const along = 3 - axis - dividing;
    const runs = least[along]! < from(along) + TOUCH && greatest[along]! > from(along) + clear[along]! - TOUCH;
    if (!meets || !runs) return [];
    const { axes, turned } = planeOf(face);
    const k = axes[0] === dividing ? 0 : 1;
    const near = (least[dividing]! + greatest[dividing]!) / 2 - from(dividing);
    const at = si('length', turned[k] ? clear[dividing]! - near : near);
    const depth = si('length', depthOf(piece, dividing, face));
    return [{ across: k === 0 ? 'width' : 'height', at, bar: { depth, thickness: piece.thickness } }];
  });
}

/**
 * Where the first resonance of each panel of a box lies, with the braces that stand on it from edge to edge. A panel and its inner
 * layer count as one board.
 *
 * @validity as `panelResonance`; braces that stand on a part of a panel are left out
 * @neglects what `panelResonance` neglects; that panels around a panel bend with it
 * @throws InputError as `plateResonances`
 * @source own derivation: `panelResonance` of the clear sizes between the panels
 * @example boxResonances(panelBox(box))[0].resonance
 */
export function boxResonances(box: PanelBox): readonly BoxPanelResonance[] {
  const clear = [box.inner.width, box.inner.height, box.inner.depth];
  // Opposite panels are mostly alike.
  const known = new Map<string, PanelResonance>();
  const strips: Strips = new Map();
  return faces.map((face) => {
    const own = box.pieces.filter((piece) => piece.face === face);
    const [width, height] = planeOf(face).axes.map((axis) => si('length', clear[axis]!)) as [Length, Length];
    const thickness = si(
      'length',
      own.reduce((sum, piece) => sum + piece.thickness, 0),
    );
    const { board, grain, cutouts } = own[0]!;
    const plate = readPlate({ width, height, thickness, board, grain, braces: bracesOn(box, face) });
    const key = keyOf(plate);
    const resonance = known.get(key) ?? rangeOf(plate, strips);
    known.set(key, resonance);
    const braces = (plate.braces ?? []).map(({ across, at }) => ({ across, at }));
    return { face, width, height, thickness, braces, cut: cutouts.length > 0, resonance };
  });
}

/** Plates of which no length differs by a nanometre are one. */
const keyOf = (plate: ReadPlate): string =>
  JSON.stringify(plate, (_, value) => (typeof value === 'number' && value < 10 ? Number(value.toFixed(9)) : value));
