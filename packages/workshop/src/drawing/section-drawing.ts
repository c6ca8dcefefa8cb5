import { type Mesh, sliceOf } from '../mesh/index.js';
import { told, UNIT, UNITS } from '../words/told.js';
import { type At, type Callout, type Dimension, type Drawing, rectangle, type Shape } from './drawing.js';

/** A part in a section, and how far from the outer face of the first one it begins, m. */
export interface SectionPart {
  readonly name: string;
  readonly mesh: Mesh;
  readonly from?: number;
}

/** A vent in its panel, to be cut along its middle, m. */
export interface Section {
  readonly title: string;
  /** The tube first. Each stands on its outer face, and its centre line begins along z. */
  readonly parts: readonly SectionPart[];
  readonly length: number;
  readonly bore: number;
  readonly outerDiameter: number;
  /** Where it is told, the hole is told beside it. */
  readonly flangeDiameter?: number;
  /** The panel from its outer surface, and the hole in it. */
  readonly panel: { readonly from: number; readonly thickness: number; readonly hole: number };
  /** Where pieces meet, along a straight tube. */
  readonly cuts?: readonly number[];
  readonly callouts?: readonly Callout[];
}

/** How much of the panel is shown beside the hole, m. */
const BESIDE = 0.022;
/** A plane that meets no corner of the solid: turned by an angle that no number of sides has, and beside the middle by a micrometre. */
const [TURNED, ASIDE] = [1e-4, 1e-6];

/** The outlines in which a plane along the centre line cuts a solid: along it, and beside it. */
function cutAlong({ mesh, from = 0 }: SectionPart): (readonly At[])[] {
  const plane = {
    origin: [-ASIDE * Math.sin(TURNED), ASIDE * Math.cos(TURNED), 0],
    x: [0, 0, 1],
    y: [Math.cos(TURNED), Math.sin(TURNED), 0],
  } as const;
  return sliceOf(mesh, plane).map((figure) => withoutStraight(figure.map(([along, beside]) => [along + from, beside])));
}

/** A closed line without the corners at which it does not turn. */
const withoutStraight = (points: readonly At[]): readonly At[] =>
  points.filter(([x, y], i) => {
    const [beforeX, beforeY] = points[(i + points.length - 1) % points.length]!;
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return Math.abs((x - beforeX) * (nextY - y) - (y - beforeY) * (nextX - x)) > 1e-12;
  });

const closed = (points: readonly At[]): Shape => ({
  purpose: 'cut',
  form: 'path',
  closed: true,
  corners: points.map((at) => ({ at })),
  filled: 'tint',
});

/**
 * A vent in its panel, cut along its middle: the outlines are those in which a plane cuts the very solids. Outside is on the left.
 *
 * @example toSvg(sectionDrawing({ title: 'Tube', parts: [{ name: 'tube', mesh }], length: 0.2, bore: 0.05, outerDiameter: 0.056, panel }))
 */
export function sectionDrawing(given: Section): Drawing {
  const { title, parts, length, bore, outerDiameter, flangeDiameter, panel, cuts = [], callouts = [] } = given;
  const [from, to] = [panel.from, panel.from + panel.thickness];
  const board = (low: number) => rectangle('note', [from, low], panel.thickness, BESIDE);
  const shapes = [
    board(panel.hole / 2),
    board(-panel.hole / 2 - BESIDE),
    ...parts.flatMap((part) => cutAlong(part).map(closed)),
    ...cuts.map((at): Shape => {
      const half = outerDiameter / 2 + 0.004;
      return { purpose: 'centre', form: 'path', closed: false, corners: [{ at: [at, -half] }, { at: [at, half] }] };
    }),
  ];
  const points = shapes.flatMap((one) => (one.form === 'path' ? one.corners.map(({ at }) => at) : []));
  const reach = (axis: 0 | 1, pick: (...values: number[]) => number) => pick(...points.map((point) => point[axis]));
  const [foot, right, left] = [reach(1, Math.min), reach(0, Math.max), reach(0, Math.min)];
  const straight = right <= length + 1e-6;
  const marks = [...new Set([0, from, to, ...cuts, ...(straight ? [length] : [])].map((at) => Number(at.toFixed(6))))];
  const start = Math.min(...marks);
  const across = (diameter: number, side: 'left' | 'right', row: number): Dimension => ({
    kind: 'overall',
    along: 'y',
    ends: [-diameter / 2, diameter / 2],
    beside: side === 'left' ? left : right,
    side,
    row,
  });
  const dimensions: Dimension[] = [
    { kind: 'running', along: 'x', ends: marks.sort((a, b) => a - b), beside: foot, side: 'below', row: 0 },
    // Beside a bent tube they would stand beside its other leg.
    ...(straight ? [across(bore, 'right', 0), across(outerDiameter, 'right', 1)] : []),
    ...(flangeDiameter === undefined ? [] : [across(panel.hole, 'left', 0), across(flangeDiameter, 'left', 1)]),
  ];
  const names = parts.map(({ name }) => name).join(' and ');
  return {
    title,
    subtitle: told`section along the middle; outside on the left; lengths in ${UNITS}, counted from ${start < 0 ? 'the outside of the panel' : 'the outer face'}`,
    description: told`${title}: ${names} in a panel of ${panel.thickness} ${UNIT} with a hole of ${panel.hole} ${UNIT}, cut along the middle. Inner diameter ${bore} ${UNIT}, outer diameter ${outerDiameter} ${UNIT}, length ${length} ${UNIT}.`,
    shapes,
    dimensions,
    labels: [],
    callouts,
  };
}
