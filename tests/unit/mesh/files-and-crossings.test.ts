/** Files of solids read back, planted crossings found, and the end of a flare beside that of core. */
import { flared } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { crossings, type Mesh, meshFaults, preview, stl, threeMf, volumeOf } from '@airspring/workshop/mesh';
import { ellipticFlare, flareEnd, roundFlare, twoPartVent, ventSegments, ventSolid } from '@airspring/workshop/solid';
import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';

const flare = roundFlare({ radius: '15 mm' });
/** Coarser than parts are printed, and as quick as that. */
const fineness = '0.05 mm';
const straight = {
  fineness,
  diameter: '60 mm',
  length: '180 mm',
  outerFlare: flare,
  flange: { diameter: '120 mm' },
} as const;
const bent = {
  fineness,
  diameter: '50 mm',
  length: '300 mm',
  bends: [{ leg: '80 mm', angle: '90 deg', centreLineRadius: '60 mm' }],
} as const;
const slot = { fineness, width: '120 mm', height: '20 mm', length: '150 mm', flange: { reach: '15 mm' } } as const;
const swapped = twoPartVent({
  fineness,
  diameter: '69 mm',
  length: '200 mm',
  panelThickness: '18 mm',
  outerFlare: flare,
});
const pieces = ventSegments({ vent: bent, printer: { width: '200 mm', depth: '200 mm', height: '180 mm' } });
const solids: [string, Mesh][] = [
  ['straight', ventSolid(straight).mesh],
  ['bent', ventSolid(bent).mesh],
  ['slot', ventSolid(slot).mesh],
  ...(swapped.ok
    ? ([
        ['flange', swapped.flange],
        ['tube', swapped.tube.mesh],
      ] as [string, Mesh][])
    : []),
  ...(pieces.ok ? pieces.parts.map(({ name, mesh }): [string, Mesh] => [name, mesh]) : []),
];

/** Two surfaces as one. */
const together = (one: Mesh, other: Mesh): Mesh => ({
  corners: Float64Array.from([...one.corners, ...other.corners]),
  triangles: Uint32Array.from([
    ...one.triangles,
    ...Array.from(other.triangles, (corner) => corner + one.corners.length / 3),
  ]),
});
const moved = ({ corners, triangles }: Mesh, by: number): Mesh => ({
  corners: corners.map((value, i) => value + (i % 3 === 0 ? by : 0)),
  triangles,
});

test('parts of every kind are solids that nowhere run through themselves', () => {
  expect(solids.length).toBeGreaterThanOrEqual(7);
  for (const [name, mesh] of solids) expect([name, meshFaults(mesh), crossings(mesh)]).toEqual([name, [], []]);
});

test('planted crossings are found', () => {
  const tube = ventSolid({ diameter: '50 mm', length: '100 mm', fineness: '0.2 mm' }).mesh;
  expect(crossings(together(tube, moved(tube, 0.2)))).toEqual([]);
  expect(crossings(together(tube, moved(tube, 0.03))).length).toBeGreaterThan(10);
});

test('tube and flange of a vent in two parts touch where the rim rests and nowhere else', () => {
  if (!swapped.ok) throw new Error(swapped.because[0]?.text);
  const { flange, tube } = swapped;
  // Its rim rests on the flange; a tenth of a millimetre farther out nothing touches.
  const out = (by: number): Mesh => ({
    ...tube.mesh,
    corners: tube.mesh.corners.map((value, i) => value - (i % 3 === 2 ? by : 0)),
  });
  expect(crossings(together(flange, out(1e-4)))).toEqual([]);
  expect(crossings(together(flange, out(0.05)))).toEqual([]);
  expect(crossings(together(flange, out(-1e-3))).length).toBeGreaterThan(0);
});

