import { si } from '@airspring/core/quantity';
import type { Size } from '@airspring/core/space';
import type { Point } from './box-kind.js';

export const metres = (value: number) => si('length', value);

/** Outer edges as core takes them. */
export const outerSizes = ([width, height, depth]: readonly [number, number, number]): Size => ({
  width: metres(width),
  height: metres(height),
  depth: metres(depth),
});

/** A box whose kind adds no part has all the air that is there. */
export const netAir = (airBefore: number, [, ...others]: Point): Point | undefined =>
  airBefore > 0 ? [airBefore, ...others] : undefined;
