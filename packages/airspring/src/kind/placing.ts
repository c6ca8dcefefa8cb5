import { si } from '@airspring/core/quantity';
import type { Interior, Size } from '@airspring/core/space';
import type { Job } from '../job/job.js';

/** A length as core takes it. */
export const metres = (value: number) => si('length', value);

/** Outer edges of a box, as core takes them. */
export const outerSizes = ([width, height, depth]: readonly [number, number, number]): Size => ({
  width: metres(width),
  height: metres(height),
  depth: metres(depth),
});

/** What is inside a box of given outer edges, as core's `fit` takes it, where the space is no cuboid. */
export const interiorIn = (
  { space: { shape } }: Pick<Job, 'space'>,
  edges: readonly [number, number, number],
): { readonly interior?: Interior } => (shape ? { interior: shape.interior(edges) } : {});
