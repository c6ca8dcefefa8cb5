import type { Reason } from '../fault/index.js';
import { format, type Length } from '../quantity/index.js';
import { ROUNDING } from '../quantity/rounding.js';
import { axisNames } from './cuboid.js';
import type { Layout, VentBody } from './fit-input.js';
import { arrangements, centreLimits } from './placement.js';
import { axisOf, faceName } from './solids.js';

const mm = (length: number): string => format('length', length, 'mm', 4);

type Edges = readonly [number, number, number];
const limit = new Float64Array(2);

/** Both axes of a face. */
export const axesOf = (face: number): readonly [number, number] => {
  const axis = axisOf(face);
  const first = axis === 0 ? 1 : 0;
  return [first, 3 - axis - first];
};

/** Too wide for a face, in words with numbers, or undefined. */
function tooWide(
  what: string,
  inner: Edges,
  thickness: readonly number[],
  face: number,
  behind: Edges,
  outside: Edges,
): string | undefined {
  for (const axis of axesOf(face)) {
    if (!centreLimits(inner[axis]!, behind[axis]!, outside[axis]!, thickness, axis, limit)) {
      const panel = inner[axis]! + thickness[2 * axis]! + thickness[2 * axis + 1]!;
      const needs = panel + limit[0]! - limit[1]!;
      return `${what} needs ${mm(needs)} of the ${axisNames[axis]} of the ${faceName(face)} panel, and it has ${mm(panel)}.`;
    }
  }
  return undefined;
}

/** Half sizes along the axes of the box, of a block of `columns` × `rows` round parts. */
const halfSizes = (face: number, columns: number, rows: number, pitch: number, half: number): Edges => {
  const [first, second] = axesOf(face);
  const sizes: [number, number, number] = [0, 0, 0];
  sizes[first] = ((columns - 1) * pitch) / 2 + half;
  sizes[second] = ((rows - 1) * pitch) / 2 + half;
  return sizes;
};

/** The first allowed face and arrangement that takes the drivers, else why none does. */
export function driverPlace(inner: Edges, { driver, thickness, gap, edgeMargin }: Layout) {
  const because: Reason[] = [];
  for (const face of driver.faces) {
    const needs = driver.depth - thickness[face]!;
    const has = inner[axisOf(face)]!;
    if (needs > has + ROUNDING) {
      const text = `The driver needs ${mm(needs)} behind the ${faceName(face)} panel, and there are ${mm(has)}: take a shallower driver, another face, or a box that is deeper there.`;
      because.push({ code: 'driver-too-deep', text });
      continue;
    }
    let wide: string | undefined;
    for (const [columns, rows] of arrangements(driver.count)) {
      const pitch = driver.outerDiameter + gap;
      const behind = halfSizes(face, columns, rows, pitch, driver.cutoutDiameter / 2);
      const outside = halfSizes(face, columns, rows, pitch, driver.outerDiameter / 2 + edgeMargin);
      const what = driver.count === 1 ? 'The driver' : `The block of ${columns} × ${rows} drivers`;
      const why = tooWide(what, inner, thickness, face, behind, outside);
      if (why === undefined) return { ok: true as const, face, columns, rows };
      wide ??= why;
    }
    because.push({ code: 'driver-too-wide', text: `${wide} Take a smaller driver, another face, or a larger panel.` });
  }
  return { ok: false as const, because };
}

/** Why a vent of a length fits nowhere, given the longest ones that do. */
export function ventReasons(
  inner: Edges,
  layout: Layout,
  body: VentBody,
  length: Length,
  straight: number,
  bent: number,
): readonly Reason[] {
  const { vent, thickness, edgeMargin, gap } = layout;
  if (straight === 0 && bent === 0) {
    const wide = vent.faces.map((face) => {
      const pitch = body.flangeDiameter + gap;
      const size = (half: number, columns: number, rows: number) => halfSizes(face, columns, rows, pitch, half);
      const rowsTried =
        vent.count === 1
          ? ([[1, 1]] as const)
          : ([
              [1, vent.count],
              [vent.count, 1],
            ] as const);
      const whys = rowsTried.map(([columns, rows]) =>
        tooWide(
          vent.count === 1 ? 'The vent' : `The row of ${vent.count} vents`,
          inner,
          thickness,
          face,
          size(body.outerDiameter / 2, columns, rows),
          size(body.flangeDiameter / 2 + edgeMargin, columns, rows),
        ),
      );
      return whys.every((why) => why !== undefined) ? whys[0] : undefined;
    });
    if (wide.every((why) => why !== undefined)) {
      const remedy = 'Take a narrower vent, a smaller flange, another face, or a larger panel.';
      return wide.map((why) => ({ code: 'vent-too-wide', text: `${why} ${remedy}` }));
    }
    const text = `Driver and vent of ${mm(body.outerDiameter)} fit each alone but not together, with ${mm(body.clearance)} of free air before the inner end: allow the vent another face, or take a narrower vent or a larger box.`;
    return [{ code: 'no-room-for-vent', text }];
  }
  const most = [straight > 0 && `${mm(straight)} fits straight`, bent > 0 && `${mm(bent)} with one bend`];
  const atMost = `The vent is ${mm(length)} long; at most ${most.filter(Boolean).join(', ')}`;
  if (length < bent) {
    const text = `${atMost}, but a bend leaves no room for so short a second leg beside the driver: lengthen the vent, or shorten it to go straight.`;
    return [{ code: 'vent-between-straight-and-bent', text }];
  }
  const bend = vent.bend ? '' : 'allow one bend, ';
  const text = `${atMost}: ${bend}allow another face, or take a narrower vent (which is shorter for the same tuning, and faster the air in it), a higher tuning, or a larger box.`;
  return [{ code: 'vent-too-long', text }];
}
