import { standardAir } from '@airspring/core/air';
import { type Length, si } from '@airspring/core/quantity';
import { innerVolumeFor, netVolumeWithin } from '@airspring/core/space';
import { areaOf, centroidOf, type Outline } from '@airspring/workshop/outline';
import {
  type BoxShape,
  boxModes,
  boxShape,
  corner,
  cuboidAround,
  cylinder,
  innerVolumeOf,
  openSize,
  outerVolumeOf,
  panelsOf,
  quarterRound,
  type Section,
  spreadEdges,
  underSeat,
  wedge,
  wheelArch,
} from '@airspring/workshop/shape';
import { check } from '../../ledger/check.js';
import fixtures from './prisms.json' with { type: 'json' };

/** Values by scipy; `prisms.py` beside this file wrote them, with roads that know nothing of ours. */
const { contents, lengths, prisms, program, spread, stack, tops } = fixtures;
const scipy = (how: string) => ({ key: 'scipy', locator: `${program}: ${how}; tests/literature/shape/prisms.py` });
const base = { status: 'derived', kind: 'program' } as const;
const exact = { relative: 1e-11, why: 'corners of hulls and intersections to 1e-12' } as const;
const round = {
  relative: 2e-4,
  why: 'sides no farther than 0.1 mm from an arc have the area of its sector outside, and almost that within the panels',
} as const;
const of = (rows: readonly unknown[]) => ({ box: { value: rows.map((_, i) => i), unit: 'row' } }) as const;
const m = (metres: number): Length => si('length', metres);

type Row = (typeof prisms)[number];
const makers = { wedge, corner, cylinder, quarterRound, underSeat, wheelArch } as unknown as Record<
  string,
  (sizes: Record<string, Length>) => Section
>;
const sectionOf = ({ name, sizes }: Row): Section =>
  makers[name]!(Object.fromEntries(Object.entries(sizes).map(([size, value]) => [size, m(value)])));
const shapeOf = (row: Row): BoxShape => {
  const { length, thickness } = row;
  const section = sectionOf(row);
  const shape = boxShape({ along: 'width', outer: { ...section, length: m(length) }, thickness: m(thickness) });
  if (!shape.ok) throw new Error(JSON.stringify(shape.because));
  return shape;
};
const flat = prisms.filter(({ name }) => ['wedge', 'corner', 'underSeat'].includes(name));
const curved = prisms.filter((row) => !flat.includes(row));
const how = 'hulls and half spaces of flat sections, quadrature between the exact curves of others, times the length';

for (const name of Object.keys(makers)) {
  const rows = prisms.filter((row) => row.name === name);
  const isFlat = rows.every((row) => flat.includes(row));
  check(`shape.section-${name}`, {
    ...base,
    formula: `shape/${name}`,
    source: scipy(how),
    given: of(rows),
    got: ({ box }) => outerVolumeOf(shapeOf(rows[box]!)),
    expected: rows.map(({ outer }) => outer),
    unit: 'm³',
    tolerance: isFlat ? exact : { relative: 1e-9, why: 'quadrature; the sides have the area of the sector' },
  });
  check(`shape.middle-${name}`, {
    ...base,
    formula: `shape/${name}`,
    source: scipy('centroid of the section, by triangles and by quadrature over strips'),
    given: {},
    got: () => rows.flatMap((row) => centroidOf(sectionOf(row).outline as Outline)),
    expected: rows.flatMap(({ middle }) => middle),
    unit: 'm',
    tolerance: isFlat ? exact : { relative: 3e-4, why: 'sides no farther than 0.1 mm from an arc' },
  });
}

check('shape.outer-centroid', {
  ...base,
  formula: 'shape/boxShape',
  source: scipy('centroid of the section, by triangles and by quadrature over strips'),
  given: {},
  got: () => flat.flatMap((row) => centroidOf(shapeOf(row).outer[0]!.outline)),
  expected: flat.flatMap(({ middle }) => middle),
  unit: 'm',
  tolerance: exact,
});

for (const [formula, got, expected] of [
  ['outerVolumeOf', outerVolumeOf, 'outer'],
  ['innerVolumeOf', innerVolumeOf, 'inner'],
  ['boxShape', innerVolumeOf, 'inner'],
] as const) {
  for (const [rows, tolerance, which] of [
    [flat, exact, 'flat'],
    [curved, expected === 'outer' ? exact : round, 'round'],
  ] as const) {
    check(`shape.${formula}-${which}`, {
      ...base,
      formula: `shape/${formula}`,
      source: scipy(how),
      given: of(rows),
      got: ({ box }) => got(shapeOf(rows[box]!)),
      expected: rows.map((row) => row[expected]),
      unit: 'm³',
      tolerance,
    });
  }
}

