/** Solids of printed parts, against `solids.py` beside this file, which knows no triangle. */
import { si } from '@airspring/core/quantity';
import { extentOf, type Mesh, sliceOf, surfaceOf, volumeOf } from '@airspring/workshop/mesh';
import { areaOf } from '@airspring/workshop/outline';
import {
  airwayOf,
  driverGasket,
  ellipticFlare,
  exponentialFlare,
  flareThrough,
  holeBySaw,
  massDiscs,
  roundFlare,
  terminalCup,
  tubeSegments,
  twoPartVent,
  ventSegments,
  ventSolid,
} from '@airspring/workshop/solid';
import { check } from '../../ledger/check.js';
import fixtures from './solids.json' with { type: 'json' };

const { tubes, bends, flares, depth, widening, places, ellipse, exponential, gaskets, discs, cups, program } = fixtures;
const byScipy = (how: string) => ({ key: 'scipy', locator: `${program}: ${how}; tests/literature/workshop/solids.py` });
const base = { status: 'derived', kind: 'program' } as const;
const exact = { relative: 1e-12, why: 'double precision on both sides' } as const;
const fine = {
  relative: 1e-3,
  why: 'curves of a printed part are many short sides; 0.1 % is what a part may lack',
} as const;
const rows = (list: readonly unknown[]) => ({ row: { value: list.map((_, i) => i), unit: 'row' } });
const m = (metres: number) => si('length', metres);

const tube = (row: number) => {
  const { bore, wall, length } = tubes[row]!;
  return ventSolid({ diameter: m(bore), wall: m(wall), length: m(length) });
};
const bend = (row: number) => {
  const { bore, wall, radius, leg, length } = bends[row]!;
  const bent = [{ leg: m(leg), angle: '90 deg', centreLineRadius: m(radius) }] as const;
  return ventSolid({ diameter: m(bore), wall: m(wall), length: m(length), bends: bent });
};
const flared = (row: number) => {
  const { bore, radius, length } = flares[row]!;
  const flare = roundFlare({ radius: m(radius) });
  return ventSolid({
    diameter: m(bore),
    wall: '3 mm',
    length: m(length),
    outerFlare: flare,
    innerFlare: flare,
    fineness: '0.05 mm',
  });
};

check('solid.volume.tube', {
  ...base,
  formula: 'mesh/volumeOf',
  source: byScipy('the volume between two cylinders'),
  given: rows(tubes),
  got: ({ row }) => volumeOf(tube(row).mesh),
  expected: tubes.map(({ volume }) => volume),
  unit: 'm³',
  tolerance: exact,
});

check('solid.volume.bend', {
  ...base,
  formula: 'solid/ventSolid',
  source: byScipy('a section led along two legs and a quarter circle (Pappus)'),
  given: rows(bends),
  got: ({ row }) => volumeOf(bend(row).mesh),
  expected: bends.map(({ volume }) => volume),
  unit: 'm³',
  tolerance: fine,
});

check('solid.length.tube', {
  ...base,
  formula: 'mesh/extentOf',
  source: byScipy('the length that was asked for'),
  given: rows(tubes),
  got: ({ row }) => extentOf(tube(row).mesh).edges[2],
  expected: tubes.map(({ length }) => length),
  unit: 'm',
  tolerance: exact,
});

check('solid.slice.tube', {
  ...base,
  formula: 'mesh/sliceOf',
  source: byScipy('the ring between two circles: the volume over the length'),
  given: rows(tubes),
  got: ({ row }) => {
    const plane = { origin: [0, 0, 0.37 * tubes[row]!.length], x: [1, 0, 0], y: [0, 1, 0] } as const;
    return sliceOf(tube(row).mesh, plane).reduce((sum, figure) => sum + areaOf(figure), 0);
  },
  expected: tubes.map(({ volume, length }) => volume / length),
  unit: 'm²',
  tolerance: exact,
});

