/**
 * Whether other programs read the files that boxes are built from: builds some briefs and some solids by the packages as built,
 * into a folder of its own, and has `read.py` judge them. Wants `npm run build` before, and the Debian packages admesh and
 * python3-ezdxf; PYTHON names another Python that has ezdxf.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { stl, threeMf, volumeOf } from '@airspring/workshop/mesh';
import { exponentialFlare, roundFlare, twoPartVent, ventSegments, ventSolid } from '@airspring/workshop/solid';

const packages = fileURLToPath(new URL('../../packages/airspring', import.meta.url));
const made = mkdtempSync(join(tmpdir(), 'airspring-files-'));
const folders = [];

/** Whether a program ends well; what it says is shown. */
const ran = (program, words) =>
  new Promise((done) => {
    const child = spawn(program, words, { stdio: ['ignore', 'inherit', 'inherit'] });
    child.on('error', ({ message }) => {
      console.error(`files: ${message}`);
      done(false);
    });
    child.on('close', (status) => done(status === 0));
  });

/** A brief built by the command, with a section for the workshop, and a space of its own where one is given. */
function built(name, workshop, space = {}, as = name) {
  const brief = JSON.parse(readFileSync(join(packages, 'briefs', `${name}.json`), 'utf8'));
  const path = join(made, `${as}.json`);
  const own = { space: { ...brief.space, ...space }, workshop: { ...brief.workshop, ...workshop } };
  writeFileSync(path, JSON.stringify({ ...brief, ...own }));
  folders.push(join(made, as));
  return ran(process.execPath, [join(packages, 'dist/command/main.js'), 'build', path, '--into', join(made, as)]);
}

const flare = roundFlare({ radius: '15 mm' });
const flange = { diameter: '130 mm', screws: { count: 6, diameter: '4 mm', head: '8 mm' } };
const wide = exponentialFlare({ depth: '30 mm', widening: '15 mm' });
const bends = [{ leg: '90 mm', angle: '60 deg', centreLineRadius: '70 mm', roll: '30 deg' }];
const printer = { width: '180 mm', depth: '180 mm', height: '120 mm' };

/** Solids that no brief makes, beside what the package says of them. */
function solids() {
  const one = (name, vent) => ({ ...ventSolid(vent), name });
  const two = twoPartVent({ diameter: '69 mm', length: '200 mm', panelThickness: '18 mm', outerFlare: flare });
  const pieces = ventSegments({ vent: { diameter: '60 mm', length: '400 mm', bends, innerFlare: flare }, printer });
  if (!two.ok || !pieces.ok) throw new Error('a vent in parts cannot be made');
  return [
    one('flared', { diameter: '70 mm', length: '200 mm', outerFlare: flare, innerFlare: wide, flange }),
    one('slot', {
      width: '120 mm',
      height: '20 mm',
      length: '150 mm',
      flange: { reach: '15 mm', screws: flange.screws },
    }),
    { name: 'flange', mesh: two.flange },
    two.tube,
    ...pieces.parts,
  ];
}

/** Writes solids as the command does. */
async function written(name, parts) {
  const folder = join(made, name);
  mkdirSync(folder);
  for (const { name: part, mesh } of parts)
    writeFileSync(join(folder, `${part.replace(/[^a-z0-9]+/g, '-')}.stl`), stl(mesh));
  writeFileSync(join(folder, `${name}.3mf`), await threeMf(parts));
  const volumes = Object.fromEntries(parts.map(({ name: part, mesh }) => [part, volumeOf(mesh)]));
  writeFileSync(join(folder, 'solids.json'), JSON.stringify(volumes));
  folders.push(folder);
}

/** A box under a seat: two of its boards reach farther inside than outside. */
const seat = {
  width: '700 mm',
  depth: '600 mm',
  shape: { underSeat: { front: '320 mm', step: '280 mm' } },
};

const rectangle = (across, up) => [
  ['0 mm', '0 mm'],
  [across, '0 mm'],
  [across, up],
  ['0 mm', up],
];
const layers = [
  { corners: rectangle('520 mm', '400 mm') },
  { corners: rectangle('380 mm', '300 mm'), length: '100 mm' },
];
/** A box with a step in two directions: a shelf of it has an opening. */
const stack = { width: '520 mm', height: '420 mm', depth: '400 mm', shape: { stack: { along: 'height', layers } } };

const passed = await Promise.all([
  built('whale-bench', { joint: { mitre: {} } }),
  built('puppet-thunder', { joint: { rabbet: { depth: '9 mm' } }, grain: true }),
  built('whale-van', {}),
  built('whale-van', {}, seat, 'seat'),
  built('whale-van', {}, stack, 'stack'),
]);
await written('solids', solids());
const reader = fileURLToPath(new URL('read.py', import.meta.url));
passed.push(await ran(process.env.PYTHON ?? '/usr/bin/python3', [reader, ...folders]));
rmSync(made, { recursive: true, force: true });
process.exitCode = passed.every(Boolean) ? 0 : 1;
