import { type Face, faces } from '@airspring/core/space';

/** The axis that a face looks along: 0 width, 1 height, 2 depth. */
export const axisOf = (face: Face): number => faces.indexOf(face) >> 1;

/** Whether a face is the right, the top or the back: where its axis ends. */
export const isFar = (face: Face): boolean => (faces.indexOf(face) & 1) === 1;