check('solid.slice.area', {
  ...base,
  formula: 'outline/areaOf',
  source: byScipy('the outer circle of a tube'),
  given: rows(tubes),
  got: ({ row }) => {
    const plane = { origin: [0, 0, 0.37 * tubes[row]!.length], x: [1, 0, 0], y: [0, 1, 0] } as const;
    return Math.max(...sliceOf(tube(row).mesh, plane).map(areaOf));
  },
  expected: tubes.map(({ bore, wall }) => (Math.PI / 4) * (bore + 2 * wall) ** 2),
  unit: 'm²',
  tolerance: exact,
});

check('solid.surface.tube', {
  ...base,
  formula: 'mesh/surfaceOf',
  source: byScipy('two cylinders and two rings'),
  given: rows(tubes),
  got: ({ row }) => surfaceOf(tube(row).mesh),
  expected: tubes.map(
    ({ bore, wall, length, volume }) => Math.PI * (2 * bore + 2 * wall) * length + (2 * volume) / length,
  ),
  unit: 'm²',
  tolerance: fine,
});

check('solid.air.flared', {
  ...base,
  formula: 'solid/airwayOf',
  source: byScipy('discs of two quarter rounds and a cylinder, integrated along the centre line'),
  given: rows(flares),
  got: ({ row }) => {
    const { areas, length } = airwayOf(flared(row), 200);
    return (areas.reduce((sum, area) => sum + area, 0) * length) / areas.length;
  },
  expected: flares.map(({ air }) => air),
  unit: 'm³',
  tolerance: fine,
});

check('solid.flare.round', {
  ...base,
  formula: 'solid/roundFlare',
  source: byScipy('the circle: 1 - cos 45°'),
  given: { radius: { value: [0.01, 0.02, 0.03], unit: 'm' } },
  got: ({ radius }) => roundFlare({ radius: m(radius) }).curve(0.5)[1],
  expected: [0.01, 0.02, 0.03].map((radius) => radius * (1 - Math.SQRT1_2)),
  unit: 'm',
  tolerance: exact,
});

check('solid.flare.ellipse', {
  ...base,
  formula: 'solid/ellipticFlare',
  source: byScipy('the ellipse by its angle'),
  given: { t: { value: places, unit: '1' } },
  got: ({ t }) => ellipticFlare({ depth: m(depth), widening: m(widening) }).curve(t)[1],
  expected: ellipse,
  unit: 'm',
  tolerance: exact,
});

check('solid.flare.exponential', {
  ...base,
  formula: 'solid/exponentialFlare',
  source: byScipy('the exponential function less its tangent'),
  given: { t: { value: places, unit: '1' } },
  got: ({ t }) => exponentialFlare({ depth: m(depth), widening: m(widening) }).curve(t)[1],
  expected: exponential,
  unit: 'm',
  tolerance: exact,
});

check('solid.flare.points', {
  ...base,
  formula: 'solid/flareThrough',
  source: byScipy('straight lines between the points of the ellipse: their middles'),
  given: { t: { value: [1 / 8, 3 / 8, 5 / 8], unit: '1' } },
  got: ({ t }) => {
    const points = [0, 0.25, 0.5, 0.75, 1].map((s, i) => [depth * s, [0, ...ellipse, widening][i]!] as const);
    return flareThrough(points).curve(t)[1];
  },
  expected: [0, 1, 2].map((i) => ([0, ...ellipse][i]! + ellipse[i]!) / 2),
  unit: 'm',
  tolerance: exact,
});

check('solid.segments.length', {
  ...base,
  formula: 'solid/ventSegments',
  source: byScipy('the pieces of a tube, without their spigots of 12 mm, add up to its length'),
  given: rows(tubes),
  got: ({ row }) => {
    const { bore, wall, length } = tubes[row]!;
    const vent = { diameter: m(bore), wall: m(wall), length: m(length), nozzle: '0.4 mm' } as const;
    const made = ventSegments({ vent, printer: { width: '200 mm', depth: '200 mm', height: '150 mm' } });
    if (!made.ok) return Number.NaN;
    const heights = made.parts.map(({ mesh }) => extentOf(mesh).edges[2]);
    // Each piece but the first begins a clearance of 0.15 mm behind its joint.
    return heights.reduce((sum, one) => sum + one, 0) - (made.parts.length - 1) * (0.012 - 1.5e-4);
  },
  expected: tubes.map(({ length }) => length),
  unit: 'm',
  tolerance: exact,
});

