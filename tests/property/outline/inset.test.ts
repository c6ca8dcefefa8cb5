import {
  areaOf,
  centroidOf,
  clearanceAt,
  insetOf,
  type Outline,
  type PlanePoint,
  perimeterOf,
} from '@airspring/workshop/outline';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

/** Figures whose corners are seen from one point, at rising angles: many are not convex, none crosses itself. */
const star = fc
  .array(fc.record({ step: fc.integer({ min: 2, max: 9 }), radius: fc.integer({ min: 60, max: 300 }) }), {
    minLength: 5,
    maxLength: 10,
  })
  .map((corners): Outline => {
    const whole = corners.reduce((sum, { step }) => sum + step, 0);
    let at = 0;
    return corners.map(({ step, radius }): PlanePoint => {
      at += (2 * Math.PI * step) / whole;
      return [0.5 + (radius / 1e3) * Math.cos(at), 0.5 + (radius / 1e3) * Math.sin(at)];
    });
  })
  .filter((outline) => clearanceAt(outline, [0.5, 0.5]) > 0.01);
const millimetres = (most: number) => fc.integer({ min: 1, max: most }).map((mm) => mm / 1e3);
const all = (outline: Outline, thickness: number) => outline.map(() => thickness);

test.prop([star, fc.double({ min: 0.2, max: 5, noNaN: true })], { numRuns: cases(150) })(
  'area, length and centroid scale',
  (outline, by) => {
    const larger = outline.map(([x, y]): PlanePoint => [by * x, by * y]);
    expect(areaOf(larger) / areaOf(outline)).toBeCloseTo(by ** 2, 9);
    expect(perimeterOf(larger) / perimeterOf(outline)).toBeCloseTo(by, 9);
    expect(centroidOf(larger)[0]).toBeCloseTo(by * centroidOf(outline)[0], 9);
  },
);

test.prop([star, millimetres(20), millimetres(20)], { numRuns: cases(300) })(
  'two thin panels leave what one thick panel does',
  (outline, one, other) => {
    const first = insetOf(outline, all(outline, one));
    const whole = insetOf(outline, all(outline, one + other));
    if (!first.ok || !whole.ok) return;
    const second = insetOf(first.outline, all(first.outline, other));
    expect(second.ok && areaOf(second.outline)).toBeCloseTo(areaOf(whole.outline), 10);
  },
);

test.prop([star, millimetres(30)], { numRuns: cases(300) })(
  'every corner within keeps its distance, and the way back is the way out',
  (outline, thickness) => {
    const inset = insetOf(outline, all(outline, thickness));
    if (!inset.ok) return;
    for (const corner of inset.outline) expect(clearanceAt(outline, corner)).toBeGreaterThan(thickness - 1e-9);
    if (inset.lost.length > 0) return;
    const back = insetOf(inset.outline, all(inset.outline, -thickness));
    expect(back.ok && areaOf(back.outline)).toBeCloseTo(areaOf(outline), 10);
  },
);
