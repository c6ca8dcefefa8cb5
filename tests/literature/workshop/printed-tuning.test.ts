/** The tuning of printed vents, against lines whose areas are measured on the same solids by `slices.ts`. */
import { standardAir } from '@airspring/core/air';
import { type EndCorrection, flanged, unflanged } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import type { Mesh } from '@airspring/workshop/mesh';
import {
  ellipticFlare,
  exponentialFlare,
  flareEnd,
  type PrintedTuning,
  printedTuning,
  roundFlare,
  twoPartVent,
  type VentSolid,
  ventSolid,
} from '@airspring/workshop/solid';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import flares from './flares.json' with { type: 'json' };
import { centreLine, holeAt, holesAlong, mouthByCaps, tunedByLine } from './slices.js';

const fineness = '0.05 mm';
const c = standardAir.speedOfSound;
const STEPS = 60;
/** Air at both ends of a round duct of low frequency, over its radius: in a wide wall, and free. */
const [WALL, FREE] = [0.8216, 0.6133];

interface Case {
  readonly name: string;
  readonly solid: VentSolid;
  readonly line: ReturnType<typeof centreLine>;
  /** Beyond its ends, in lengths of the straight section, m; `given` where they are not those of a round duct. */
  readonly ends: readonly [outer: number, inner: number];
  readonly given?: true;
}
const [d, bore] = [0.07, '70 mm'] as const;
const swapped = twoPartVent({ diameter: bore, length: '180 mm', panelThickness: '18 mm', fineness });
const cases: readonly Case[] = [
  {
    name: 'straight',
    solid: ventSolid({ diameter: bore, length: '150 mm', flange: { diameter: '120 mm' }, fineness }),
    line: centreLine(),
    ends: [(WALL * d) / 2, (FREE * d) / 2],
  },
  {
    name: 'bent',
    solid: ventSolid({
      diameter: bore,
      length: '400 mm',
      bends: [{ leg: '120 mm', angle: '90 deg', centreLineRadius: '70 mm' }],
      fineness,
    }),
    line: centreLine(0.12, 0.07, Math.PI / 2),
    ends: [(WALL * d) / 2, (FREE * d) / 2],
  },
  {
    name: 'slot',
    solid: ventSolid({ width: '150 mm', height: '25 mm', length: '250 mm', fineness }),
    line: centreLine(),
    ends: [0.04, 0.025],
    given: true,
  },
  {
    name: 'in two parts',
    solid: swapped.ok ? swapped.tube : ventSolid({ diameter: bore, length: '180 mm' }),
    line: centreLine(),
    ends: [(WALL * d) / 2, (FREE * d) / 2],
  },
];
const lengthOf = ({ solid }: Case): number => solid.drawing.length;
const areaOf = ({ section }: VentSolid['drawing']): number =>
  section.form === 'round' ? (Math.PI / 4) * section.diameter ** 2 : section.width * section.height;
const fixed = (length: number): EndCorrection => Object.assign(() => length, { sources: ['own'] });

/** Narrower by a hundredth and three hundredths across, as a printer may make a bore; a bent one by the latter alone. */
const narrower = ({ mesh, drawing, name }: VentSolid): VentSolid => ({
  name,
  drawing,
  mesh: { ...mesh, corners: mesh.corners.map((x, i) => x * [drawing.bends.length > 0 ? 1 : 0.99, 0.97, 1][i % 3]!) },
});
const printed = (one: Case, solid: VentSolid, netVolume: number): PrintedTuning =>
  printedTuning({
    vent: solid,
    netVolume: si('volume', netVolume),
    outerEnd: one.given ? fixed(one.ends[0]) : flanged,
    innerEnd: one.given ? fixed(one.ends[1]) : unflanged,
  });
/** The same by a line through the solid, or through the drawing. */
function byLine(one: Case, mesh: Mesh | undefined, volume: number): number {
  const area = areaOf(one.solid.drawing);
  const reach = 0.9 * (one.name === 'bent' ? 0.12 : 1);
  const areas = mesh ? holesAlong(mesh, one.line, lengthOf(one), STEPS, reach) : Array(STEPS).fill(area);
  return tunedByLine(areas, lengthOf(one) / STEPS, [one.ends[0] / area, one.ends[1] / area], volume, c);
}

const byRayleigh = (how: string) => ({
  key: 'rayleigh1896',
  locator: `secs. 302-307: ${how}; a chain of lossless lines through slices of the solid's own triangles, tests/literature/workshop/slices.ts`,
});
const row = { value: cases.map((_, i) => i), unit: cases.map(({ name }) => name).join(', ') };
const base = { formula: 'solid/printedTuning', status: 'derived', kind: 'program' } as const;
/** So large that sound travels through no vent in a hundredth of a period: what is left is the mass of its air. */
const LARGE = 4;

check('solid.printed.line', {
  ...base,
  source: byRayleigh('the tuning in an air space of 4 m³'),
  given: { row },
  got: ({ row }) => printed(cases[row]!, cases[row]!.solid, LARGE).printed,
  expected: cases.map((one) => byLine(one, one.solid.mesh, LARGE)),
  unit: 'Hz',
  tolerance: { relative: 1e-4, why: 'sound that travels through the vent, and ends that hardly depend on frequency' },
});

check('solid.printed.box', {
  ...base,
  source: byRayleigh('the tuning in a box of 40 L'),
  given: { row },
  got: ({ row }) => printed(cases[row]!, cases[row]!.solid, 0.04).drawn,
  expected: cases.map((one) => byLine(one, one.solid.mesh, 0.04)),
  unit: 'Hz',
  tolerance: { relative: 7e-3, why: '(kℓ)²/6, at most 0.6 % here: the air of a lumped vent moves as one' },
});

