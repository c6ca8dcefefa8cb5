/** `airspring build`: a folder whole or not at all, and the numbers of the design on its pages. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { archiveOf } from '@airspring/workshop/dossier';
import { type Mesh, meshFaults } from '@airspring/workshop/mesh';
import { unzipSync } from 'fflate';
import { expect, test, vi } from 'vitest';
import type { Workshop } from '../../../packages/airspring/src/command/build.js';
import { run as command } from '../../../packages/airspring/src/command/run.js';
import { bestOf, demo } from '../../arbitrary/brief.js';

vi.setConfig({ testTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'airspring-build-'));
/** The bench with vents of one diameter, so that its search is short. */
const brief = { ...demo, vent: { ...demo.vent, smallest: '70 mm', largest: '70 mm', bends: 0 } };
const bench = join(mkdtempSync(join(tmpdir(), 'airspring-brief-')), 'bench.json');
writeFileSync(bench, JSON.stringify(brief));

async function run(words: readonly string[], workshop?: Workshop) {
  const { status, out, error } = await command(words, folder, () => {}, workshop && { workshop });
  return { status, stdout: out, lines: error.split('\n').filter((line) => line !== '') };
}
const textOf = (path: string) => readFileSync(join(folder, path), 'utf8');

/** The surface in a binary STL file, m. */
function meshOf(bytes: Uint8Array): Mesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  const corners = Float64Array.from({ length: 9 * count }, (_, i) => {
    const [triangle, value] = [Math.floor(i / 9), i % 9];
    return view.getFloat32(84 + 50 * triangle + 12 + 4 * value, true) / 1e3;
  });
  return { corners, triangles: Uint32Array.from({ length: 3 * count }, (_, i) => i) };
}

