import { NANOMETRE } from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import type { Outline, PlanePoint } from '../outline/index.js';
import { around, halfWidths, sidesOf } from './cross-section.js';
import { flarePoints } from './flare-points.js';
import { readVent } from './read-vent.js';
import { flangeBores } from './screws.js';
import { sweptMesh } from './swept.js';
import { lineOf, type VentDrawing } from './vent-drawing.js';
import type { VentSolidInput } from './vent-solid-input.js';
import { wallAround } from './wall-around.js';

/** A vent as a solid, beside the drawing that it was made of. */
export interface VentSolid {
  readonly name: string;
  /** It stands on its outer face, z = 0, and its centre line begins at the origin along z. */
  readonly mesh: Mesh;
  readonly drawing: VentDrawing;
}

/**
 * A printable vent: straight or bent, round or a slot, with a flange and with flares of any profile at its ends. Its length is
 * that of core's vents, so that the tuning which was asked for is that of the printed part; `printedTuning` tells the difference.
 *
 * @validity bends in the straight part of the wall; legs that do not run into each other, which `crossings` tells
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `conflict`, `unsorted`, `unknown-field`
 * @source own geometry: the wall is led along the centre line; each slice has the area of the drawing
 * @example ventSolid({ diameter: '70 mm', length: '200 mm', outerFlare: roundFlare({ radius: '20 mm' }), flange: { diameter: '130 mm' } })
 */
export function ventSolid(input: VentSolidInput): VentSolid {
  const drawing = readVent(input);
  return { name: 'vent', mesh: ventMesh(drawing, wallProfile(drawing), true), drawing };
}

/** The solid of a wall, cut open along the centre line of a vent. The holes for screws are in the piece with the flange. */
export function ventMesh(drawing: VentDrawing, profile: Outline, withFlange: boolean): Mesh {
  const { section, wall, bends, fineness, flange, outerFlare, innerFlare } = drawing;
  const radius = Math.max(...halfWidths(section));
  const reach = Math.max(
    flange?.reach ?? 0,
    wall + (outerFlare?.widening ?? 0),
    wall + (innerFlare?.widening ?? 0),
    ...profile.map(([, offset]) => offset),
  );
  return sweptMesh({
    profile,
    around: around(section, sidesOf(radius + reach, fineness)),
    line: lineOf(drawing),
    step: bends.length === 0 ? 1 : bendStep(drawing),
    bores: withFlange ? flangeBores(drawing) : [],
  });
}

/** Angle of the steps of a bend that stays within the fineness of its circle on the outside. */
function bendStep({ bends, section, wall, fineness }: VentDrawing): number {
  const outside =
    Math.max(...bends.map(({ centreLineRadius }) => centreLineRadius)) + Math.hypot(...halfWidths(section)) + wall;
  return Math.min(0.2, 2 * Math.acos(1 - Math.min(0.5, fineness / outside)));
}

/** The clear line of a vent from its outer to its inner end, [along, offset]. */
export function ductLine({ length, outerFlare, innerFlare, fineness }: VentDrawing): readonly PlanePoint[] {
  const outer = outerFlare === undefined ? [] : flarePoints(outerFlare, fineness);
  const inner = innerFlare === undefined ? [] : flarePoints(innerFlare, fineness);
  const line: PlanePoint[] = [
    ...(outerFlare === undefined
      ? [[0, 0] as const]
      : outer.map(([x, y]) => [outerFlare.depth - x, y] as const).reverse()),
    ...(innerFlare === undefined
      ? [[length, 0] as const]
      : inner.map(([x, y]) => [length - (innerFlare.depth - x), y] as const)),
  ];
  // A curve may end a rounding beside its depth.
  line[0] = [0, line[0]![1]];
  line[line.length - 1] = [length, line.at(-1)![1]];
  // Where flares take the whole length, their throats are one point, or the end of the duct.
  return line.filter(([along, offset], i) => {
    const [next, nextOffset] = line[i + 1] ?? [Infinity, 0];
    return next - along > NANOMETRE || Math.abs(nextOffset - offset) > NANOMETRE;
  });
}

/** The wall of a vent, cut open along its centre line: the clear line, then the outer line back, around the flange. */
export function wallProfile(drawing: VentDrawing): Outline {
  const duct = ductLine(drawing);
  const outside = wallAround(duct, drawing.wall, drawing.fineness);
  return [...duct, ...withFlange(outside, drawing).reverse()];
}

/** Replaces the outer line beside the flange by the edge of the flange. */
function withFlange(outside: readonly PlanePoint[], { flange }: VentDrawing): PlanePoint[] {
  if (flange === undefined) return [...outside];
  const { reach, thickness } = flange;
  const behind = outside.filter(([along]) => along > thickness + NANOMETRE);
  const foot = heightAt(outside, thickness);
  // A flange as wide as the tube leaves no step.
  const step: PlanePoint[] = reach - foot > NANOMETRE ? [[thickness, foot]] : [];
  return [[0, reach], [thickness, reach], ...step, ...behind];
}

/** The offset of a line at a position along it. */
export function heightAt(line: readonly PlanePoint[], at: number): number {
  const i = Math.max(
    1,
    line.findIndex(([along]) => along >= at),
  );
  const [[x, y], [nextX, nextY]] = [line[i - 1]!, line[i]!];
  return nextX === x ? y : y + ((nextY - y) * (at - x)) / (nextX - x);
}