const rectangle = ([across, up]: readonly number[]): Section['outline'] => [
  [m(0), m(0)],
  [m(across!), m(0)],
  [m(across!), m(up!)],
  [m(0), m(up!)],
];
const tower = () => {
  const { plinth, tower: upper, thickness } = stack;
  const layers = [plinth, upper].map((edges) => ({ outline: rectangle(edges), length: m(edges[2]!) }));
  const shape = boxShape({ along: 'height', outer: layers, thickness: m(thickness) });
  if (!shape.ok) throw new Error(JSON.stringify(shape.because));
  return shape;
};

check('shape.panel-sizes', {
  ...base,
  formula: 'shape/panelsOf',
  source: scipy('sides of the hull of the section, and the length between the panels across'),
  given: {},
  got: () =>
    flat
      .filter(({ panels }) => panels !== undefined)
      .flatMap((row) => {
        const sizes = panelsOf(shapeOf(row)).flatMap(({ outline }) =>
          [0, 1].map((k) => Math.max(...outline.map((at) => at[k]!))),
        );
        return sizes.sort((a, b) => a - b);
      }),
  expected: flat.flatMap(({ panels }) => panels ?? []),
  unit: 'm',
  tolerance: exact,
});

const convex = flat.filter(({ innerSides }) => innerSides !== undefined);
const widest = (surface: readonly (readonly [number, number])[], k: number) => Math.max(...surface.map((at) => at[k]!));
check('shape.panel-inner', {
  ...base,
  formula: 'shape/panelsOf',
  source: scipy('surface of the region behind all panels without its ends, and the length between the panels across'),
  given: {},
  got: () =>
    convex.flatMap((row) => {
      const between = row.length - 2 * row.thickness;
      const sides = panelsOf(shapeOf(row)).slice(0, -2);
      // Along the axis a panel is as long inside as it is outside.
      const along = sides.map(({ outline, inner }) =>
        widest(inner, Math.abs(widest(outline, 0) - between) < 1e-9 ? 0 : 1),
      );
      const area = sides.reduce((sum, { inner }) => sum + Math.abs(areaOf(inner)), 0);
      return [area, ...along];
    }),
  expected: convex.flatMap(({ innerSides, length, thickness, halves }) => [
    innerSides!,
    ...halves!.map(() => length - 2 * thickness),
  ]),
  unit: 'm², m',
  tolerance: exact,
});

check('shape.panel-blanks', {
  ...base,
  formula: 'shape/panelsOf',
  source: scipy('sides of the hull of a convex section, where the outer surface is the larger one'),
  given: {},
  got: () =>
    convex.flatMap((row) =>
      panelsOf(shapeOf(row))
        .flatMap(({ blank }) => [...blank])
        .sort((a, b) => a - b),
    ),
  expected: convex.flatMap(({ panels }) => panels!),
  unit: 'm',
  tolerance: exact,
});

check('shape.stack', {
  ...base,
  formula: 'shape/boxShape',
  source: scipy('products of edges of a plinth and a tower on it'),
  given: {},
  got: () => [outerVolumeOf(tower()), innerVolumeOf(tower())],
  expected: [stack.outer, stack.inner],
  unit: 'm³',
  tolerance: exact,
});

const held = {
  driver: { displacedVolume: '1.6 L' },
  radiator: { displacedVolume: '0.7 L', count: 2 },
  vent: { outerWidth: '90 mm', outerHeight: '60 mm', lengthInside: '250 mm' },
  bracing: { fraction: si('ratio', 0.05) },
  chamber: '3 L',
  fill: { mass: '345 g' },
} as const;

check('shape.net-within', {
  ...base,
  formula: 'space/netVolumeWithin',
  source: scipy('exact fractions'),
  given: {},
  got: () => {
    const net = netVolumeWithin({ innerVolume: si('volume', contents.inner), contents: held });
    if (!net.ok) return 0;
    const { ok: _, driverEstimated: __, ...volumes } = net;
    return Object.values(volumes);
  },
  expected: [
    contents.net,
    contents.inner,
    contents.driver,
    contents.radiator,
    contents.vent,
    contents.bracing,
    contents.chamber,
    contents.fill,
  ],
  unit: 'm³',
  tolerance: { relative: 1e-13, why: 'double precision' },
});

check('shape.inner-for', {
  ...base,
  formula: 'space/innerVolumeFor',
  source: scipy('exact fractions'),
  given: {},
  got: () => innerVolumeFor({ netVolume: si('volume', contents.net), contents: held }),
  expected: contents.inner,
  unit: 'm³',
  tolerance: { relative: 1e-13, why: 'double precision' },
});

