import { si } from '@airspring/core/quantity';
import {
  collisions,
  cuboidInterior,
  type FitInput,
  faces,
  fit,
  longestVent,
  type RoundBodyInput,
  type Solid,
} from '@airspring/core/space';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { overlap } from '../../../packages/core/src/space/overlap.js';
import type { Block } from '../../../packages/core/src/space/solids.js';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

const length = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e3), max: Math.round(max * 1e3) }).map((mm) => si('length', mm / 1e3));

const body = (min: number, max: number): fc.Arbitrary<RoundBodyInput> =>
  fc
    .record({
      cutout: length(min, max),
      depth: length(0.03, 0.16),
      sit: fc.oneof(
        fc.record({ faces: fc.subarray([...faces], { minLength: 1, maxLength: 1 }), count: fc.constantFrom(1, 2) }),
        fc.record({
          faces: fc.constantFrom(['left', 'right'] as const, ['front', 'back'] as const),
          count: fc.constant(2),
          spread: fc.constantFrom('opposed' as const, 'each-face' as const),
        }),
      ),
    })
    .map(({ cutout, depth, sit }) => ({
      cutoutDiameter: cutout,
      outerDiameter: si('length', cutout + 0.02),
      depth,
      ...sit,
    }));

const vent = fc.oneof(
  fc.record({ diameter: length(0.03, 0.08), bends: fc.constantFrom('straight' as const, 'one-bend' as const) }),
  fc.record({
    width: length(0.05, 0.2),
    height: length(0.015, 0.05),
    wall: length(0.006, 0.018),
    along: fc.constantFrom('none' as const, 'one' as const, 'two' as const),
  }),
);

const boxes = fc.record({
  outer: fc.record({ width: length(0.2, 0.5), height: length(0.2, 0.5), depth: length(0.2, 0.5) }),
  thickness: length(0.012, 0.022),
  driver: body(0.08, 0.2),
  radiator: body(0.08, 0.2),
  vent,
});

/** Two properties draw the same boxes: the longest vent in each is found once. */
const longestVents = new Map<string, ReturnType<typeof longestVent>>();
function longestIn(input: typeof boxes extends fc.Arbitrary<infer T> ? T : never) {
  const key = JSON.stringify(input);
  const found = longestVents.get(key) ?? longestVent(input);
  longestVents.set(key, found);
  return found;
}

type Vec = [number, number, number];
const generator = (seed: number) => () => {
  seed = (seed * 1664525 + 1013904223) >>> 0;
  return seed / 2 ** 32;
};

function inside(p: Vec, { form, axis, least, greatest }: Solid): boolean {
  if (!p.every((x, k) => x > least[k]! + 1e-6 && x < greatest[k]! - 1e-6)) return false;
  if (form === 'cuboid') return true;
  const across = [0, 1, 2].filter((k) => 'xyz'[k] !== axis);
  const radius = (greatest[across[0]!]! - least[across[0]!]!) / 2;
  return Math.hypot(...across.map((k) => p[k]! - (least[k]! + greatest[k]!) / 2)) < radius - 1e-6;
}

/** Points of each solid lie inside the panels, and in no other solid but those of the same vent. */
function verify(input: FitInput, solids: readonly Solid[], random: () => number): void {
  const t = input.thickness as number;
  const outer = Object.values(input.outer) as number[];
  const interior = cuboidInterior({ outer: input.outer, thickness: input.thickness });
  expect(collisions(interior, solids)).toEqual([]);
  const ofVent = ({ part }: Solid) => part === 'vent' || part === 'clearance';
  for (const one of solids) {
    for (let k = 0; k < 3; k++) {
      expect(one.least[k]!).toBeGreaterThan(t - 1e-9);
      expect(one.greatest[k]!).toBeLessThan(outer[k]! - t + 1e-9);
    }
    for (let n = 0; n < 150; n++) {
      const p = one.least.map((low, k) => low + random() * (one.greatest[k]! - low)) as Vec;
      if (!inside(p, one)) continue;
      const other = solids.find((two) => two !== one && !(ofVent(one) && ofVent(two)) && inside(p, two));
      if (other !== undefined) throw new Error(`a point lies in ${one.part} and in ${other.part}`);
    }
  }
}

test.prop([boxes, fc.integer({ min: 1, max: 2 ** 31 })], { numRuns: cases(100) })(
  'drivers, radiators and a vent that fit are inside, and in nothing else',
  (input, seed) => {
    const closed = fit({ ...input, vent: undefined } as unknown as FitInput);
    if (closed.ok) verify(input as unknown as FitInput, closed.solids, generator(seed));
    const { straight, bent } = longestIn(input);
    for (const metres of [straight, straight / 2, bent]) {
      if (metres < 0.01) continue;
      const asked = { ...input, vent: { ...input.vent, length: si('length', metres) } } as FitInput;
      const result = fit(asked);
      expect(result.ok).toBe(true);
      if (result.ok) verify(asked, result.solids, generator(seed));
    }
  },
  60_000,
);

test.prop([boxes, fc.constantFrom('width', 'height', 'depth'), length(0.001, 0.2)], {
  numRuns: Number(process.env.PLACEMENT_RUNS ?? cases(100)),
})(
  'more room never holds less',
  (input, edge, more) => {
    const wider = { ...input, outer: { ...input.outer, [edge]: si('length', input.outer[edge as 'width'] + more) } };
    const [small, large] = [longestIn(input), longestVent(wider)];
    expect(large.straight).toBeGreaterThan(small.straight - 1e-9);
    expect(large.bent).toBeGreaterThan(small.bent - 1e-9);
  },
  60_000,
);

