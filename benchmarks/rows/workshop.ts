import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import type { MaxRectsPacker as Packer } from 'maxrects-packer';
import { randomNumbers } from '../../packages/core/src/numeric/index.js';
import { si } from '../../packages/core/src/quantity/index.js';
import { meshFaults, stl } from '../../packages/workshop/src/mesh/index.js';
import { nest } from '../../packages/workshop/src/nesting/index.js';
import { roundFlare, type VentSolidInput, ventSolid } from '../../packages/workshop/src/solid/index.js';
import { runRow } from '../measure.js';

/** The file that its package names for Node is no module, though the package says so. */
const packing: string = 'maxrects-packer/dist/maxrects-packer.mjs';
const { MaxRectsPacker }: { readonly MaxRectsPacker: typeof Packer } = await import(packing);

/** As published: the build of the packages comes first. */
const command = 'packages/airspring/dist/command/main.js';

const vent: VentSolidInput = {
  diameter: '70 mm',
  length: '420 mm',
  outerFlare: roundFlare({ radius: '20 mm' }),
  innerFlare: roundFlare({ radius: '10 mm' }),
  flange: { diameter: '130 mm' },
  bends: [{ leg: '150 mm', angle: '90 deg', centreLineRadius: '80 mm' }],
};
/** So fine that it has 200,000 triangles. */
const fine: VentSolidInput = { ...vent, fineness: '0.0045 mm' };

/** As the worker of the page makes it: everything to build from as one archive. */
async function archived(): Promise<void> {
  const { filesToBuild } = await import('../../packages/airspring/src/command/build.js');
  const { archiveOf } = await import('../../packages/workshop/src/dossier/index.js');
  const built = await filesToBuild(JSON.parse(readFileSync('packages/airspring/briefs/whale-bench.json', 'utf8')));
  if (!built.ok) throw new Error(built.line);
  parentPort?.postMessage(await archiveOf(built.files, 'box'));
}

const next = randomNumbers(1);
const edge = () => si('length', Math.round(120 + 560 * next()) / 1e3);
/** Forty panels of any size, which may all be turned. */
const panels = Array.from({ length: 40 }, (_, i) => ({ name: `panel ${i}`, length: edge(), width: edge() }));

const rows: Parameters<typeof runRow>[0] = {
  'vent-solid': () => ({ call: () => ventSolid(vent) }),
  triangles: () => ({
    call: () => {
      const { mesh } = ventSolid(fine);
      if (mesh.triangles.length < 600_000) throw new Error(`${mesh.triangles.length / 3} triangles`);
      if (meshFaults(mesh).length > 0) throw new Error('no solid');
      return stl(mesh);
    },
  }),
  nest: () => ({
    call: () => {
      const made = nest({ parts: panels, sheets: [{ length: '2.5 m', width: '1.25 m' }], kerf: '3 mm' });
      if (!made.ok) throw new Error('the panels do not fit');
      return made;
    },
  }),
  // Rectangles anywhere on the sheet, in one order: a layout that no panel saw can cut.
  packer: () => ({
    call: () => {
      const packer = new MaxRectsPacker(2500, 1250, 3, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: true,
      });
      for (const { length, width } of panels) packer.add(1e3 * length, 1e3 * width, undefined);
      return packer.bins;
    },
  }),
  dossier: () => {
    const folder = mkdtempSync(join(tmpdir(), 'airspring-'));
    let count = 0;
    return {
      elsewhere: true as const,
      call: () => {
        const words = [command, 'build', 'packages/airspring/briefs/whale-bench.json'];
        const { status, stderr } = spawnSync(process.execPath, [...words, '--into', join(folder, `box-${count++}`)]);
        if (status !== 0) throw new Error(String(stderr));
      },
    };
  },
  // A page starts one for each archive. It works alone: the processor's clock counts it.
  'dossier-worker': () => ({
    call: () =>
      new Promise((done, failed) => {
        const worker = new Worker(new URL(import.meta.url));
        worker.once('message', done);
        worker.once('error', failed);
      }),
  }),
};

if (isMainThread) await runRow(rows);
else await archived();
