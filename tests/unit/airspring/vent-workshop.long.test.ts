/** What a workshop makes of a vent: a wall in whole lines of the nozzle, and a hole that a saw at hand makes. */
import { filesToBuildFrom } from '@airspring/workshop/dossier';
import { extentOf, type Mesh } from '@airspring/workshop/mesh';
import { type Brief, type Design, design, reportText, standard } from 'airspring';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { workOf } from '../../../packages/airspring/src/page/work.js';
import { demo, metByWeights } from '../../arbitrary/brief.js';
import { pathsOf } from '../../refusal/faults.js';

/** The bench with vents of one diameter, so that its search is short. */
const bench = (more: object, vent: object = {}): Brief =>
  ({ ...demo, ...more, vent: { ...demo.vent, smallest: '70 mm', largest: '70 mm', bends: 0, ...vent } }) as Brief;

const read = (brief: Brief) => readBrief(brief, standard);
const flat = (text: string) => text.replace(/\s+/g, ' ');

async function built(brief: Brief) {
  const answer = metByWeights(brief);
  const design = answer.designs[0] as Design;
  const { files, notes } = await filesToBuildFrom(workOf(design, read(brief)));
  return {
    design,
    notes,
    files,
    report: flat(reportText(answer)),
    page: flat(String(files[0]!.contents)).replace(/<svg.*?<\/svg>/g, ''),
  };
}

/** The surface in the file of a printed piece, m. */
function meshOf(contents: Uint8Array): Mesh {
  const view = new DataView(contents.buffer, contents.byteOffset, contents.byteLength);
  const count = view.getUint32(80, true);
  const corners = Float64Array.from(
    { length: 9 * count },
    (_, i) => view.getFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), true) / 1e3,
  );
  return { corners, triangles: Uint32Array.from({ length: 3 * count }, (_, i) => i) };
}

/** How wide the tube of a printed piece is, from the corners of its surface: the widest behind the flange, m. */
function tubeDiameter(contents: Uint8Array): number {
  const mesh = meshOf(contents);
  const { corners } = mesh;
  const [, , height] = extentOf(mesh).edges;
  let widest = 0;
  for (let i = 0; i < corners.length; i += 3)
    if (corners[i + 2]! > 5e-3 && corners[i + 2]! < height - 5e-3)
      widest = Math.max(widest, Math.hypot(corners[i]!, corners[i + 1]!));
  return 2 * widest;
}

test('a wall of three millimetres is printed in eight lines of the usual nozzle, and the page says so', async () => {
  const { files, page } = await built(bench({}));
  const piece = files.find(({ path }) => path.endsWith('.stl'))!;
  expect(tubeDiameter(piece.contents as Uint8Array)).toBeCloseTo(0.0764, 4);
  expect(page).toContain('<td>3.2 mm, 8 lines of a nozzle of 0.4 mm; the design has 3 mm</td>');
  // The steps speak of the tube as it is designed.
  expect(page).toContain('<td>outer diameter</td><td>76.4 mm; the design has 76 mm</td>');
});

test('with a nozzle in the brief the design itself has the wall, and the report says why', async () => {
  const { design, files, page, report } = await built(bench({ workshop: { nozzle: '0.7 mm' } }));
  expect(design.vent!.outerDiameter).toBeCloseTo(0.077, 9);
  expect(report).toContain(
    'The wall of the tube is 3.5 mm thick instead of 3 mm: the printer lays it in five lines of 0.7 mm.',
  );
  expect(page).toContain('<td>3.5 mm, 5 lines of a nozzle of 0.7 mm</td>');
  const piece = files.find(({ path }) => path.endsWith('.stl'))!;
  expect(tubeDiameter(piece.contents as Uint8Array)).toBeCloseTo(0.077, 4);
  const { report: same } = await built(bench({ workshop: { nozzle: '0.6 mm' } }));
  expect(same).not.toContain('instead of 3 mm');
});

test('a wall thinner than a line is refused where the reader wrote it', () => {
  expect(pathsOf(() => read(bench({ workshop: { nozzle: '0.8 mm' } }, { wall: '0.7 mm' })))).toEqual(['vent.wall']);
  expect(pathsOf(() => read(bench({}, { wall: '0.3 mm' })))).toEqual(['vent.wall']);
  expect(pathsOf(() => read(bench({}, { wall: '0.4 mm' })))).toEqual([]);
});

