import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { shortWork } from '../../.config/short-work.js';
import { isFresh, writeLedger } from './ledger.js';
import { LOST } from './lost-texts.js';
import { run } from './run.js';

const made = new Set([
  'node_modules',
  'dist',
  'dist.next',
  'dist.last',
  'api',
  'formulas',
  'bibliography.md',
  '.astro',
  '.cache',
]);

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
  for (const file of [
    ...read,
    'pnpm-lock.yaml',
    '.cache/ledger.json',
    'benchmarks/latest.json',
    'README.md',
    'LICENSE',
  ]) {
    if (existsSync(join(top, file))) hash.update(readFileSync(join(top, file)));
  }
  return hash.digest('hex');
}

/**
 * Builds the site where it is not there or older than what it is made of; returns its folder. The pages that are there stay
 * whole until the new ones can take their place. Throws when the build fails.
 */
async function pagesBuilt(top: string, say: (line: string) => void): Promise<string> {
  const folder = join(top, 'docs-site/dist');
  const stamp = join(folder, '.stamp');
  const now = fingerprint(top);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return folder;
  say('Building the site; this takes about half a minute.');
  const [next, last] = [`${folder}.next`, `${folder}.last`];
  const astro = join(top, 'docs-site/node_modules/astro/astro.js');
  const make = () => run([...shortWork(128), astro, 'build', '--outDir', next], join(top, 'docs-site'));
  const first = await make();
  const { status, output } = first.output.includes(LOST) ? await make() : first;
  if (status !== 0) throw new Error(`The site could not be built.\n${output}`);
  writeFileSync(join(next, '.stamp'), now);
  rmSync(last, { recursive: true, force: true });
  if (existsSync(folder)) renameSync(folder, last);
  renameSync(next, folder);
  rmSync(last, { recursive: true, force: true });
  return folder;
}

/** The site with its audit: runs the checks first where the ledger is older than what it follows from. */
export async function built(top: string, say: (line: string) => void): Promise<string> {
  if (!isFresh(top)) await writeLedger(top, say);
  return pagesBuilt(top, say);
}

/** The site at once, and its audit as soon as the checks have run: `audited` is done when the pages have it. */
export async function builtSoon(top: string, say: (line: string) => void) {
  const folder = await pagesBuilt(top, say);
  return { folder, audited: isFresh(top) ? undefined : () => built(top, say) };
}
