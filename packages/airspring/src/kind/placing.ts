import { si } from '@airspring/core/quantity';
import type { Size } from '@airspring/core/space';

/** A length as core takes it. */
export const metres = (value: number) => si('length', value);

/** Outer edges of a box, as core takes them. */
export const outerSizes = ([width, height, depth]: readonly [number, number, number]): Size => ({
  width: metres(width),
  height: metres(height),
  depth: metres(depth),
});
