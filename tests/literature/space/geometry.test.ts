import { type Length, si } from '@airspring/core/quantity';
import {
  compileLongestVent,
  compileNetVolume,
  compileSizeForNetVolume,
  estimatedDriverVolume,
  type Face,
  faces,
  fit,
  innerSize,
  longestVent,
  netVolume,
  outerSize,
  sizeForNetVolume,
} from '@airspring/core/space';
import { check } from '../../ledger/check.js';
import fixtures from './geometry.json' with { type: 'json' };

/** Values by scipy; `geometry.py` beside this file wrote them, with roads that know nothing of ours. */
const { boxes, cones, vents, program } = fixtures;
const scipy = (how: string) => ({
  key: 'scipy',
  locator: `${program}: ${how}; tests/literature/enclosure/geometry.py`,
});
const base = { status: 'derived', kind: 'program' } as const;
const exact = { relative: 2e-14, why: 'double precision on both sides, roots to 1e-14' } as const;
const index = { box: { value: boxes.map((_, i) => i), unit: 'row' } } as const;

type Edges = [number, number, number];
const m = (metres: number): Length => si('length', metres);
const size = ([width, height, depth]: Edges | number[]) => ({ width: m(width!), height: m(height!), depth: m(depth!) });
const byFace = (list: readonly number[]) =>
  Object.fromEntries(faces.map((face, i) => [face, m(list[i]!)])) as Record<Face, Length>;
const product = ({ width, height, depth }: { width: number; height: number; depth: number }) => width * height * depth;

const contentsOf = (row: (typeof boxes)[number]) => ({
  driver: { cutoutDiameter: m(row.cutoutDiameter), depthInside: m(row.depthInside) },
  vent: { outerDiameter: m(row.outerDiameter), lengthInside: m(row.lengthInside), count: 2 },
  bracing: { fraction: row.fraction },
});
/** What the driver and the vents take, from the row alone. */
const displacedOf = (row: (typeof boxes)[number]) => row.innerVolume * (1 - row.fraction) - row.net;

check('enclosure.inner-size', {
  ...base,
  formula: 'space/innerSize',
  source: scipy('the region behind six panels as an intersection of half spaces, edges multiplied'),
  given: index,
  got: ({ box }) => product(innerSize({ outer: size(boxes[box]!.outer), thickness: byFace(boxes[box]!.thickness) })),
  expected: boxes.map((row) => row.innerVolume),
  unit: 'm³',
  tolerance: exact,
});

check('enclosure.outer-size', {
  ...base,
  formula: 'space/outerSize',
  source: scipy('outer edges whose inside, an intersection of half spaces, is given; edges multiplied'),
  given: index,
  got: ({ box }) => product(outerSize({ inner: size(boxes[box]!.inner), thickness: byFace(boxes[box]!.thickness) })),
  expected: boxes.map((row) => row.outer[0]! * row.outer[1]! * row.outer[2]!),
  unit: 'm³',
  tolerance: exact,
});

check('enclosure.driver-volume', {
  ...base,
  formula: 'space/estimatedDriverVolume',
  source: scipy('solid of revolution of a cone cut off at half its diameter, by quadrature'),
  given: {
    cutoutDiameter: { value: cones.map((cone) => cone.cutoutDiameter), unit: 'm' },
    depthInside: { value: cones.map((cone) => cone.depthInside), unit: 'm' },
  },
  got: ({ cutoutDiameter, depthInside }) => estimatedDriverVolume(cutoutDiameter, depthInside),
  expected: cones.map((cone) => cone.volume),
  unit: 'm³',
  tolerance: exact,
});

check('enclosure.net-volume', {
  ...base,
  formula: 'space/netVolume',
  source: scipy('convex hull of the inside; tube and cut-off cone by quadrature'),
  given: index,
  got: ({ box }) => {
    const row = boxes[box]!;
    const result = netVolume({ outer: size(row.outer), thickness: byFace(row.thickness), contents: contentsOf(row) });
    return result.ok ? result.netVolume : 0;
  },
  expected: boxes.map((row) => row.net),
  unit: 'm³',
  tolerance: exact,
});

check('enclosure.net-volume.parts', {
  ...base,
  formula: 'space/netVolume',
  source: scipy('convex hull of the inside; two tubes by their size, the cone as what is left of what is taken'),
  given: { box: { value: 0, unit: 'row' } },
  got: ({ box }) => {
    const row = boxes[box]!;
    const result = netVolume({ outer: size(row.outer), thickness: byFace(row.thickness), contents: contentsOf(row) });
    if (!result.ok) return [];
    return [result.innerVolume, result.displacedByBracing, result.displacedByVent, result.displacedByDriver];
  },
  expected: (() => {
    const row = boxes[0]!;
    const tubes = 2 * (Math.PI / 4) * row.outerDiameter ** 2 * row.lengthInside;
    return [row.innerVolume, row.fraction * row.innerVolume, tubes, displacedOf(row) - tubes];
  })(),
  unit: 'm³',
  tolerance: { relative: 3e-14, why: 'the last part is a difference, a fiftieth of the whole' },
});

check('enclosure.net-volume.compiled', {
  ...base,
  formula: 'space/compileNetVolume',
  source: scipy('convex hull of the inside; tube and cut-off cone by quadrature'),
  given: index,
  got: ({ box }) => {
    const row = boxes[box]!;
    return compileNetVolume(row.thickness, row.fraction)(...(row.outer as Edges), displacedOf(row));
  },
  expected: boxes.map((row) => row.net),
  unit: 'm³',
  tolerance: exact,
});