check('shape.cuboid-around', {
  ...base,
  formula: 'shape/cuboidAround',
  source: scipy('edges of a plinth, and both heights'),
  given: {},
  got: () => Object.values(cuboidAround(tower())),
  expected: [stack.plinth[0]!, stack.plinth[2]! + stack.tower[2]!, stack.plinth[1]!],
  unit: 'm',
  tolerance: exact,
});

const mitred = flat.filter(({ halves }) => halves !== undefined);
check('shape.panel-angles', {
  ...base,
  formula: 'shape/panelsOf',
  source: scipy('half the angles between the planes of a hull'),
  given: {},
  got: () =>
    mitred.flatMap((row) => {
      const sides = panelsOf(shapeOf(row)).slice(0, -2);
      // Each corner is cut twice, once in each of its two panels.
      const cuts = sides.flatMap(({ angles, from }) =>
        (from && angles[1] === Math.PI / 2 ? [0, 2] : [1, 3]).map((i) => angles[i]!),
      );
      return cuts.sort((a, b) => a - b).filter((_, i) => i % 2 === 0);
    }),
  expected: mitred.flatMap(({ halves }) => halves!),
  unit: 'rad',
  tolerance: { relative: 1e-9, why: 'normals of hulls rounded to 1e-12' },
});

check('shape.panel-volumes', {
  ...base,
  formula: 'shape/panelsOf',
  source: scipy(`${how}: what is outside less what is inside`),
  given: of(flat),
  got: ({ box }) => panelsOf(shapeOf(flat[box]!)).reduce((sum, { volume }) => sum + volume, 0),
  expected: flat.map(({ outer, inner }) => outer - inner),
  unit: 'm³',
  tolerance: exact,
});

check('shape.open-length', {
  ...base,
  formula: 'shape/openSize',
  source: scipy('bracketed root over hulls and half spaces'),
  given: of(lengths),
  got: ({ box }) => {
    const { volume, across, up, top, thickness } = lengths[box]!;
    const section = wedge({ across: m(across), up: m(up), top: m(top) });
    const found = openSize({
      box: (length) => ({ along: 'width', outer: { ...section, length }, thickness: m(thickness) }),
      from: '100 mm',
      to: '2 m',
      netVolume: si('volume', volume),
    });
    return found.ok ? found.size : 0;
  },
  expected: lengths.map(({ length }) => length),
  unit: 'm',
  tolerance: exact,
});

check('shape.open-slant', {
  ...base,
  formula: 'shape/openSize',
  source: scipy('the same, where the volume is no straight line over the size'),
  given: of(tops),
  got: ({ box }) => {
    const { volume, across, up, length, thickness } = tops[box]!;
    const found = openSize({
      box: (top) => ({
        along: 'width',
        outer: { ...wedge({ across: m(across), up: m(up), top }), length: m(length) },
        thickness: m(thickness),
      }),
      from: '50 mm',
      to: '390 mm',
      netVolume: si('volume', volume),
    });
    return found.ok ? found.size : 0;
  },
  expected: tops.map(({ top }) => top),
  unit: 'm',
  tolerance: exact,
});

check('shape.modes-along', {
  formula: 'shape/boxModes',
  source: { key: 'morse1968', locator: 'normal modes between two parallel walls, n c / 2 l' },
  status: 'derived',
  kind: 'standard',
  given: {},
  got: () => boxModes(shapeOf(prisms[0]!), '1.3 kHz').modes.map(({ frequency }) => frequency),
  expected: [1, 2, 3, 4].map((n) => (n * standardAir.speedOfSound) / (2 * 0.564)),
  unit: 'Hz',
  tolerance: { relative: 1e-12, why: 'double precision' },
});

check('shape.modes-order', {
  formula: 'shape/boxModes',
  source: {
    key: 'morse1968',
    locator: 'normal modes between two parallel walls: half waves along the axis, here the width',
  },
  status: 'derived',
  kind: 'standard',
  given: {},
  got: () => boxModes(shapeOf(prisms[0]!), '0.7 kHz').modes.flatMap(({ order }) => order),
  expected: [1, 0, 0, 2, 0, 0],
  unit: '1',
  tolerance: { absolute: 1e-12, why: 'whole numbers' },
});

check('shape.spread', {
  ...base,
  formula: 'shape/spreadEdges',
  source: scipy('differential evolution over both ratios'),
  given: {},
  got: () => {
    const { inner, leastStep } = spreadEdges({ innerVolume: '40 L' });
    const [depth, width, height] = [inner.depth, inner.width, inner.height];
    return [leastStep, width / depth, height / depth, width * height * depth];
  },
  expected: [spread.leastStep, ...spread.ratios, 0.04],
  unit: '1',
  tolerance: {
    relative: 2e-5,
    why: 'the grid ends at a step of 1e-7 in a ratio; the maximum is a corner between two slopes',
  },
});
