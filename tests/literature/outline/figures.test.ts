import { si } from '@airspring/core/quantity';
import {
  arcCorners,
  areaOf,
  boundsOf,
  centroidOf,
  clearanceAt,
  insetOf,
  type Outline,
  type PlanePoint,
  perimeterOf,
} from '@airspring/workshop/outline';
import { underSeat } from '@airspring/workshop/shape';
import { check } from '../../ledger/check.js';
import fixtures from './figures.json' with { type: 'json' };

/** Values by scipy; `figures.py` beside this file wrote them, with roads that know nothing of ours. */
const { arcs, convex, program, steps } = fixtures;
const scipy = (how: string) => ({
  key: 'scipy',
  locator: `${program}: ${how}; tests/literature/outline/figures.py`,
});
const base = { status: 'derived', kind: 'program' } as const;
const exact = { relative: 1e-12, why: 'double precision on both sides' } as const;
const of = (rows: readonly unknown[]) => ({ figure: { value: rows.map((_, i) => i), unit: 'row' } }) as const;

const figure = (row: { readonly corners: number[][] }) => row.corners as unknown as Outline;
const stepOf = ([across, up, front, step]: readonly number[]): Outline => {
  const sizes = { across: si('length', across!), up: si('length', up!), front: si('length', front!) };
  return underSeat({ ...sizes, step: si('length', step!) }).outline as Outline;
};
const within = (outline: Outline, thickness: readonly number[]): Outline => {
  const inset = insetOf(outline, thickness);
  return inset.ok ? inset.outline : [];
};

check('outline.area-hull', {
  ...base,
  formula: 'outline/areaOf',
  source: scipy('area of a convex hull'),
  given: of(convex),
  got: ({ figure: i }) => areaOf(figure(convex[i]!)),
  expected: convex.map(({ area }) => area),
  unit: 'm²',
  tolerance: exact,
});

check('outline.area-step', {
  ...base,
  formula: 'outline/areaOf',
  source: scipy('quadrature over strips of a figure that is not convex'),
  given: of(steps),
  got: ({ figure: i }) => areaOf(stepOf(steps[i]!.sizes)),
  expected: steps.map(({ area }) => area),
  unit: 'm²',
  tolerance: exact,
});

check('outline.perimeter', {
  ...base,
  formula: 'outline/perimeterOf',
  source: scipy('length around a convex hull'),
  given: of(convex),
  got: ({ figure: i }) => perimeterOf(figure(convex[i]!)),
  expected: convex.map(({ perimeter }) => perimeter),
  unit: 'm',
  tolerance: exact,
});

for (const k of [0, 1] as const) {
  const axis = ['across', 'up'][k]!;
  check(`outline.centroid-${axis}`, {
    ...base,
    formula: 'outline/centroidOf',
    source: scipy('mean of the triangles of a triangulation, by area'),
    given: of(convex),
    got: ({ figure: i }) => centroidOf(figure(convex[i]!))[k],
    expected: convex.map(({ centroid }) => centroid[k]!),
    unit: 'm',
    tolerance: exact,
  });
  check(`outline.centroid-step-${axis}`, {
    ...base,
    formula: 'outline/centroidOf',
    source: scipy('first moment by quadrature over strips'),
    given: of(steps),
    got: ({ figure: i }) => centroidOf(stepOf(steps[i]!.sizes))[k],
    expected: steps.map(({ centroid }) => centroid[k]!),
    unit: 'm',
    tolerance: exact,
  });
}

check('outline.bounds', {
  ...base,
  formula: 'outline/boundsOf',
  source: scipy('least and greatest coordinates, by columns'),
  given: {},
  got: () => convex.flatMap((row) => boundsOf(figure(row)).flat()),
  expected: convex.flatMap(({ least, greatest }) => [...least, ...greatest]),
  unit: 'm',
  tolerance: exact,
});

check('outline.clearance', {
  ...base,
  formula: 'outline/clearanceAt',
  source: scipy('bounded searches along each side for the nearest point'),
  given: of(convex),
  got: ({ figure: i }) => clearanceAt(figure(convex[i]!), convex[i]!.centroid as unknown as PlanePoint),
  expected: convex.map(({ clearance }) => clearance),
  unit: 'm',
  tolerance: { relative: 1e-11, why: 'the search ends at 1e-12 of a side' },
});

check('outline.inset-area', {
  ...base,
  formula: 'outline/insetOf',
  source: scipy('intersection of half planes, each moved by the thickness of its panel; area of its hull'),
  given: of(convex),
  got: ({ figure: i }) => areaOf(within(figure(convex[i]!), convex[i]!.thickness)),
  expected: convex.map((row) => row.within),
  unit: 'm²',
  tolerance: { relative: 1e-10, why: 'corners of the intersection to 1e-12' },
});

check('outline.inset-centroid', {
  ...base,
  formula: 'outline/insetOf',
  source: scipy('the same; centroid of a triangulation of its hull'),
  given: {},
  got: () => convex.flatMap((row) => centroidOf(within(figure(row), row.thickness))),
  expected: convex.flatMap((row) => row.middleWithin),
  unit: 'm',
  tolerance: { relative: 1e-10, why: 'corners of the intersection to 1e-12' },
});

check('outline.inset-perimeter', {
  ...base,
  formula: 'outline/insetOf',
  source: scipy('the same; length around its hull'),
  given: of(convex),
  got: ({ figure: i }) => perimeterOf(within(figure(convex[i]!), convex[i]!.thickness)),
  expected: convex.map((row) => row.around),
  unit: 'm',
  tolerance: { relative: 1e-10, why: 'corners of the intersection to 1e-12' },
});

check('outline.inset-step', {
  ...base,
  formula: 'outline/insetOf',
  source: scipy('quadrature over the strips that panels leave of a figure that is not convex'),
  given: of(steps),
  got: ({ figure: i }) => areaOf(within(stepOf(steps[i]!.sizes), Array(6).fill(steps[i]!.thickness) as number[])),
  expected: steps.map((row) => row.within),
  unit: 'm²',
  tolerance: exact,
});

check('outline.arc-end', {
  ...base,
  formula: 'outline/arcCorners',
  source: scipy('the point of the circle at which the arc ends'),
  given: {},
  got: () =>
    arcs.flatMap(
      ({ radius, angle, deviation }) => arcCorners({ centre: [0, 0], radius, from: 0, to: angle }, deviation).at(-1)!,
    ),
  expected: arcs.flatMap(({ end }) => end),
  unit: 'm',
  tolerance: { absolute: 1e-3, why: 'a corner is at most as far outside the circle as is asked for' },
});

check('outline.arc-area', {
  ...base,
  formula: 'outline/arcCorners',
  source: scipy('area of a sector by quadrature'),
  given: of(arcs),
  got: ({ figure: i }) => {
    const { radius, angle, deviation } = arcs[i]!;
    return areaOf([[0, 0], ...arcCorners({ centre: [0, 0], radius, from: 0, to: angle }, deviation)]);
  },
  expected: arcs.map(({ area }) => area),
  unit: 'm²',
  tolerance: exact,
});