/** Places of both bodies at random, judged by their solids alone: whether some hundred tries find one that stands. */
function foundAtRandom(input: { outer: object; thickness: number }, bodies: readonly RoundBodyInput[], tries: number) {
  const random = generator(tries);
  const t = input.thickness;
  const inner = (Object.values(input.outer) as number[]).map((edge) => edge - 2 * t);
  const num = (x: unknown) => x as number;
  attempt: for (let n = 0; n < tries; n++) {
    const placed: { face: number; block: Block; centre: Vec; radius: number }[] = [];
    for (const { cutoutDiameter, outerDiameter, depth, faces: names = ['front'], spread, count = 1 } of bodies) {
      const share = spread === undefined ? count : count / names.length;
      const reach = num(depth) - t;
      const half = Math.max(num(cutoutDiameter) / 2 + 0.002, num(outerDiameter) / 2 + 0.005 - t);
      const sites = names.flatMap((name) =>
        Array.from({ length: share }, () => (faces as readonly string[]).indexOf(name)),
      );
      let shared: Vec | undefined;
      for (const face of sites) {
        const axis = face >> 1;
        if (reach > inner[axis]!) return false;
        const fresh = inner.map(
          (edge) => half + [0, 1, random(), random()][Math.floor(4 * random())]! * (edge - 2 * half),
        );
        if (spread === 'opposed') shared = shared ?? (fresh as Vec);
        const centre = shared ?? (fresh as Vec);
        for (let k = 0; k < 3; k++) if (k !== axis && inner[k]! < 2 * half) return false;
        const at = (sign: number) => centre.map((x) => x + (sign * num(cutoutDiameter)) / 2) as Vec;
        const block: Block = { axis, low: at(-1), high: at(1) };
        block.low[axis] = face & 1 ? inner[axis]! - reach : 0;
        block.high[axis] = face & 1 ? inner[axis]! : reach;
        for (const other of placed) {
          if (overlap(block, other.block)) continue attempt;
          if (other.face !== face) continue;
          const apart = Math.hypot(...centre.map((x, k) => (k === axis ? 0 : x - other.centre[k]!)));
          if (apart < num(outerDiameter) / 2 + other.radius + 0.005) continue attempt;
        }
        placed.push({ face, block, centre, radius: num(outerDiameter) / 2 });
      }
    }
    return true;
  }
  return false;
}

test.prop([boxes], { numRuns: Number(process.env.PLACEMENT_RUNS ?? cases(300)) })(
  'what does not fit is not found at random either',
  (input) => {
    // Several on one face are kept free as a block: here one for each face.
    const single = (one: RoundBodyInput) => (one.spread === undefined ? { ...one, count: 1 } : one);
    const [driver, radiator] = [single(input.driver), single(input.radiator)];
    const result = fit({ outer: input.outer, thickness: input.thickness, driver, radiator });
    if (!result.ok) expect(foundAtRandom(input, [driver, radiator], 3000)).toBe(false);
  },
  60_000,
);

const place = fc.record({
  axis: fc.constantFrom('x' as const, 'y' as const, 'z' as const),
  round: fc.boolean(),
  part: fc.constantFrom('driver' as const, 'radiator' as const),
  at: fc.tuple(length(0, 0.3), length(0, 0.3), length(0, 0.3)),
  radius: length(0.02, 0.1),
  deep: length(0.01, 0.2),
});
const solidOf = ({
  axis,
  round,
  part,
  at,
  radius,
  deep,
}: typeof place extends fc.Arbitrary<infer T> ? T : never): Solid => ({
  part,
  form: round ? 'cylinder' : 'cuboid',
  ...(round && { axis }),
  least: at,
  greatest: at.map((x, k) => si('length', x + ('xyz'[k] === axis ? deep : 2 * radius))) as unknown as Solid['greatest'],
});

test.prop([place, place, fc.integer({ min: 1, max: 2 ** 31 })], { numRuns: cases(400) })(
  'a collision is told when a point lies in both solids, or outside the panels',
  (a, b, seed) => {
    const [one, two] = [solidOf(a), solidOf(b)];
    const edge = si('length', 0.4);
    const t = si('length', 0.02);
    const interior = cuboidInterior({ outer: { width: edge, height: edge, depth: edge }, thickness: t });
    const told = collisions(interior, [one, two]);
    const random = generator(seed);
    let shared = false;
    let out = false;
    for (let n = 0; n < 400; n++) {
      const p = one.least.map((low, k) => low + random() * (one.greatest[k]! - low)) as Vec;
      if (!inside(p, one)) continue;
      shared ||= inside(p, two);
      out ||= p.some((x) => x < t || x > edge - t);
    }
    const codes = told.filter(({ text }) => text.startsWith('Solid 1')).map(({ code }) => code);
    if (shared) expect(codes).toContain('overlap');
    if (out) expect(codes).toContain('outside');
    // The way to each face, gone to its end, is still inside; a millimetre more is not.
    if (!interior.contains(one)) return;
    for (const face of interior.faces) {
      const k = faces.indexOf(face) >> 1;
      const sign = faces.indexOf(face) & 1 ? 1 : -1;
      const moved = (by: number): Solid => {
        const go = (point: Solid['least']) =>
          point.map((x, axis) => si('length', axis === k ? x + sign * by : x)) as unknown as Solid['least'];
        return { ...one, least: go(one.least), greatest: go(one.greatest) };
      };
      const way = interior.way(one, face);
      expect(interior.contains(moved(way))).toBe(true);
      expect(interior.contains(moved(way + 1e-3))).toBe(false);
    }
  },
);
