import { allowedVolume } from '../job/job.js';
import { volumesIn } from '../job/space-shape.js';
import type { Variant } from '../kind/box-kind.js';
import type { Axis, Span } from '../kind/point.js';
import { latticeOf, type Scope, upperOf } from './axis.js';
import type { Box } from './box.js';
import type { Search } from './search.js';
import { inProportion, type Shape, shapesAcross } from './shapes.js';

/** The grid that a survey visits. */
export interface Grid {
  readonly volumes: ArrayLike<number>;
  /** Values of the acoustic axes together, and of the geometric axes with the span. */
  readonly acoustic: readonly (readonly number[])[];
  /** How many values each acoustic axis has, where a coarser look shows which of their combinations are worth one. */
  readonly counts?: readonly number[] | undefined;
  readonly geometric: readonly (readonly number[])[];
  readonly shapes: readonly Shape[];
  /** The name under which its shapes and the room of its boxes are kept. Without it, they are worked out for this grid alone. */
  readonly name?: string | undefined;
}

const VOLUME_RATIO = 1.04;

/** Every combination of the values of some axes. */
const combinations = (lists: readonly ArrayLike<number>[]): number[][] =>
  lists.reduce<number[][]>((all, list) => all.flatMap((some) => Array.from(list, (value) => [...some, value])), [[]]);

/** The values of the geometric axes, each with every value of the span. */
const withSpans = (values: number[][], { span }: Variant, of: (span: Span) => readonly number[]): number[][] =>
  span === undefined ? values : combinations([of(span)]).flatMap((edge) => values.map((some) => [...some, ...edge]));

const shapesOf = ({ span }: Variant, shapes: readonly Shape[]): readonly Shape[] =>
  span === undefined ? shapes : shapesAcross(span.edge, shapes);

/** The net volumes that are tried: from far less than any driver needs to all that the space leaves. */
function volumesOf(
  { job }: Search,
  { contents, choice, netVolume }: Variant,
  scope: Scope,
  ratio: number,
): Float64Array {
  const { space } = job;
  const t = 2 * space.panelThickness;
  const inner = volumesIn(job).airIn((space.width - t) * (space.height - t) * (space.depth - t)) - contents;
  const most = Math.min(inner, allowedVolume(job)) * (scope.beyond ? 5 : 1);
  if (!(most > (netVolume ?? 0))) return new Float64Array(0);
  if (netVolume !== undefined) return Float64Array.of(netVolume);
  return latticeOf(Math.min(most, choice.completed.parameters.Vas / 16), most, ratio);
}

/** The whole lattice of a variant, `stride` of its steps at a time. */
export function wholeGrid(
  search: Search,
  variant: Variant,
  shapes: readonly Shape[],
  scope: Scope,
  stride: number,
): Grid {
  const steps = scope.step * stride;
  const valuesOf = (axes: Variant['acoustic']) =>
    axes.map((axis) => latticeOf(axis.from, upperOf(axis, scope), axis.ratio ** steps));
  const lattice = (axes: Variant['acoustic']) => combinations(valuesOf(axes));
  return {
    volumes: volumesOf(search, variant, scope, VOLUME_RATIO ** steps),
    acoustic: lattice(variant.acoustic),
    ...(steps === 1 && { counts: valuesOf(variant.acoustic).map(({ length }) => length) }),
    geometric: withSpans(lattice(variant.geometric), variant, (span) => {
      const further = latticeOf(span.to, upperOf(span, scope), span.ratio);
      // As finely as shapes, of which no look leaves out any; the space is one of them even where more is looked at.
      return [...latticeOf(span.from, span.to, span.ratio), ...further.slice(1)];
    }),
    shapes: shapesOf(variant, shapes),
    name: `${scope.beyond} ${steps}`,
  };
}

/** Offsets near a point: for net volumes and acoustic values in parts of a lattice step, for the rest in whole units. */
const NEAR = [-1, -0.6, -0.3, 0, 0.3, 0.6, 1];
/** The same for acoustic values where there are more than two of them: a grid grows with their power. */
const NEAR_OF_MANY = [-0.5, 0, 0.5];
const NEAR_UNITS = [-3, -2, -1, 0, 1, 2, 3];

/** Parts of an octave by which the proportions near those of a box depart from them. */
const NEAR_SHAPES = [-0.3, -0.2, -0.12, -0.07, -0.03, -0.01, 0, 0.01, 0.03, 0.07, 0.12, 0.2, 0.3];

/**
 * Shapes a little longer or flatter than a box. A walk along its edges holds one of them and moves two at most; where both the
 * net volume and the length of a vent leave no play, only all three together lead to a shape that takes less wood.
 */
function shapesNear({ least, span }: Variant, inner: readonly number[], shapes: readonly Shape[]): Shape[] {
  const [width = 1, height = 1, depth = 1] = inner.map((edge, axis) => Math.max(edge, least[axis]!));
  const scale = Math.cbrt(width * height * depth);
  const alike = shapes.filter(({ proportion }) => proportion === shapes[0]?.proportion);
  return NEAR_SHAPES.flatMap((wide) =>
    NEAR_SHAPES.flatMap((high) => {
      const octaves = [wide, high, -wide - high] as const;
      if (span !== undefined && octaves[span.edge] !== 0) return [];
      const proportion = Float64Array.of(width, height, depth).map(
        (edge, axis) => (edge / scale) * 2 ** octaves[axis]!,
      );
      return alike.map((shape) => inProportion(shape, proportion));
    }),
  );
}

/**
 * A fine grid around a box, with every shape, since very different ones may serve almost equally well, and with those near its
 * own.
 */
export function nearGrid(
  { job }: Search,
  { variant, edges, point }: Pick<Box, 'variant' | 'edges' | 'point'>,
  shapes: readonly Shape[],
  scope: Scope,
): Grid {
  const { acoustic, geometric, netVolume } = variant;
  const inner = edges.map((edge) => edge - 2 * job.space.panelThickness);
  const alike = shapesOf(variant, shapes);
  const [volume = 0, ...others] = point;
  const within = (axis: Pick<Axis, 'from' | 'to' | 'beyond'>, values: readonly number[]) => [
    ...new Set(values.map((value) => Math.min(upperOf(axis, scope), Math.max(axis.from, value)))),
  ];
  return {
    volumes: netVolume === undefined ? NEAR.map((part) => volume * VOLUME_RATIO ** part) : [netVolume],
    acoustic: combinations(
      acoustic.map((axis, i) =>
        within(
          axis,
          (acoustic.length > 2 ? NEAR_OF_MANY : NEAR).map((part) => others[i]! * axis.ratio ** part),
        ),
      ),
    ),
    geometric: withSpans(
      combinations(
        geometric.map((axis, i) =>
          within(
            axis,
            NEAR_UNITS.map((units) => others[acoustic.length + i]! + units * axis.unit),
          ),
        ),
      ),
      variant,
      (span) =>
        within(
          span,
          NEAR.map((part) => point[point.length - 1]! * span.ratio ** part),
        ),
    ),
    shapes: job.space.shape ? alike : [...alike, ...shapesNear(variant, inner, alike)],
    name: undefined,
  };
}
