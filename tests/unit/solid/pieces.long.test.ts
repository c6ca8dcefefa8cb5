/** Pieces of a vent that are joined, and two parts that slide: measured on their solids. */
import { si } from '@airspring/core/quantity';
import { crossings, extentOf, type Mesh, meshFaults, volumeOf } from '@airspring/workshop/mesh';
import { exponentialFlare, roundFlare, twoPartVent, ventSegments, ventSolid } from '@airspring/workshop/solid';
import { expect, test } from 'vitest';
import { centreLine, clearances, holeAt } from '../../literature/workshop/slices.js';

const printer = { width: '180 mm', depth: '180 mm', height: '150 mm' } as const;
const [bore, wall, fineness] = [0.07, 0.0032, '0.1 mm'] as const;
const overlap = 0.012;
const clearance = 1.5e-4;
const straight = { diameter: si('length', bore), wall: si('length', wall), fineness } as const;
const vents = {
  straight: { ...straight, length: '430 mm' },
  flared: {
    ...straight,
    length: '430 mm',
    outerFlare: roundFlare({ radius: '15 mm' }),
    innerFlare: exponentialFlare({ depth: '20 mm', widening: '10 mm' }),
    flange: { diameter: '130 mm', screws: { count: 4, diameter: '4 mm', head: '8 mm' } },
  },
  bent: {
    ...straight,
    length: '500 mm',
    bends: [{ leg: '150 mm', angle: '90 deg', centreLineRadius: '80 mm' }],
  },
  slot: {
    width: '110 mm',
    height: '25 mm',
    wall: si('length', wall),
    length: '300 mm',
    flange: { reach: '15 mm' },
    fineness,
  },
} as const;

test.each(Object.entries(vents))('pieces of a vent, %s: solids that stand on the bed of the printer', (_, vent) => {
  const made = ventSegments({ vent, printer });
  if (!made.ok) throw new Error(made.because[0]?.text);
  expect(made.parts.length).toBeGreaterThan(1);
  for (const { name, mesh } of made.parts) {
    expect([name, meshFaults(mesh), crossings(mesh)]).toEqual([name, [], []]);
    const { least, edges } = extentOf(mesh);
    expect(least[2]).toBeCloseTo(0, 9);
    expect(edges[2]).toBeLessThan(0.15 + 1.1e-5);
  }
  // A plastic part is missing nowhere but in the gaps of the joints.
  const { section } = made.drawing;
  const half = (wall - clearance) / 2;
  const ring = (from: number, to: number) =>
    section.form === 'round'
      ? Math.PI * ((bore / 2 + to) ** 2 - (bore / 2 + from) ** 2)
      : 4 * (to ** 2 - from ** 2) + 2 * (to - from) * (section.width + section.height);
  const gap = ring(half, half + clearance) * overlap + ring(half + clearance, wall) * clearance;
  const pieces = made.parts.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0);
  expect(volumeOf(ventSolid(vent).mesh) - pieces).toBeCloseTo(gap * made.cuts.length, 9);
});