test('files hold the same solid: binary STL and 3MF in millimetres, equal bytes on two runs', async () => {
  const mesh = ventSolid(straight).mesh;
  const bytes = stl(mesh);
  const view = new DataView(bytes.buffer);
  const count = view.getUint32(80, true);
  expect(count).toBe(mesh.triangles.length / 3);
  const corners = Float64Array.from(
    { length: 9 * count },
    (_, i) => view.getFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), true) / 1e3,
  );
  const read = { corners, triangles: Uint32Array.from({ length: 3 * count }, (_, i) => i) };
  expect(Math.abs(volumeOf(read) / volumeOf(mesh) - 1)).toBeLessThan(1e-5);
  expect(Buffer.compare(stl(mesh), bytes)).toBe(0);
  const archive = await threeMf([{ name: 'a "vent" & more', mesh }]);
  expect(Buffer.compare(await threeMf([{ name: 'a "vent" & more', mesh }]), archive)).toBe(0);
  const text = new TextDecoder().decode(unzipSync(archive)['3D/3dmodel.model']);
  const points = [...text.matchAll(/<vertex x="([^"]+)" y="([^"]+)" z="([^"]+)"\/>/g)].flatMap(([, ...at]) =>
    at.map(Number),
  );
  const triangles = [...text.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"\/>/g)].flatMap(([, ...of]) =>
    of.map(Number),
  );
  const packed = { corners: Float64Array.from(points, (value) => value / 1e3), triangles: Uint32Array.from(triangles) };
  expect(Math.abs(volumeOf(packed) / volumeOf(mesh) - 1)).toBeLessThan(1e-6);
  expect(text).toContain('name="a &quot;vent&quot; &amp; more"');
  expect(text).not.toMatch(/\de[-+]/);
});

test('a picture shows what faces the viewer alone, and is a small text', () => {
  const coarse = ventSolid({ ...straight, fineness: '0.5 mm' }).mesh;
  const picture = preview(coarse, { title: 'The vent & its flange' });
  expect(picture).toContain('<title>The vent &amp; its flange</title>');
  expect(picture).not.toMatch(/NaN|undefined/);
  expect((picture.match(/M[\d.]/g) ?? []).length).toBeLessThan(coarse.triangles.length / 3);
  expect(preview(coarse, { title: 'The vent & its flange' })).toBe(picture);
});

test('a cube seen from a corner is three faces and nine edges, and no seam hides an edge', () => {
  const corners = Float64Array.from([0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) => [i & 1, (i >> 1) & 1, i >> 2]));
  const sides = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const triangles = Uint32Array.from(sides.flatMap(([a, b, c, d]) => [a!, b!, c!, a!, c!, d!]));
  for (const elevation of [0.5, -0.5]) {
    const picture = preview({ corners, triangles }, { title: 'A cube', elevation });
    expect([...picture.matchAll(/class="s\d+" d="([^"]+)"/g)].flatMap(([, d]) => d!.match(/z/g))).toHaveLength(3);
    const places = [...picture.matchAll(/class="edge" d="([^"]+)"/g)].flatMap(([, d]) =>
      [...d!.matchAll(/M(\d+) (\d+)l(-?\d+) ?(-?\d+)/g)].map(([, ...at]) => {
        const [x, y, dx, dy] = at.map(Number) as [number, number, number, number];
        return [`${x} ${y}`, `${x + dx} ${y + dy}`].sort().join();
      }),
    );
    expect(new Set(places).size).toBe(9);
    // The line that closes a seam never hides that of an edge.
    const widths = [/<g stroke-width="([\d.]+)"/, /\.edge\{[^}]*stroke-width:([\d.]+)/].map((at) =>
      Number(at.exec(picture)![1]),
    );
    expect(widths[0]).toBeLessThan(widths[1]!);
  }
});

test('the end of a quarter round is within 1.2 % of that of core', () => {
  const radius = 0.035;
  for (const rounding of [0.018, 0.025, 0.035]) {
    const own = flareEnd(roundFlare({ radius: si('length', rounding) }))({ radius }, 0);
    const theirs = flared({ radius: si('length', rounding) })({ radius }, 0);
    expect(Math.abs((own + rounding) / (theirs + rounding) - 1)).toBeLessThan(0.012);
  }
  // A longer ellipse holds more air than a quarter round of the same width.
  const end = (depth: '20 mm' | '40 mm') =>
    flareEnd(ellipticFlare({ depth, widening: '20 mm' }))({ radius }, 0) + (depth === '20 mm' ? 0.02 : 0.04);
  expect(end('40 mm')).toBeGreaterThan(end('20 mm'));
});
