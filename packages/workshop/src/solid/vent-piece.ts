import { NANOMETRE } from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import type { Outline, PlanePoint } from '../outline/index.js';
import type { Frame } from './centre-line.js';
import { lineOf, type VentDrawing } from './vent-drawing.js';
import { heightAt, ventMesh } from './vent-solid.js';

/** A wall to be divided. */
export interface Whole {
  readonly drawing: VentDrawing;
  /** The wall of its drawing, cut open along its centre line. */
  readonly profileOf: (drawing: VentDrawing) => Outline;
  /** No joint lies before this position, m. */
  readonly head: number;
  readonly name: string;
}

/** Sizes of a joint, m. */
export interface Joint {
  readonly overlap: number;
  readonly clearance: number;
  /** Thickness of the spigot, and of the socket. */
  readonly half: number;
  /** The first piece ends here at the latest, m. */
  readonly firstWithin?: number;
}

/** The solid of one piece, standing on its outer end. */
export function pieceOf(whole: Whole, joint: Joint, from: number, to: number): Mesh {
  const { drawing, profileOf } = whole;
  const profile = from === 0 && to === drawing.length ? profileOf(drawing) : pieceProfile(whole, joint, from, to);
  const lowest = from === 0 ? 0 : from + joint.clearance;
  return standing(ventMesh(drawing, profile, from === 0), lineOf(drawing).frame(lowest));
}

/** The wall of a vent between two joints: a socket at the outer one, a spigot at the inner one. */
function pieceProfile(
  { drawing, profileOf }: Whole,
  { overlap, clearance, half }: Joint,
  from: number,
  to: number,
): Outline {
  const wall = profileOf(drawing);
  const turn = wall.findIndex(([along], i) => i > 0 && along === drawing.length && wall[i - 1]![0] === drawing.length);
  const [clear, outside] = [wall.slice(0, turn), wall.slice(turn).reverse()];
  const [first, last] = [from === 0, to === drawing.length];
  const [clearFrom, clearTo] = [first ? 0 : from + overlap, last ? to : to + overlap];
  const [outFrom, outTo] = [first ? 0 : from + clearance, to];
  const duct = between(clear, clearFrom, clearTo);
  const outer = between(outside, outFrom, outTo);
  const spigot: PlanePoint[] = last
    ? []
    : [
        [to + overlap, half],
        [to, half],
      ];
  const socket: PlanePoint[] = first
    ? []
    : [
        [from + clearance, half + clearance],
        [from + overlap, half + clearance],
      ];
  return [...duct, ...spigot, ...outer.reverse(), ...socket];
}

/** The part of a line between two positions, with its ends. */
function between(line: readonly PlanePoint[], from: number, to: number): PlanePoint[] {
  const [start, end] = [line[0]![0], line.at(-1)![0]];
  const inside = line.filter(
    ([along]) => (along > from + NANOMETRE || from === start) && (along < to - NANOMETRE || to === end),
  );
  return [
    ...(from === start ? [] : [[from, heightAt(line, from)] as const]),
    ...inside,
    ...(to === end ? [] : [[to, heightAt(line, to)] as const]),
  ];
}

/** A solid as it is seen from a frame: the frame becomes the origin and the axes. */
function standing({ corners, triangles }: Mesh, { origin, x, y, along }: Frame): Mesh {
  const turned = new Float64Array(corners.length);
  for (let i = 0; i < corners.length; i += 3) {
    const at = [0, 1, 2].map((k) => corners[i + k]! - origin[k]!);
    [x, y, along].forEach((axis, k) => {
      turned[i + k] = at[0]! * axis[0] + at[1]! * axis[1] + at[2]! * axis[2];
    });
  }
  return { corners: turned, triangles };
}