test.each(['straight', 'bent', 'slot'] as const)('a joint neither narrows nor widens the bore: %s', (name) => {
  const vent = { ...vents[name], fineness: name === 'straight' ? '0.02 mm' : fineness } as const;
  const made = ventSegments({ vent, printer });
  if (!made.ok) throw new Error(made.because[0]?.text);
  const line = name === 'bent' ? centreLine(0.15, 0.08, Math.PI / 2) : centreLine();
  const area = name === 'slot' ? 0.11 * 0.025 : (Math.PI / 4) * bore ** 2;
  const ends = [0, ...made.cuts, made.drawing.length];
  let before: Mesh | undefined;
  for (const [i, { mesh }] of made.parts.entries()) {
    const from = i === 0 ? 0 : ends[i]! + overlap;
    const to = i === made.parts.length - 1 ? ends[i + 1]! : ends[i + 1]! + overlap;
    const placed = standingIn(mesh, line(ends[i]! + (i === 0 ? 0 : clearance)));
    // The bore of this piece begins where that of the piece before ends, and is whole between.
    const hole = (s: number) => holeAt(placed, line(s), 0.1);
    for (const part of [1e-5, 0.02, 0.5, 0.98, 1 - 1e-5]) {
      const s = from + part * (to - from);
      expect(Math.abs(hole(s) / area - 1)).toBeLessThan(i === 1 && name === 'bent' ? 1e-3 : 1e-9);
    }
    if (i === 0) before = placed;
    if (i === 0) continue;
    // The pieces meet at the shoulder alone: a hundredth of a millimetre apart they are free of each other.
    const { at, along } = line(ends[i]! + clearance + 1e-5);
    const apart = standingIn(mesh, { at, along });
    expect(crossings(together(before!, apart), 1)).toEqual([]);
    const socket = clearances(placed, line(from - 0.006));
    const spigot = clearances(before!, line(from - 0.006));
    if (name === 'straight') expect(socket.inner - spigot.outer).toBeGreaterThan(clearance - 4e-5);
    before = placed;
  }
});

/** How many slices are measured. */
const SLICES = 30;

test.each([44, 69, 100])('a tube of %s mm slides in its flange, however it is turned', (diameter) => {
  const fine = 2e-5;
  const made = twoPartVent({
    diameter: si('length', diameter / 1e3),
    length: '200 mm',
    panelThickness: '18 mm',
    outerFlare: roundFlare({ radius: '12 mm' }),
    innerFlare: roundFlare({ radius: '10 mm' }),
    fineness: si('length', fine),
  });
  if (!made.ok) throw new Error(made.because[0]?.text);
  const { flange, tube, hole, seat, cord } = made;
  const end = extentOf(flange).edges[2];
  const at = (z: number) => centreLine()(z);
  const gaps = Array.from({ length: SLICES }, (_, i) => {
    const z = ((i + 0.5) * end) / SLICES;
    return clearances(flange, at(z)).inner - clearances(tube.mesh, at(z)).outer;
  });
  // Flats of a circle lie 0.02 mm within it, corners as much outside.
  expect(Math.min(...gaps)).toBeGreaterThan(made.clearance - 2 * fine);
  expect(Math.min(...gaps)).toBeLessThan(made.clearance + 2 * fine);
  // The groove is as deep as the cord asks for, and the cord fills it when the tube is in place.
  const deep = Math.max(...gaps.slice(SLICES / 3)) - made.clearance;
  expect(deep + made.clearance).toBeCloseTo((1 - cord.squeeze) * cord.thickness, 3.9);
  // What is behind the rim goes through the seat, inner flare and all; the sleeve goes through the hole in the panel.
  const behind = Array.from(
    { length: SLICES },
    (_, i) => clearances(tube.mesh, at(0.0041 + (i * 0.1958) / SLICES)).outer,
  );
  expect(2 * Math.max(...behind)).toBeLessThan(seat + 2 * fine);
  expect(hole - 2 * clearances(flange, at(0.99 * end)).outer).toBeCloseTo(5e-4, 4);
});

/** Two surfaces as one. */
const together = (one: Mesh, other: Mesh): Mesh => ({
  corners: Float64Array.from([...one.corners, ...other.corners]),
  triangles: Uint32Array.from([
    ...one.triangles,
    ...Array.from(other.triangles, (corner) => corner + one.corners.length / 3),
  ]),
});

/** A piece that stands on its end, put where it belongs; lines bend towards x. */
function standingIn({ corners, triangles }: Mesh, { at, along }: ReturnType<ReturnType<typeof centreLine>>): Mesh {
  const [sin, , cos] = along;
  return {
    triangles,
    corners: Float64Array.from(corners, (_, i) => {
      const [x, y, z] = [corners[i - (i % 3)]!, corners[i - (i % 3) + 1]!, corners[i - (i % 3) + 2]!];
      return [at[0] + cos * x + sin * z, at[1] + y, at[2] - sin * x + cos * z][i % 3]!;
    }),
  };
}
