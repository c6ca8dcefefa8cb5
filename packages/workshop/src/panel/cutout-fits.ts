import type { Reason } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import type { Face } from '@airspring/core/space';
import { reasonOf, told, type Words } from '../words/told.js';
import { axisOf, isFar } from './box-edges.js';
import { boltsOf, type Cutout, type Form, halvesOf } from './cutout.js';
import type { BoxOfPanels } from './panel-box-input.js';
import { type Piece, sides } from './piece.js';
import { facesAround, inPlane, planeOf } from './plane.js';
import { depthOf, wallOf } from './wall.js';

/** A rounded rectangle in the plane of a panel: its middle, the half sizes of what is not rounded, and its radius. */
interface Patch {
  readonly what: string;
  readonly middle: readonly [number, number];
  readonly half: readonly [number, number];
  readonly radius: number;
}

const patch = (what: string, middle: readonly [number, number], form: Form): Patch => {
  const [across, up] = halvesOf(form);
  const radius = 'diameter' in form ? across : form.cornerRadius;
  return { what, middle, half: [across - radius, up - radius], radius };
};

/** The distance between two patches; below zero where they overlap. */
function apart(one: Patch, other: Patch): number {
  const [x, y] = [0, 1].map((k) => Math.abs(one.middle[k]! - other.middle[k]!) - one.half[k]! - other.half[k]!) as [
    number,
    number,
  ];
  const between = x > 0 && y > 0 ? Math.hypot(x, y) : Math.max(x, y);
  return between - one.radius - other.radius;
}

/** What of a cutout goes through the panel. */
function holesOf(
  { part, opening, bolts }: Pick<Cutout, 'part' | 'opening' | 'bolts'>,
  middle: readonly [number, number],
): readonly Patch[] {
  const open = opening ? [patch(`the ${part} opening`, middle, opening)] : [];
  const drilled = bolts
    ? boltsOf(bolts).map(([x, y]) =>
        patch(`a bolt of the ${part}`, [middle[0] + x, middle[1] + y], { diameter: bolts.hole }),
      )
    : [];
  return [...open, ...drilled];
}

/** What within one cutout cannot be made. */
export function withinReasons(
  { part, opening, recess, bolts, roundOver }: Cutout,
  panel: number,
  layer: number,
  play: number,
): Reason[] {
  const because: Reason[] = [];
  const say = (code: string, words: Words) => because.push(reasonOf(code, words));
  const step = recess?.depth ?? 0;
  if (recess && step > panel - play + NANOMETRE)
    say(
      'recess-too-deep',
      told`The recess of the ${part} is ${step} deep in a panel of ${panel}; at least ${play} must be left.`,
    );
  const left = layer > 0 ? layer : panel - step;
  if (roundOver !== undefined && roundOver > left + NANOMETRE)
    say(
      'round-over-too-large',
      told`The rounded edge behind the ${part} has a radius of ${roundOver}, but only ${left} of the panel is left there.`,
    );
  if (opening && recess && halvesOf(opening).some((half, k) => half > halvesOf(recess.form)[k]! + NANOMETRE))
    say('recess-too-small', `The recess of the ${part} is smaller than its opening.`);
  const middle = [0, 0] as const;
  const drilled = bolts ? holesOf({ part, bolts }, middle) : [];
  if (opening && drilled.some((bolt) => apart(bolt, patch('', middle, opening)) < play - NANOMETRE))
    say(
      'bolts-meet-opening',
      told`Bolts of the ${part} come nearer than ${play} to its opening. Use a larger bolt circle or smaller holes.`,
    );
  if (opening && roundOver && drilled.some((bolt) => apart(bolt, patch('', middle, opening)) < roundOver - NANOMETRE))
    say(
      'bolts-over-round-over',
      told`Bolts of the ${part} come out in the rounded edge behind it, of ${roundOver}. Use a smaller radius or a larger bolt circle.`,
    );
  if (drilled.length > 1 && apart(drilled[0]!, drilled[1]!) < play - NANOMETRE)
    say('bolts-meet', told`Bolts of the ${part} come nearer than ${play} to each other.`);
  if (recess && bolts) {
    const radius = bolts.hole / 2;
    const edge = patch('', middle, recess.form);
    const inside = (bolt: Patch) =>
      halvesOf(recess.form).every((half, k) => Math.abs(bolt.middle[k]!) + radius <= half - play + NANOMETRE);
    const round =
      'diameter' in recess.form && bolts.diameter / 2 + radius <= recess.form.diameter / 2 - play + NANOMETRE;
    const isClear = (bolt: Patch) =>
      ('diameter' in recess.form ? round : inside(bolt)) || apart(bolt, edge) >= play - NANOMETRE;
    if (!drilled.every(isClear))
      say('bolts-meet-recess', told`Bolts of the ${part} come nearer than ${play} to the edge of its recess.`);
  }
  return because;
}

/** Why cutouts do not fit: they meet a panel, a joint, a brace or each other, or cannot be made. */
export function cutoutReasons(box: BoxOfPanels, panels: readonly Piece[], braces: readonly Piece[]): Reason[] {
  const because = panels.flatMap((piece) => {
    const own = box.cutouts.filter(({ face }) => face === piece.face);
    return own.length === 0 ? [] : onFace(box, piece, own, braces);
  });
  // Bolts of one circle have the same words.
  return [...new Map(because.map((reason) => [reason.text, reason])).values()];
}

