/**
 * Brings node_modules in step with the manifests, and the bytes of the kernel in step with its source; does nothing when they are.
 * npm runs it before start, test, design, check.
 * `--update` writes the lock file anew: for whoever changes a dependency. Says nothing on stdout, which belongs to the script after it.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = join(dirname(fileURLToPath(import.meta.url)), '..');
const stampFile = join(top, 'node_modules', '.airspring-stamp');
/** npm leaves this file in a node_modules it made or touched: then it is not ours any more, whatever the stamp says. */
const madeByNpm = join(top, 'node_modules', '.package-lock.json');

const { packageManager } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8'));
const update = process.argv.includes('--update');

function stamp() {
  const packages = readdirSync(join(top, 'packages'))
    .sort()
    .map((name) => `packages/${name}`);
  const manifests = ['.', ...packages, 'docs-site', 'tests'].map((folder) => `${folder}/package.json`);
  const hash = createHash('sha256').update(process.version);
  for (const file of ['pnpm-lock.yaml', 'pnpm-workspace.yaml', ...manifests]) {
    const path = join(top, file);
    if (existsSync(path)) hash.update(file).update(readFileSync(path));
  }
  return hash.digest('hex');
}

const inStep = existsSync(stampFile) && !existsSync(madeByNpm) && readFileSync(stampFile, 'utf8') === stamp();
if (update || !inStep) {
  const lock = update ? '--no-frozen-lockfile' : '--frozen-lockfile';
  // `--lockfile`: .npmrc keeps npm from writing a lock file of its own, and pnpm reads that line as well.
  // One string and a shell: npx is a script that Windows cannot start by itself. Nothing in it comes from outside.
  const command = `npx --yes ${packageManager} install --lockfile ${lock} --prefer-offline`;
  const { status } = spawnSync(command, { cwd: top, shell: true, stdio: ['ignore', 2, 2] });
  if (status !== 0) process.exit(status ?? 1);
  rmSync(madeByNpm, { force: true });
  writeFileSync(stampFile, stamp());
}

// Not before its compiler is installed.
await import('./kernel.mjs');