check('solid.tube-segments.length', {
  ...base,
  formula: 'solid/tubeSegments',
  source: byScipy('the pieces of a tube in a flange, without their spigots of 12 mm, add up to its length'),
  given: { length: { value: [0.25, 0.4, 0.61], unit: 'm' } },
  got: ({ length }) => {
    const vent = twoPartVent({ diameter: '69 mm', length: m(length), panelThickness: '18 mm', fineness: '0.5 mm' });
    if (!vent.ok) return Number.NaN;
    const made = tubeSegments({ vent, printer: { width: '200 mm', depth: '200 mm', height: '150 mm' } });
    if (!made.ok) return Number.NaN;
    const heights = made.parts.map(({ mesh }) => extentOf(mesh).edges[2]);
    // Each piece but the first begins a clearance of 0.15 mm behind its joint.
    return heights.reduce((sum, one) => sum + one, 0) - (made.parts.length - 1) * (0.012 - 1.5e-4);
  },
  expected: [0.25, 0.4, 0.61],
  unit: 'm',
  tolerance: exact,
});

/** Volume of a ring by the theorem of Pappus: the area of its section, times the way of its centroid. */
function ringOf(section: readonly (readonly [along: number, radius: number])[]): number {
  const moment = section.reduce((sum, [x, r], i) => {
    const [nextX, nextR] = section[(i + 1) % section.length]!;
    return sum + ((x * nextR - nextX * r) * (r + nextR)) / 6;
  }, 0);
  return Math.abs(2 * Math.PI * moment);
}

check('solid.tube-segments.volume', {
  ...base,
  formula: 'solid/tubeSegments',
  source: byScipy('a tube that the printer takes whole is one piece: a ring of its section, by the theorem of Pappus'),
  given: { bore: { value: [0.044, 0.069, 0.1], unit: 'm' } },
  got: ({ bore }) => {
    const vent = twoPartVent({ diameter: m(bore), length: '200 mm', panelThickness: '18 mm' });
    if (!vent.ok) return Number.NaN;
    const whole = tubeSegments({ vent, printer: { width: '700 mm', depth: '700 mm', height: '700 mm' } });
    const ring = ringOf(vent.profile.map(([along, height]) => [along, bore / 2 + height]));
    return whole.ok ? whole.parts.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0) / ring : Number.NaN;
  },
  expected: [1, 1, 1],
  unit: '1',
  tolerance: { relative: 1e-3, why: 'flats of a circle, 0.1 % of the volume' },
});

check('solid.saw.hole', {
  ...base,
  formula: 'solid/holeBySaw',
  source: byScipy('the least of the saws that is 0.5 mm wider than the part'),
  given: { through: { value: [0.0499, 0.0565, 0.076], unit: 'm' } },
  got: ({ through }) => {
    const hole = holeBySaw({ through: m(through), saws: ['51 mm', '57 mm', '76 mm', '83 mm'] });
    return hole.ok ? hole.diameter : Number.NaN;
  },
  expected: [0.051, 0.057, 0.083],
  unit: 'm',
  tolerance: exact,
});

/** The greatest distance of corners from the axis between two heights. */
function reach({ corners }: Mesh, inside: boolean): number {
  let found = inside ? Infinity : 0;
  for (let i = 0; i < corners.length; i += 3) {
    const from = Math.hypot(corners[i]!, corners[i + 1]!);
    found = inside ? Math.min(found, from) : Math.max(found, from);
  }
  return found;
}

check('solid.two-parts.bore', {
  ...base,
  formula: 'solid/twoPartVent',
  source: byScipy('the tube keeps its bore, and the flange leaves the clearance around its seat'),
  given: { bore: { value: [0.044, 0.069, 0.1], unit: 'm' } },
  got: ({ bore }) => {
    const made = twoPartVent({ diameter: m(bore), length: '200 mm', panelThickness: '18 mm' });
    // Corners of a many-sided bore lie on its circle.
    return made.ok ? 2 * reach(made.tube.mesh, true) + (2 * reach(made.flange, true) - made.seat) : Number.NaN;
  },
  expected: [0.044, 0.069, 0.1].map((bore) => bore + 2 * 2.5e-4),
  unit: 'm',
  tolerance: { absolute: 3e-5, why: 'flats of a circle may be 0.01 mm from it' },
});

