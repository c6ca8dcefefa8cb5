import * as fc from 'fast-check';
import { expect } from 'vitest';
import { overlap, overlappingShifts } from '../../../packages/core/src/space/overlap.js';
import type { Block } from '../../../packages/core/src/space/solids.js';
import { test } from '../../arbitrary/property.js';

const at = fc.double({ min: -1, max: 1, noNaN: true });
const half = fc.double({ min: 0.05, max: 1, noNaN: true });
const block: fc.Arbitrary<Block> = fc
  .record({ axis: fc.integer({ min: -1, max: 2 }), centre: fc.tuple(at, at, at), halves: fc.tuple(half, half, half) })
  .map(({ axis, centre, halves }) => {
    const radius = halves[(axis + 1) % 3]!;
    const h = halves.map((one, k) => (axis < 0 || k === axis ? one : radius));
    const corner = (sign: number) => centre.map((c, k) => c + sign * h[k]!) as [number, number, number];
    return { axis, low: corner(-1), high: corner(1) };
  });

type Point = [number, number, number];

/** Nearest point of a solid: no closed form of overlaps in it. */
function nearest(p: Point, { axis, low, high }: Block): Point {
  const q = p.map((x, k) => Math.min(Math.max(x, low[k]!), high[k]!)) as Point;
  if (axis < 0) return q;
  const across = [0, 1, 2].filter((k) => k !== axis);
  const centre = across.map((k) => (low[k]! + high[k]!) / 2);
  const radius = (high[across[0]!]! - low[across[0]!]!) / 2;
  const distance = Math.hypot(p[across[0]!]! - centre[0]!, p[across[1]!]! - centre[1]!);
  for (const [n, k] of across.entries()) {
    q[k] = centre[n]! + (p[k]! - centre[n]!) * Math.min(1, radius / Math.max(distance, 1e-300));
  }
  return q;
}

/** Distance of two convex solids by going to and fro between nearest points. */
function distance(a: Block, b: Block): number {
  let p: Point = [0, 0, 0];
  let q: Point = p;
  for (let k = 0; k < 3000; k++) {
    q = nearest(p, b);
    p = nearest(q, a);
  }
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

const grown = (block: Block, by: number): Block => ({
  axis: block.axis,
  low: block.low.map((x) => x - by) as Point,
  high: block.high.map((x) => x + by) as Point,
});

test.prop([block, block], { numRuns: 400 })('agrees with alternating projections', (a, b) => {
  if (overlap(a, b)) expect(distance(grown(a, 1e-3), b)).toBeLessThan(1e-4);
  else expect(distance(grown(a, -1e-3), b)).toBeGreaterThan(1e-6);
});

const shifted = (block: Block, axis: number, by: number): Block => {
  const move = (point: Point): Point => point.map((x, k) => (k === axis ? x + by : x)) as Point;
  return { axis: block.axis, low: move(block.low), high: move(block.high) };
};

test.prop([block, block, fc.integer({ min: 0, max: 2 }), fc.double({ min: -4, max: 4, noNaN: true })], {
  numRuns: 3000,
})('one range of shifts, whichever axis asks', (a, b, axis, by) => {
  const range = new Float64Array(2);
  const some = overlappingShifts(a, b, axis, range);
  if (some) expect(range[0]!).toBeLessThan(range[1]!);
  const near = some && (Math.abs(by - range[0]!) < 1e-6 || Math.abs(by - range[1]!) < 1e-6);
  if (near) return;
  const inside = some && by > range[0]! && by < range[1]!;
  const moved = shifted(a, axis, by);
  expect(overlap(moved, b)).toBe(inside);
  expect(overlap(b, moved)).toBe(inside);
});