check('solid.printed.narrower', {
  ...base,
  source: byRayleigh('how much lower a vent tunes whose solid is narrower than its drawing'),
  given: { row },
  got: ({ row }) => printed(cases[row]!, narrower(cases[row]!.solid), LARGE).difference,
  expected: cases.map((one) => byLine(one, narrower(one.solid).mesh, LARGE) / byLine(one, undefined, LARGE) - 1),
  unit: '1',
  tolerance: { relative: 1e-3, why: 'the same, on a shift of a hundredth or two' },
});

check('solid.printed.length', {
  ...base,
  source: byRayleigh('the length of a straight duct of that tuning, (c/2πf)² S/V'),
  given: { row },
  got: ({ row }) => printed(cases[row]!, narrower(cases[row]!.solid), LARGE).effectiveLength,
  expected: cases.map((one) => {
    const f = byLine(one, narrower(one.solid).mesh, LARGE);
    return ((c / (2 * Math.PI * f)) ** 2 * areaOf(one.solid.drawing)) / LARGE;
  }),
  unit: 'm',
  tolerance: { relative: 2e-4, why: 'the same, squared' },
});

check('solid.printed.narrowest', {
  ...base,
  source: byRayleigh('the area of a slice'),
  given: { row },
  got: ({ row }) => printed(cases[row]!, narrower(cases[row]!.solid), LARGE).narrowest,
  expected: cases.map((one) => holeAt(narrower(one.solid).mesh, one.line(lengthOf(one) / 3), 0.1)),
  unit: 'm²',
  tolerance: { relative: 5e-5, why: 'the same area all along, but for the flats of a bend' },
});

/** Depth of a quarter round and what is cut there: slices that crowd towards the mouth. */
const rounds = [
  { d: 0.07, R: 0.02, L: 0.2 },
  { d: 0.05, R: 0.01, L: 0.12 },
  { d: 0.07, R: 0.035, L: 0.15 },
];
const flared = ({ d, R, L }: (typeof rounds)[number]): VentSolid =>
  ventSolid({
    diameter: si('length', d),
    length: si('length', L),
    outerFlare: roundFlare({ radius: si('length', R) }),
    fineness: '0.02 mm',
  });
/** Slices of a flare. */
const MANY = 40;

check('solid.printed.flared', {
  ...base,
  source: byRayleigh('caps of spheres in the flare, half spheres beyond it; the air of both is a little too light'),
  given: { row: { value: rounds.map((_, i) => i), unit: 'row' } },
  got: ({ row }) => printed(cases[0]!, flared(rounds[row]!), LARGE).effectiveLength,
  expected: rounds.map((one) => {
    const { d, R, L } = one;
    const { mesh } = flared(one);
    const places = Array.from({ length: MANY }, (_, i) => R * (1 - Math.sin((Math.PI / 2) * (1 - (i + 0.5) / MANY))));
    const radii = places.map((s) => Math.sqrt(holeAt(mesh, centreLine()(s), 1) / Math.PI));
    const from = places.at(-2)!;
    const pipe = holesAlong(mesh, (s) => centreLine()(from + s), L - from, 20, 1);
    const straight = pipe.reduce((sum, area) => sum + (L - from) / pipe.length / area, 0);
    return (Math.PI / 4) * d ** 2 * (mouthByCaps(places, radii) + straight) + (FREE * d) / 2;
  }),
  unit: 'm',
  tolerance: { relative: 0.013, why: 'caps of spheres are up to 1.2 % too light in the widest of these flares' },
});

test('a solid that is closed, or shorter than its drawing, is refused', () => {
  const { drawing, mesh, name } = cases[0]!.solid;
  const short = { name, drawing, mesh: { ...mesh, corners: mesh.corners.map((x, i) => (i % 3 === 2 ? 0.9 * x : x)) } };
  expect(() => printedTuning({ vent: short, netVolume: '40 L' })).toThrow(/vent\.mesh.*135\.6 mm/);
});

test('without flares the tuning of the drawing is that of core, ends by default', () => {
  const box = { netVolume: '40 L' } as const;
  for (const { solid, name } of cases) {
    const { section, length, wall } = solid.drawing;
    const [long, thick] = [si('length', length), si('length', wall)];
    const vent =
      section.form === 'round'
        ? { diameter: si('length', section.diameter), length: long, wall: thick }
        : { width: si('length', section.width), height: si('length', section.height), length: long, wall: thick };
    const { fb } = tuning({ vent, ...box }) as { fb: number };
    expect([name, printedTuning({ vent: solid, ...box }).drawn]).toEqual([name, expect.closeTo(fb, 9)]);
  }
});

const sizes = flares as { ellipse: number[][]; exponential: number[][] };
for (const [kind, make] of [
  ['ellipse', ellipticFlare],
  ['exponential', exponentialFlare],
] as const)
  check(`solid.flare-end.${kind}`, {
    formula: 'solid/flareEnd',
    status: 'derived',
    kind: 'program',
    source: { key: 'scipy', locator: 'potential flow by finite elements; tests/literature/workshop/flares.py' },
    given: {
      depth: { value: sizes[kind].map(([depth]) => depth!), unit: 'a' },
      widening: { value: sizes[kind].map(([, widening]) => widening!), unit: 'a' },
    },
    // End and flare together, of a tube of 10 mm radius.
    got: ({ depth, widening }) => {
      const flare = make({ depth: si('length', depth / 100), widening: si('length', widening / 100) });
      return 100 * flareEnd(flare)({ radius: 0.01 }, 0) + depth;
    },
    expected: sizes[kind].map(([, , length]) => length!),
    unit: 'a',
    tolerance: { relative: 0.024, why: 'caps of spheres stand for surfaces of equal pressure, as its docstring says' },
  });