check('solid.slice.place', {
  ...base,
  formula: 'mesh/sliceOf',
  source: byScipy('the outer circle, seen from 0.2 m beside its middle'),
  given: rows(tubes),
  got: ({ row }) => {
    const plane = { origin: [-0.2, 0, 0.37 * tubes[row]!.length], x: [1, 0, 0], y: [0, 1, 0] } as const;
    return Math.max(...sliceOf(tube(row).mesh, plane).flatMap((figure) => figure.map(([x]) => x)));
  },
  expected: tubes.map(({ bore, wall }) => 0.2 + bore / 2 + wall),
  unit: 'm',
  tolerance: fine,
});

check('solid.extent.across', {
  ...base,
  formula: 'mesh/extentOf',
  source: byScipy('the outer radius of a tube, to either side, and its longest edge'),
  given: rows(tubes),
  got: ({ row }) => {
    const { least, greatest, longest } = extentOf(tube(row).mesh);
    return 4 * greatest[0] - least[0] + 10 * longest;
  },
  expected: tubes.map(({ bore, wall, length }) => 5 * (bore / 2 + wall) + 10 * Math.max(length, bore + 2 * wall)),
  unit: 'm',
  tolerance: fine,
});

check('solid.airway.area', {
  ...base,
  formula: 'solid/airwayOf',
  source: byScipy('the circle of the bore, as solid and as drawing'),
  given: rows(tubes),
  got: ({ row }) => {
    const { areas, drawn } = airwayOf(tube(row), 5);
    return areas[2]! + 3 * drawn[2]!;
  },
  expected: tubes.map(({ bore }) => Math.PI * bore ** 2),
  unit: 'm²',
  tolerance: exact,
});

check('solid.segments.volume', {
  ...base,
  formula: 'solid/ventSegments',
  source: byScipy('a tube that the printer takes whole is one piece: the volume between two cylinders'),
  given: rows(tubes),
  got: ({ row }) => {
    const { bore, wall, length } = tubes[row]!;
    const vent = { diameter: m(bore), wall: m(wall), length: m(length) } as const;
    const whole = ventSegments({ vent, printer: { width: '700 mm', depth: '700 mm', height: '700 mm' } });
    return whole.ok ? whole.parts.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0) : Number.NaN;
  },
  expected: tubes.map(({ volume }) => volume),
  unit: 'm³',
  tolerance: exact,
});

check('solid.saw.flange', {
  ...base,
  formula: 'solid/holeBySaw',
  source: byScipy('half of what the hole is wider than the part; a flange 5 mm wider on each side'),
  given: { through: { value: [0.0499, 0.0565, 0.076], unit: 'm' } },
  got: ({ through }) => {
    const hole = holeBySaw({ through: m(through), saws: ['51 mm', '57 mm', '76 mm', '83 mm'] });
    return hole.ok ? 100 * hole.gap + hole.flangeDiameter : Number.NaN;
  },
  expected: [
    [0.0499, 0.051],
    [0.0565, 0.057],
    [0.076, 0.083],
  ].map(([through, saw]) => 50 * (saw! - through!) + saw! + 0.01),
  unit: 'm',
  tolerance: exact,
});