test('everything to build a box from, with the numbers of its design', async () => {
  const { status, stdout, lines } = await run(['build', bench, '--into', 'whale']);
  expect(lines).toEqual([]);
  expect(status).toBe(0);
  expect(stdout).toContain('Open build.html first.');
  const { box, vent } = bestOf(brief);
  const page = textOf('whale/build.html').replace(/\u00a0/g, ' ');
  const mm = (metres: number) => `${Number((metres * 1e3).toFixed(1))} mm`;
  for (const panel of box.panels) expect(page).toContain(mm(panel.length));
  for (const hole of box.holes)
    expect(page).toContain(`⌀ ${Number(((hole as { diameter: number }).diameter * 1e3).toFixed(1))}`);
  expect(page).toContain(mm(vent!.length));
  expect(page).not.toMatch(/undefined|NaN|\[object/);
  expect(page).not.toMatch(/<script|src="http|href="http/);
  // Each file that the page names is there, and no other.
  const named = [...page.matchAll(/<li>([\w./-]+\.\w{3})<\/li>/g)].map(([, name]) => name!);
  const there = readdirSync(join(folder, 'whale'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.\w+$/.test(name),
  );
  expect(named.sort()).toEqual(there.filter((name) => name !== 'build.html').sort());
  // Cut list: six panels, as many as the design has.
  const rows = textOf('whale/cut-list.csv')
    .trim()
    .split('\r\n')
    .slice(1)
    .map((line) => line.split(','));
  expect(rows.reduce((sum, row) => sum + Number(row[1]), 0)).toBe(
    box.panels.reduce((sum, { count }) => sum + count, 0),
  );
});

test('the printed parts are solids, in pieces that the printer takes, and the archive holds the same', () => {
  const parts = readdirSync(join(folder, 'whale/vent')).filter((name) => name.endsWith('.stl'));
  expect(parts.length).toBeGreaterThan(1);
  let triangles = 0;
  for (const part of parts) {
    const mesh = meshOf(readFileSync(join(folder, 'whale/vent', part)));
    triangles += mesh.triangles.length / 3;
    expect([part, meshFaults(mesh)]).toEqual([part, []]);
    for (let axis = 0; axis < 3; axis++) {
      const along = mesh.corners.filter((_, i) => i % 3 === axis);
      expect(along.reduce((a, b) => Math.max(a, b)) - along.reduce((a, b) => Math.min(a, b))).toBeLessThan(0.2001);
    }
  }
  const files = unzipSync(readFileSync(join(folder, 'whale/vent/vent.3mf')));
  const model = new TextDecoder().decode(files['3D/3dmodel.model']);
  expect(model).toContain('unit="millimeter"');
  expect(model.match(/<triangle /g)).toHaveLength(triangles);
  expect(model.match(/<object /g)).toHaveLength(parts.length);
});

test('the drawing of a panel has its holes where the design has them', () => {
  const dxf = textOf('whale/panels/front.dxf')
    .split(/\r?\n/)
    .map((line) => line.trim());
  const circles = dxf.flatMap((line, i) => (line === 'CIRCLE' && dxf[i - 1] === '0' ? [i] : []));
  const value = (from: number, code: string) => {
    const at = dxf.findIndex((line, i) => i > from && (i - from) % 2 === 1 && line === code);
    return Number(dxf[at + 1]);
  };
  const found = circles.map((at) => [value(at, '10'), value(at, '20'), value(at, '40')]);
  for (const hole of bestOf(brief).box.holes) {
    const radius = (hole as { diameter: number }).diameter / 2;
    const near = found.some(
      ([x, y, r]) => Math.hypot(x! - hole.across * 1e3, y! - hole.up * 1e3, r! - radius * 1e3) < 1e-3,
    );
    expect([hole.what, near]).toEqual([hole.what, true]);
  }
});

test('an archive holds the same files in a folder, and the same bytes whenever it is made', async () => {
  const names = ['cut-list.csv', 'vent/vent-piece-2-of-2.stl'];
  const files = names.map((path) => ({ path, contents: readFileSync(join(folder, 'whale', path)) }));
  const text = { path: 'build.html', contents: textOf('whale/build.html') };
  const clock = vi.useFakeTimers({ toFake: ['Date'], now: new Date(2031, 4, 5) });
  const archive = await archiveOf([text, ...files], 'die-bänke-1');
  clock.useRealTimers();
  expect(Buffer.compare(await archiveOf([text, ...files], 'die-bänke-1'), archive)).toBe(0);
  const unpacked = unzipSync(archive);
  expect(Object.keys(unpacked)).toEqual(['build.html', ...names].map((path) => `die-bänke-1/${path}`));
  expect(new TextDecoder().decode(unpacked['die-bänke-1/build.html'])).toBe(text.contents);
  for (const { path, contents } of files) expect(Buffer.compare(unpacked[`die-bänke-1/${path}`]!, contents)).toBe(0);
});

test('a folder is written whole or not at all', async () => {
  const full = await run(['build', bench, '--into', 'whale']);
  expect(full.status).toBe(6);
  expect(full.lines.join()).toContain('this folder is not empty');
  expect((await run(['build', bench, '--into', 'nowhere/whale'])).lines.join()).toContain('there is no such folder');
  writeFileSync(join(folder, 'file'), '');
  expect((await run(['build', bench, '--into', 'file'])).lines.join()).toContain('this is a file, not a folder');
  mkdirSync(join(folder, 'empty'));
  expect((await run(['build', bench, '--only', 'Z', '--into', 'empty'])).status).toBe(2);
  expect(readdirSync(join(folder, 'empty'))).toEqual([]);
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  expect(existsSync(join(folder, 'nowhere'))).toBe(false);
});

test('a file where a folder is expected: its own code and a line, for the folder and for a page', async () => {
  for (const words of [
    ['build', bench, '--into', join(bench, 'box')],
    ['design', bench, '--html', join(bench, 'page.html')],
  ]) {
    const { status, lines } = await run(words);
    expect(status).toBe(6);
    expect(lines.at(-1)).toContain('there is no such folder');
  }
});

test('where the package is missing, one line says what to do', async () => {
  const missing: Workshop = async () => {
    throw Object.assign(new Error("Cannot find package '@airspring/workshop' imported from here"), {
      code: 'ERR_MODULE_NOT_FOUND',
    });
  };
  const { status, lines } = await run(['build', bench, '--into', 'other'], missing);
  expect([status, lines]).toEqual([
    7,
    ['airspring: what to build from is made by another package: npm install @airspring/workshop'],
  ]);
  expect((await run(['build', bench])).lines.join()).toContain('expected "--into"');
  expect((await run(['build', bench, '--into', 'other', '--json'])).lines.join()).toContain(
    '--json is not for "build"',
  );
});
