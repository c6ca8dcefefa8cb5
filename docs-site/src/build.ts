import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const made = new Set(['node_modules', 'dist', 'api', 'formulas', 'bibliography.md', '.astro', '.cache']);

/** A fingerprint of every file that the site is made of. */
function fingerprint(top: string): string {
  const hash = createHash('sha256').update(process.version);
  const visit = (path: string): void => {
    for (const entry of readdirSync(path, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const inside = join(path, entry.name);
      if (made.has(entry.name)) continue;
      if (entry.isDirectory()) visit(inside);
      else hash.update(inside.slice(top.length)).update(readFileSync(inside));
    }
  };
  for (const folder of ['docs-site', 'packages']) visit(join(top, folder));
  const read = [
    'tests/ledger/references.json',
    'tests/ledger/row.ts',
    '.config/ledger-gate.ts',
    'benchmarks/result.ts',
  ];
  for (const file of [...read, 'pnpm-lock.yaml', '.cache/ledger.json', '.cache/bench.json']) {
    if (existsSync(join(top, file))) hash.update(readFileSync(join(top, file)));
  }
  return hash.digest('hex');
}

/** Builds the site where it is not there or older than what it is made of; returns its folder. Throws when the build fails. */
export function built(top: string, say: (line: string) => void): string {
  const folder = join(top, 'docs-site/dist');
  const stamp = join(folder, '.stamp');
  const now = fingerprint(top);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return folder;
  say('Building the site; this takes about half a minute.');
  const astro = join(top, 'docs-site/node_modules/astro/astro.js');
  const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' };
  const { status, stdout, stderr } = spawnSync(process.execPath, [astro, 'build'], {
    cwd: join(top, 'docs-site'),
    env,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The site could not be built.\n${stdout}${stderr}`);
  writeFileSync(stamp, now);
  return folder;
}