const gasket = (row: number) => {
  const { inner, outer, thickness, count, circle, hole } = gaskets[row]!;
  const bolts = { count, circle: m(circle), hole: m(hole) };
  return driverGasket({ inner: m(inner), outer: m(outer), thickness: m(thickness), bolts });
};
check('solid.gasket.volume', {
  ...base,
  formula: 'solid/driverGasket',
  source: byScipy('a ring less the cylinders of its bolts'),
  given: rows(gaskets),
  got: ({ row }) => volumeOf(gasket(row).mesh),
  expected: gaskets.map(({ volume }) => volume),
  unit: 'm³',
  tolerance: exact,
});
check('solid.gasket.drawing', {
  ...base,
  formula: 'solid/driverGasket',
  source: byScipy('the same ring as circles: outer, inner, and those of the bolts, whose middles lie on their circle'),
  given: rows(gaskets),
  got: ({ row }) => {
    const [outer, inner, ...bolts] = gasket(row).drawing.shapes.flatMap((one) => (one.form === 'circle' ? [one] : []));
    const open = bolts.reduce((sum, { radius }) => sum + radius ** 2, 0);
    const places = bolts.reduce((sum, { centre }) => sum + Math.hypot(...centre), 0) / bolts.length;
    // The first bolt stands half a step from the right.
    const first = bolts[0]!.centre[0];
    const radii = [outer!, inner!, ...bolts].reduce((sum, { radius }) => sum + radius, 0);
    return Math.PI * (outer!.radius ** 2 - inner!.radius ** 2 - open) + places + first + radii;
  },
  expected: gaskets.map(
    ({ volume, thickness, circle, count, inner, outer, hole }) =>
      volume / thickness + (circle / 2) * (1 + Math.cos(Math.PI / count)) + (inner + outer + count * hole) / 2,
  ),
  unit: 'm²',
  tolerance: exact,
});

const weights = (row: number) => {
  const { mass, diameter, hole, density } = discs[row]!;
  return massDiscs({ mass: si('mass', mass), diameter: m(diameter), hole: m(hole), density: si('density', density) });
};
check('solid.discs.height', {
  ...base,
  formula: 'solid/massDiscs',
  source: byScipy('the height of a ring of that mass, of which 97 % are plastic'),
  given: rows(discs),
  got: ({ row }) => weights(row).height * weights(row).count,
  expected: discs.map(({ height }) => height),
  unit: 'm',
  tolerance: exact,
});
check('solid.discs.mass', {
  ...base,
  formula: 'solid/massDiscs',
  source: byScipy('the mass that was asked for: volume of the solids times 97 % of the density'),
  given: rows(discs),
  got: ({ row }) => volumeOf(weights(row).mesh) * weights(row).count * 0.97 * discs[row]!.density,
  expected: discs.map(({ mass }) => mass),
  unit: 'kg',
  tolerance: exact,
});
check('solid.discs.range', {
  ...base,
  formula: 'solid/massDiscs',
  source: byScipy('94 and 100 % of plastic, where 97 % have the mass'),
  given: rows(discs),
  got: ({ row }) => weights(row).massRange[0] + 3 * weights(row).massRange[1],
  expected: discs.map(({ mass }) => (mass * (94 + 300)) / 97),
  unit: 'kg',
  tolerance: exact,
});

const cup = (row: number) => {
  const { diameter, depth, wall, floor, beyond, flange } = cups[row]!;
  const sizes = { diameter: m(diameter), depth: m(depth), wall: m(wall), floor: m(floor) };
  return terminalCup({ ...sizes, flange: { reach: m(beyond), thickness: m(flange) } });
};
check('solid.cup.volume', {
  ...base,
  formula: 'solid/terminalCup',
  source: byScipy('wall, floor and flange, less the cylinders of two posts and four screws'),
  given: rows(cups),
  got: ({ row }) => volumeOf(cup(row).mesh),
  expected: cups.map(({ volume }) => volume),
  unit: 'm³',
  tolerance: exact,
});
check('solid.cup.behind', {
  ...base,
  formula: 'solid/terminalCup',
  source: byScipy('the cylinder behind a panel of 12 mm'),
  given: rows(cups),
  got: ({ row }) => cup(row).displaced(m(0.012)),
  expected: cups.map(({ behind }) => behind),
  unit: 'm³',
  tolerance: exact,
});
check('solid.cup.sizes', {
  ...base,
  formula: 'solid/terminalCup',
  source: byScipy('1 mm of play around its wall; its flange; from the panel to the back of its floor'),
  given: rows(cups),
  got: ({ row }) => cup(row).hole + 10 * cup(row).flangeDiameter + 100 * cup(row).reach,
  expected: cups.map(
    ({ diameter, depth, wall, floor, beyond, flange }) =>
      diameter + 2 * wall + 0.001 + 10 * (diameter + 2 * wall + 2 * beyond) + 100 * (depth + floor - flange),
  ),
  unit: 'm',
  tolerance: exact,
});
