import type { Reason } from '../fault/index.js';
import { format, type Length } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';
import { axisNames, type Edges } from './cuboid.js';
import type { Layout } from './fit-input.js';
import { arrangements, centreLimits } from './placement.js';
import type { RoundBody } from './round-body.js';
import { axisOf, faceName } from './solids.js';
import type { VentShape } from './vent-solids.js';

const mm = (length: number): string => format('length', length, 'mm', 4);

const limit = new Float64Array(2);

/** Both axes of a face. */
export const axesOf = (face: number): readonly [number, number] => {
  const axis = axisOf(face);
  const first = axis === 0 ? 1 : 0;
  return [first, 3 - axis - first];
};

/** Says in what way something is too wide for a face; `undefined` when it is not. */
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
      return `${what} needs ${mm(needs)} of the ${axisNames[axis]} of the ${faceName(face)} panel, which has only ${mm(panel)}.`;
    }
  }
  return undefined;
}

/** Half sizes of a block of `columns` × `rows` round parts, along the axes of the box. */
const halfSizes = (face: number, columns: number, rows: number, pitch: number, half: number): Edges => {
  const [first, second] = axesOf(face);
  const sizes: [number, number, number] = [0, 0, 0];
  sizes[first] = ((columns - 1) * pitch) / 2 + half;
  sizes[second] = ((rows - 1) * pitch) / 2 + half;
  return sizes;
};

/** Why a body fits on no face even by itself; empty when it fits. */
function bodyReasons(inner: Edges, body: RoundBody, { thickness, gap, edgeMargin, cutoutMargin }: Layout): Reason[] {
  const because: Reason[] = [];
  const name = body.part === 'driver' ? 'driver' : 'passive radiator';
  for (const face of body.faces) {
    const needs = body.depth - thickness[face]! + (body.opposed ? body.depth - thickness[face + 1]! : 0);
    const has = inner[axisOf(face)]!;
    if (needs > has + NANOMETRE) {
      const [who, where] = body.opposed
        ? [`two opposed ${name}s need`, `between the ${faceName(face)} and ${faceName(face + 1)} panels`]
        : [`The ${name} needs`, `behind the ${faceName(face)} panel`];
      const text = `${who.replace(/^t/, 'T')} ${mm(needs)} ${where}, but there is only ${mm(has)}. Use a shallower ${name}, another face, or a box that is deeper there.`;
      because.push({ code: `${body.part}-too-deep`, text });
      continue;
    }
    let wide: string | undefined;
    for (const [columns, rows] of arrangements(body.count)) {
      const pitch = body.outerDiameter + gap;
      const behind = halfSizes(face, columns, rows, pitch, body.cutoutDiameter / 2 + cutoutMargin);
      const margin = Math.max(edgeMargin, body.edgeMargin ?? 0);
      const outside = halfSizes(face, columns, rows, pitch, body.outerDiameter / 2 + margin);
      const what = body.count === 1 ? `The ${name}` : `The block of ${columns} × ${rows} ${name}s`;
      const why = tooWide(what, inner, thickness, face, behind, outside);
      if (why === undefined) return [];
      wide ??= why;
    }
    const text = `${wide} Use a smaller ${name}, another face, or a larger panel.`;
    because.push({ code: `${body.part}-too-wide`, text });
  }
  return because;
}

/** Why some body fits nowhere even by itself; empty when each one fits. */
export const bodiesReasons = (inner: Edges, layout: Layout): readonly Reason[] =>
  layout.bodies.flatMap((body) => bodyReasons(inner, body, layout));

/** The reason when each body fits by itself in the cuboid. */
export const together = ({ interior }: Layout): Reason => ({
  code: 'no-room-together',
  text: `Each driver and passive radiator fits by itself${interior ? ' in the cuboid around the interior' : ''}, but they do not fit ${interior ? 'in the interior' : 'together'}. Allow them other faces, use shallower or smaller ones, or use a larger box.`,
});

/** Why a vent of this length fits nowhere, given the longest vents that do. */
export function ventReasons(
  inner: Edges,
  layout: Layout,
  body: VentShape,
  length: Length,
  straight: number,
  bent: number,
): readonly Reason[] {
  const { vent, thickness, edgeMargin, cutoutMargin } = layout;
  const what = vent.count === 1 ? 'The vent' : `The row of ${vent.count} vents`;
  if (straight === 0 && bent === 0) {
    const wide = vent.faces.map((face) => {
      const whys = [0, 1].map((turned) => {
        const size = (radius: number, across: number, walls: readonly [number, number]): Edges => {
          const [first, second] = axesOf(face);
          const sizes: [number, number, number] = [0, 0, 0];
          sizes[turned ? second : first] = radius + walls[0];
          sizes[turned ? first : second] = across + walls[1];
          return sizes;
        };
        const free = [vent.walls > 0 ? 0 : 1, vent.walls > 1 ? 0 : 1] as const;
        const behind = size(body.radius, body.halfAcross, [free[0] * cutoutMargin, free[1] * cutoutMargin]);
        const outside = size(
          free[0] * (body.flangeRadius + edgeMargin),
          free[1] * (body.flangeHalfAcross + edgeMargin),
          [0, 0],
        );
        return tooWide(what, inner, thickness, face, behind, outside);
      });
      return whys.every((why) => why !== undefined) ? whys[0] : undefined;
    });
    if (wide.every((why) => why !== undefined)) {
      const remedy = 'Use a narrower vent, a smaller flange, another face, or a larger panel.';
      return wide.map((why) => ({ code: 'vent-too-wide', text: `${why} ${remedy}` }));
    }
    const text = `The drivers fit by themselves, and so does a vent of ${mm(2 * body.radius)} outer width${layout.interior ? ' in the cuboid around the interior' : ''}, but they do not fit together with ${mm(body.clearance)} of free air in front of the vent's inner end. Allow the vent another face, or use a narrower vent or a larger box.`;
    return [{ code: 'no-room-for-vent', text }];
  }
  const most = [straight > 0 && `${mm(straight)} fits straight`, bent > 0 && `${mm(bent)} fits with one bend`];
  const atMost = `The vent is ${mm(length)} long. At most ${most.filter(Boolean).join(' and ')}`;
  if (length < bent) {
    const text = `${atMost}, but a vent of this length is too short to bend. Lengthen the vent, or shorten it so that it fits straight.`;
    return [{ code: 'vent-between-straight-and-bent', text }];
  }
  const bend = vent.bend ? 'Allow' : 'Allow one bend or';
  const text = `${atMost}. ${bend} another face, or use a narrower vent (which is shorter for the same tuning, but has faster air), a higher tuning, or a larger box.`;
  return [{ code: 'vent-too-long', text }];
}
