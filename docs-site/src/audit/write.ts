/** Reads the library, the ledger, the bibliography and the benchmarks, and writes the pages of the audit. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { LedgerRow } from '../../../tests/ledger/row.js';
import type { Audit, Named } from './audit.js';
import type { Bench } from './bench.js';
import { formulas } from './formula.js';
import { pages } from './pages.js';
import type { Reference } from './reference.js';

const json = <T>(path: string): T | undefined =>
  existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as T) : undefined;

/** `top`: folder of the work tree. */
export function readAudit(top: string): Audit {
  const path = join(top, '.cache/ledger.json');
  const rows = json<readonly LedgerRow[]>(path);
  return {
    formulas: formulas(top, new Set(rows?.map(({ formula }) => formula))),
    ledger: rows && { rows, date: statSync(path).mtime.toISOString().slice(0, 10) },
    references: json<readonly Reference[]>(join(top, 'tests/ledger/references.json')) ?? [],
    exceptions: json<Readonly<Record<string, string>>>(join(top, 'tests/ledger/exceptions.json')) ?? {},
    bench: json<Bench>(join(top, 'benchmarks/latest.json')),
    ...byHand(join(top, 'docs-site/src/content/docs')),
  };
}

/** Which pages written by hand cite which source, and stand on which formulas. */
function byHand(folder: string): Pick<Audit, 'citing' | 'using'> {
  const [citing, using] = [new Map<string, Named[]>(), new Map<string, Named[]>()];
  const add = (found: Map<string, Named[]>, keys: readonly string[], page: Named) => {
    for (const key of new Set(keys)) found.set(key, [...(found.get(key) ?? []), page]);
  };
  for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.mdx'))) {
    const text = readFileSync(join(folder, file), 'utf8');
    const title = /^title: *['"]?(.*?)['"]?$/m.exec(text)?.[1] ?? file;
    const address = `/${file.replace(/(index)?\.mdx$/, '')}/`.replace(/\/{2,}/g, '/');
    const all = (pattern: RegExp, of: string) => [...of.matchAll(pattern)].map((match) => match[1] as string);
    add(citing, all(/<Cite of="([\w-]+)"/g, text), { title, address });
    const [families = ''] = all(/<Audit [^>]*of=\{\[(.*?)\]\}/gs, text);
    add(using, all(/'([\w/-]+)'/g, families), { title, address });
  }
  return { citing, using };
}

/** Writes what has changed and removes what is no longer made; returns how many pages there are. */
export function writeAudit(top: string): number {
  const folder = join(top, 'docs-site/src/content/docs');
  const made = pages(readAudit(top));
  const stale = join(folder, 'formulas');
  if (existsSync(stale))
    for (const file of readdirSync(stale, { recursive: true, encoding: 'utf8' }))
      if (file.endsWith('.md') && !made.has(join('formulas', file))) rmSync(join(stale, file));
  for (const [file, text] of made) {
    const path = join(folder, file);
    if (existsSync(path) && readFileSync(path, 'utf8') === text) continue;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  return made.size;
}