check('enclosure.size-for-net-volume', {
  ...base,
  formula: 'space/sizeForNetVolume',
  source: scipy('depth by a bracketed root of the convex hull of the inside'),
  given: index,
  got: ({ box }) => {
    const row = boxes[box]!;
    const input = { outer: size(row.outer), thickness: byFace(row.thickness), contents: contentsOf(row) };
    return sizeForNetVolume({ ...input, netVolume: si('volume', row.want), shape: 'depth' }).depth;
  },
  expected: boxes.map((row) => row.depth),
  unit: 'm',
  tolerance: exact,
});

check('enclosure.size-for-net-volume.in-proportion', {
  ...base,
  formula: 'space/sizeForNetVolume',
  source: scipy('common scale of three edges by a bracketed root of the convex hull of the inside'),
  given: { box: { value: 0, unit: 'row' } },
  got: ({ box }) => {
    const row = boxes[box]!;
    const input = { outer: size(row.outer), thickness: byFace(row.thickness), contents: contentsOf(row) };
    const found = sizeForNetVolume({ ...input, netVolume: si('volume', row.want), shape: 'proportional' });
    return [found.width, found.height, found.depth];
  },
  expected: boxes[0]!.outer.map((edge) => edge * boxes[0]!.scale),
  unit: 'm',
  tolerance: { relative: 5e-15, why: 'double precision on both sides, roots to 1e-14' },
});

check('enclosure.size-for-net-volume.proportional', {
  ...base,
  formula: 'space/compileSizeForNetVolume',
  source: scipy('common scale of three edges by a bracketed root of the convex hull of the inside'),
  given: index,
  got: ({ box }) => {
    const row = boxes[box]!;
    const out = new Float64Array(3);
    const outer = row.outer as Edges;
    compileSizeForNetVolume(outer, row.thickness, 'proportional', row.fraction)(row.want, displacedOf(row), out);
    return out[1]! / outer[1];
  },
  expected: boxes.map((row) => row.scale),
  unit: '1',
  tolerance: exact,
});

type Case = (typeof vents)[number];
const spaceOf = ({ inner, thickness, gap, edgeMargin, driver }: Case) => ({
  outer: size(inner.map((edge) => edge + 2 * thickness)),
  thickness: m(thickness),
  gap: m(gap),
  edgeMargin: m(edgeMargin),
  cutoutMargin: m(0),
  driver: {
    outerDiameter: m(driver.outerDiameter),
    cutoutDiameter: m(driver.cutoutDiameter),
    depth: m(driver.depth),
    faces: [driver.face as Face],
  },
});
const ventOf = ({ vent }: Case) => ({
  diameter: m(vent.diameter),
  flangeDiameter: m(vent.flangeDiameter),
  bendRadius: m(vent.bendRadius),
  faces: [vent.face as Face],
});
const evolution = scipy('differential evolution over all places, collisions by alternating projections');
/** A straight vent ends before a flat wall, or before a solid that stands square to it. */
const walled = { absolute: 2e-15, why: 'rounding of a difference of edges' };
const climbed = { absolute: 2e-5, why: 'the projections count solids as apart from 20 µm on' };
const places = { layout: { value: vents.map((_, i) => i), unit: 'row' } } as const;

for (const form of ['straight', 'bent'] as const) {
  check(`enclosure.longest-vent.${form}`, {
    ...base,
    formula: 'space/longestVent',
    source: evolution,
    given: places,
    got: ({ layout }) => longestVent({ ...spaceOf(vents[layout]!), vent: ventOf(vents[layout]!) })[form],
    expected: vents.map((one) => one[form]),
    unit: 'm',
    tolerance: form === 'straight' ? walled : climbed,
  });
}

check('enclosure.longest-vent.compiled', {
  ...base,
  formula: 'space/compileLongestVent',
  source: evolution,
  given: places,
  got: ({ layout }) => {
    const { inner, thickness, gap, edgeMargin, driver, vent } = vents[layout]!;
    const out = new Float64Array(2);
    const number = (face: string) => faces.indexOf(face as Face);
    compileLongestVent({
      thickness: faces.map(() => thickness),
      gap,
      edgeMargin,
      cutoutMargin: 0,
      bodies: [{ ...driver, part: 'driver', count: 1, faces: [number(driver.face)], opposed: false }],
      vent: { count: 1, faces: [number(vent.face)], bend: true, walls: 0 },
    })(...(inner as Edges), vent, out);
    return out[1]!;
  },
  expected: vents.map((one) => one.bent),
  unit: 'm',
  tolerance: climbed,
});

check('enclosure.fit', {
  ...base,
  formula: 'space/fit',
  source: evolution,
  given: places,
  got: ({ layout }) => {
    const one = vents[layout]!;
    const fits = (length: number) => fit({ ...spaceOf(one), vent: { ...ventOf(one), length: m(length) } }).ok;
    // The border between the lengths that fit and those that do not.
    let [good, bad] = [Math.max(one.straight, one.bent) - 0.01, Math.max(one.straight, one.bent) + 0.01];
    if (!fits(good) || fits(bad)) return 0;
    while (bad - good > 1e-7) {
      const half = (good + bad) / 2;
      if (fits(half)) good = half;
      else bad = half;
    }
    return good;
  },
  expected: vents.map((one) => Math.max(one.straight, one.bent)),
  unit: 'm',
  tolerance: climbed,
});

/** A short vent in the same layouts: what is left of the length is its slack. */
check('enclosure.fit.slack', {
  ...base,
  formula: 'space/fit',
  source: evolution,
  given: places,
  got: ({ layout }) => {
    const one = vents[layout]!;
    const result = fit({ ...spaceOf(one), vent: { ...ventOf(one), length: m(one.straight / 5) } });
    return result.ok ? (result.slack.ventLength ?? Number.NaN) : Number.NaN;
  },
  expected: vents.map((one) => 0.8 * one.straight),
  unit: 'm',
  tolerance: walled,
});
