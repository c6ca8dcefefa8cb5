/**
 * What a reader gets, tried as a reader does: packs all packages as built, judges the tarballs, installs them into empty folders,
 * type-checks, imports and runs them there. Goes on after a failure; ends with 1 when there was one. Wants `npm run build` before.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { subpathsOf } from './subpaths.mjs';

const top = join(dirname(fileURLToPath(import.meta.url)), '..');
const packages = ['core', 'transient', 'workshop', 'airspring'].map((name) => join(top, 'packages', name));
const made = join(top, '.cache', 'release');
const tools = join(top, 'node_modules', '.bin');
const tsc = join(top, 'node_modules', 'typescript', 'bin', 'tsc');
const failed = [];

/** Runs a step; its output is shown when it fails. */
function step(name, command, args, cwd = top) {
  const from = Date.now();
  // npm, npx and the tools are scripts, which Windows starts by a shell only.
  const shell = process.platform === 'win32';
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd, encoding: 'utf8', shell });
  const passed = status === 0;
  console.log(`${passed ? 'ok    ' : 'FAILED'} ${((Date.now() - from) / 1000).toFixed(1).padStart(5)} s  ${name}`);
  if (!passed) {
    failed.push(name);
    console.log([stdout, stderr, error?.message].filter(Boolean).join('\n'));
  }
  return { passed, stdout: stdout ?? '' };
}

/** A step of our own: throws what is wrong. */
function claim(name, judge) {
  try {
    judge();
    console.log(`ok             ${name}`);
  } catch (error) {
    failed.push(name);
    console.log(`FAILED         ${name}: ${error.message}`);
  }
}

/** The relative links of a Markdown text, without their anchors. */
function linksOf(text) {
  const links = [/\]\(([^)\s]+)/g, /^\[[^\]]+\]:\s*(\S+)/gm, /(?:href|src)="([^"]+)"/g];
  const targets = links.flatMap((link) => [...text.matchAll(link)].map(([, target]) => target.split('#')[0]));
  return targets.filter((target) => target !== '' && !/^[a-z]+:/i.test(target));
}

rmSync(made, { recursive: true, force: true });
mkdirSync(made, { recursive: true });
const published = packages.map((folder) => {
  const { name } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const subpaths = subpathsOf(folder);
  const unpacked = join(made, name);
  const tarball = `${unpacked}.tgz`;
  mkdirSync(unpacked, { recursive: true });
  step(`pack ${name}`, join(tools, 'pnpm'), ['pack', '--out', tarball], folder);
  step(`unpack ${name}`, 'tar', ['-xzf', tarball, '-C', unpacked]);
  step(`publint ${name}`, join(tools, 'publint'), ['--strict', tarball]);
  // node10 sees no subpaths at all: it is not claimed.
  const how = ['--profile', 'node16', '--entrypoints', ...subpaths];
  step(`types as resolved ${name}`, join(tools, 'attw'), [tarball, ...how]);
  claim(`no link of the README of ${name} leads out of the tarball`, () => {
    const content = join(unpacked, 'package');
    const lost = linksOf(readFileSync(join(content, 'README.md'), 'utf8')).filter(
      (link) => link.startsWith('..') || !existsSync(join(content, link)),
    );
    if (lost.length > 0) throw new Error(lost.join(', '));
  });
  claim(`the tarball of ${name} has the licence`, () => {
    if (!existsSync(join(unpacked, 'package', 'LICENSE'))) throw new Error('there is no LICENSE');
  });
  return { name, tarball, subpaths };
});
const tarballs = published.map(({ tarball }) => tarball);
const expected = published.flatMap(({ name, subpaths }) =>
  subpaths.map((subpath) => (subpath === '.' ? name : `${name}/${subpath}`)),
);
const consumer = readFileSync(join(top, 'tests', 'release', 'consumer.ts'), 'utf8');
// Outside of the workspace: nothing of its node_modules is in reach.
const outside = mkdtempSync(join(tmpdir(), 'airspring-release-'));
try {
  for (const [kind, type, extension] of [
    ['ESM', 'module', 'ts'],
    ['CommonJS', 'commonjs', 'cts'],
  ]) {
    const folder = join(outside, kind);
    mkdirSync(folder);
    const manifest = { name: 'consumer', version: '1.0.0', private: true, type };
    writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest));
    writeFileSync(join(folder, `consumer.${extension}`), consumer);
    const install = ['install', '--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts', ...tarballs];
    if (!step(`${kind}: install`, 'npm', install, folder).passed) continue;

    const strict = ['--strict', '--exactOptionalPropertyTypes', '--target', 'es2023', '--lib', 'es2023,dom'];
    const text = `consumer.${extension}`;
    const types = (name, how) =>
      step(`${kind}: types, ${name}`, process.execPath, [tsc, ...strict, ...how, text], folder);
    // A bundler finds the same files whatever the kind. The whole of our declarations is judged once: those of both kinds are one text.
    if (kind === 'ESM')
      types('bundler', ['--module', 'esnext', '--moduleResolution', 'bundler', '--noEmit', '--skipLibCheck']);
    const lib = kind === 'ESM' ? '--skipDefaultLibCheck' : '--skipLibCheck';
    types('node16, and compile', ['--module', 'node16', '--moduleResolution', 'node16', lib, '--outDir', 'made']);
    const run = step(`${kind}: run`, process.execPath, [join('made', text.replace('ts', 'js'))], folder);
    claim(`${kind}: a right number from every subpath`, () => {
      const { subpaths, wrong } = JSON.parse(run.stdout);
      if (wrong.length > 0) throw new Error(JSON.stringify(wrong));
      const missing = expected.filter((subpath) => !subpaths.includes(subpath));
      if (missing.length > 0) throw new Error(`tests/release/consumer.ts has nothing of ${missing.join(', ')}`);
    });
  }

  const folder = join(outside, 'ESM');
  cpSync(join(top, 'tests', 'release', 'both-copies.mjs'), join(folder, 'both-copies.mjs'));
  step('a refusal of the other copy is known', process.execPath, ['both-copies.mjs'], folder);
  cpSync(join(top, 'packages', 'airspring', 'briefs', 'whale-bench.json'), join(folder, 'brief.json'));
  const command = ['--no-install', 'airspring', 'design', 'brief.json', '--json'];
  const designed = step('npx airspring design brief.json --json', 'npx', command, folder);
  claim('the command answers with designs', () => {
    const { ok, designs } = JSON.parse(designed.stdout);
    if (ok !== true || !(designs.length > 0)) throw new Error(`ok ${ok}`);
  });
} finally {
  rmSync(outside, { recursive: true, force: true });
}
console.log(failed.length === 0 ? 'release: all good' : `release: failed: ${failed.join('; ')}`);
process.exitCode = failed.length === 0 ? 0 : 1;