function onFace(box: BoxOfPanels, piece: Piece, own: readonly Cutout[], braces: readonly Piece[]): Reason[] {
  const { play, outer } = box;
  const face = piece.face as Face;
  const because: Reason[] = [];
  const plane = planeOf(face);
  const around = facesAround(plane);
  const origin = [0, 0, 0];
  const size = [outer[plane.axes[0]]!, outer[plane.axes[1]]!] as const;
  const middles = own.map(({ across, up }) => inPlane(plane, origin, outer, [across, up]));
  const wall = wallOf(box, face);
  const inside = isFar(face) ? outer[axisOf(face)]! - depthOf(wall) : depthOf(wall);
  // Braces that stand on this panel, as they are seen from outside.
  const standing = braces
    .filter(({ place }) => Math.abs((isFar(face) ? place.greatest : place.least)[axisOf(face)]! - inside) < NANOMETRE)
    .map(({ name, place: { least, greatest } }): Patch => {
      const [from, to] = [least, greatest].map((corner) =>
        inPlane(plane, origin, outer, [corner[plane.axes[0]]!, corner[plane.axes[1]]!]),
      ) as [readonly [number, number], readonly [number, number]];
      const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
      return { what: name, middle, half: [Math.abs(to[0] - from[0]) / 2, Math.abs(to[1] - from[1]) / 2], radius: 0 };
    });
  /** How far a patch is from the side of the drawing that meets another panel. */
  const fromEdge = ({ middle, half, radius }: Patch, side: (typeof sides)[number]): number => {
    const k = side === 'left' || side === 'right' ? 0 : 1;
    const near = side === 'left' || side === 'bottom';
    return (near ? middle[k]! : size[k]! - middle[k]!) - half[k]! - radius;
  };
  for (const [i, cutout] of own.entries()) {
    const middle = middles[i]!;
    because.push(...withinReasons(cutout, wall.panel, wall.layer, play));
    for (const hole of holesOf(cutout, middle)) {
      for (const side of sides) {
        const left = fromEdge(hole, side) - depthOf(wallOf(box, around[side]));
        if (left >= (cutout.flush ? 0 : play) - NANOMETRE) continue;
        const where =
          left < -NANOMETRE
            ? told`overlaps the ${around[side]} panel by ${-left}`
            : told`comes within ${Math.max(0, left)} of the ${around[side]} panel`;
        const words = told`On the ${face}, ${hole.what} ${where}; ${play} must stay free. Move it by ${play - left}.`;
        because.push(reasonOf('cutout-flush', words));
      }
      for (const brace of standing) {
        const left = apart(hole, brace);
        if (left >= play - NANOMETRE) continue;
        const where = left < -NANOMETRE ? 'meets' : told`comes within ${Math.max(0, left)} of`;
        const words = told`On the ${face}, ${hole.what} ${where} ${brace.what}; ${play} must stay free.`;
        because.push(reasonOf('cutout-on-brace', words));
      }
    }
    if (cutout.recess)
      because.push(...recessReasons(box, piece, cutout, patch('', middle, cutout.recess.form), fromEdge));
  }
  return [...because, ...betweenReasons(face, own, middles, play)];
}

/** Why cutouts of one panel do not fit beside each other. */
export function betweenReasons(
  name: string,
  own: readonly Cutout[],
  middles: readonly (readonly [number, number])[],
  play: number,
): Reason[] {
  const all = own.map((one, i) => [
    ...holesOf(one, middles[i]!),
    ...(one.recess ? [patch(`the recess of the ${one.part}`, middles[i]!, one.recess.form)] : []),
  ]);
  return own.flatMap((cutout, i) =>
    own.slice(i + 1).flatMap((other, j): Reason[] => {
      const least = Math.min(...all[i]!.flatMap((one) => all[i + 1 + j]!.map((two) => apart(one, two))));
      if (least >= play - NANOMETRE) return [];
      const where = least < 0 ? 'overlap' : told`are ${least} apart`;
      const words = told`On the ${name}, the cutouts of ${cutout.part} and ${other.part} ${where}; ${play} must stay between them.`;
      return [reasonOf('cutouts-meet', words)];
    }),
  );
}

/** A recess may reach over the board behind it, but neither past the edge of its own panel nor down to a joint. */
function recessReasons(
  { play, outer }: BoxOfPanels,
  piece: Piece,
  { part, recess }: Cutout,
  step: Patch,
  fromEdge: (one: Patch, side: (typeof sides)[number]) => number,
): Reason[] {
  const face = piece.face as Face;
  const because: Reason[] = [];
  const depth = recess!.depth;
  const around = facesAround(planeOf(face));
  for (const side of sides) {
    const { cuts, meets } = piece.edges[side];
    const axis = axisOf(meets as Face);
    const setback = isFar(meets as Face) ? outer[axis]! - piece.place.greatest[axis]! : piece.place.least[axis]!;
    const left = fromEdge(step, side) - setback;
    const sloped = cuts.reduce((sum, cut) => (cut.form === 'bevel' ? sum + depth * Math.tan(cut.angle) : sum), 0);
    if (left - sloped < play - NANOMETRE) {
      const words = told`On the ${face}, the recess of the ${part} comes within ${Math.max(0, left - sloped)} of the edge beside the ${around[side]} panel; ${play} must be left. Move it by ${play - left + sloped}.`;
      because.push(reasonOf('recess-flush', words));
    }
    for (const cut of cuts) {
      if (cut.form === 'bevel' || fromEdge(step, side) >= cut.from + cut.width + play - NANOMETRE) continue;
      if (depth + cut.depth <= piece.thickness - play + NANOMETRE) continue;
      const words = told`On the ${face}, the recess of the ${part} lies over the joint with the ${around[side]} panel and leaves ${Math.max(0, piece.thickness - depth - cut.depth)} between them. Make one of the two less deep, or move it.`;
      because.push(reasonOf('recess-over-joint', words));
    }
  }
  return because;
}
