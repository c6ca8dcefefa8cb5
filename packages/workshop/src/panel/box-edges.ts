import { type Face, faces } from '@airspring/core/space';

/** The twelve edges of a box, each named by the two panels that meet there. */
export const boxEdges = [
  'left-bottom',
  'left-top',
  'left-front',
  'left-back',
  'right-bottom',
  'right-top',
  'right-front',
  'right-back',
  'bottom-front',
  'bottom-back',
  'top-front',
  'top-back',
] as const;
export type BoxEdge = (typeof boxEdges)[number];

/** The edge where two faces meet, in either order. */
export const edgeOf = (one: Face, other: Face): BoxEdge =>
  (faces.indexOf(one) < faces.indexOf(other) ? `${one}-${other}` : `${other}-${one}`) as BoxEdge;

/** The axis across which a face lies: 0 width, 1 height, 2 depth. */
export const axisOf = (face: Face): number => faces.indexOf(face) >> 1;

/** Whether a face is at the far end of its axis: right, top, back. */
export const isFar = (face: Face): boolean => (faces.indexOf(face) & 1) === 1;

/** The faces at the near and the far end of an axis. */
export const facesOn = (axis: number): readonly [Face, Face] => [faces[2 * axis]!, faces[2 * axis + 1]!];

/** The four faces that meet a face. */
export const neighboursOf = (face: Face): readonly Face[] => faces.filter((one) => axisOf(one) !== axisOf(face));