test('the hole of a vent is that of the narrowest saw which its tube passes and its flange covers', async () => {
  const { design, report, page, notes } = await built(
    bench({ workshop: { holeSaws: ['44 mm', '86 mm', '79 mm', '76 mm'] } }),
  );
  const hole = design.box.holes.find(({ what }) => what === 'vent') as { readonly diameter: number };
  // The tube is 76 mm wide, its flange 100 mm.
  expect(hole.diameter).toBeCloseTo(0.079, 9);
  for (const text of [report, page.replace(/\u00a0/g, ' ')])
    expect(text).toContain(
      'The hole for the vent is made with the 79 mm saw: the tube passes it, and the flange covers its edge.',
    );
  expect(notes).toEqual([]);
});

test('a wide saw keeps its distance from the panels and from the driver, as any hole does', () => {
  const design = metByWeights(bench({ workshop: { holeSaws: ['89 mm'] } })).designs[0]!;
  const { holes, outer, panelThickness } = design.box;
  const [driver, vent] = ['driver', 'vent'].map((what) => holes.find((one) => one.what === what)!) as [
    (typeof holes)[number] & { diameter: number },
    (typeof holes)[number] & { diameter: number },
  ];
  expect(vent.diameter).toBeCloseTo(0.089, 9);
  for (const [at, edge] of [
    [vent.across, outer[0]],
    [vent.up, outer[1]],
  ] as const)
    expect(Math.min(at, edge - at) - vent.diameter / 2 - panelThickness).toBeGreaterThanOrEqual(0.002 - 1e-9);
  expect(Math.hypot(vent.across - driver.across, vent.up - driver.up)).toBeGreaterThan(
    (vent.diameter + driver.diameter) / 2,
  );
});

test('where no saw makes the hole, it is cut freehand, and the way is told', async () => {
  const { design, report } = await built(bench({ workshop: { holeSaws: ['76 mm', '92 mm'] } }));
  expect((design.box.holes.find(({ what }) => what === 'vent') as { diameter: number }).diameter).toBeCloseTo(0.08, 9);
  expect(report).toContain(
    'None of your saws makes a hole between 77 mm, which the tube passes, and 90 mm, which its flange covers. The hole for the vent is cut 80 mm wide, with a jigsaw, or with a router on a circle jig.',
  );
  const bare = await built(bench({ workshop: { holeSaws: ['79 mm'] } }, { collar: '0 mm' }));
  expect(bare.report).toContain('must reach at least 5.5 mm beyond the tube (vent.collar)');
});

test('an elbow lies flat on the bed of the printer: it stands no higher than the printer reaches', () => {
  const low = { printer: { height: '60 mm', width: '200 mm' } };
  const answer = design(bench(low, { smallest: '50 mm', largest: '80 mm', bends: 1 }));
  for (const { vent, margins } of answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? [])) {
    const told = margins.find(({ path }) => path === 'printer.height')!;
    expect(told.relative).toBeLessThanOrEqual(1e-9);
    if (vent?.bend) expect(vent.outerDiameter).toBeLessThanOrEqual(0.06 + 1e-9);
  }
  // Without a bend the same printer is no hindrance to any of them.
  const tall = design(
    bench({ printer: { height: '200 mm', width: '200 mm' } }, { bends: 1, smallest: '74 mm', largest: '74 mm' }),
  );
  const flat = design(bench(low, { bends: 1, smallest: '74 mm', largest: '74 mm' }));
  expect(tall.ok && tall.designs.some(({ vent }) => vent?.bend)).toBe(true);
  expect(flat.ok ? flat.designs.filter(({ vent }) => vent?.bend) : []).toEqual([]);
});

test.each([85, 100, 115, 130])('a bent vent is made with a printer that is only %s mm high', async (height) => {
  const { design, files, notes, page } = await built({
    ...demo,
    printer: { height: `${height} mm`, width: '200 mm' },
  } as Brief);
  expect(design.vent?.bend).toBeDefined();
  expect(notes).toEqual([]);
  const pieces = files.filter(({ path }) => path.endsWith('.stl'));
  expect(pieces.length).toBeGreaterThan(2);
  for (const { contents } of pieces) {
    const [x, y, z] = extentOf(meshOf(contents as Uint8Array)).edges;
    expect(Math.max(x, y)).toBeLessThan(0.2 + 2e-5);
    expect(z).toBeLessThan(height / 1e3 + 2e-5);
  }
  // The page says how the elbow lies; the flange lies flat.
  expect(page).toMatch(/vent, piece \d of \d; lies on its side/);
  expect(page).toContain('The printer is too low for an elbow to stand. One that lies on its side, as its file does,');
  expect(page).toContain('The flange then lies flat on the bed.');
  const told = design.margins.filter(({ path }) => path === 'printer.height' || path === 'printer.width');
  expect(told.map(({ what }) => what)).toContain('width of the printed elbow');
  for (const { relative } of told) expect(relative).toBeLessThanOrEqual(1e-9);
});
