import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { run } from './run.js';

/** What the rows of the ledger follow from. */
export const behind = [
  'packages/core/src',
  'packages/transient/src',
  'packages/workshop/src',
  'packages/airspring/src',
  'tests/literature',
  'tests/circuit',
  'tests/ledger',
  '.config/ledger.config.ts',
  '.config/ledger-gate.ts',
];
const pathOf = (top: string) => join(top, '.cache/ledger.json');

const newest = (path: string): number => {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(...readdirSync(path).map((name) => newest(join(path, name))));
};

/** Whether the last run of the checks is younger than all that it follows from. */
export const isFresh = (top: string): boolean =>
  existsSync(pathOf(top)) &&
  statSync(pathOf(top)).mtimeMs >= Math.max(...behind.map((each) => newest(join(top, each))));

/** Runs the checks against literature and circuits, which write the ledger. A check that fails stands in it. */
export async function writeLedger(top: string, say: (line: string) => void): Promise<void> {
  say('Running the checks against literature and circuits; this takes about twenty seconds.');
  const vitest = join(top, 'node_modules/vitest/vitest.mjs');
  const { status, output } = await run([vitest, 'run', '--config', '.config/ledger.config.ts'], top);
  if (status !== 0) say(`Not every check passed:\n${output}`);
  if (!isFresh(top)) throw new Error(`The checks wrote no ledger.\n${output}`);
}
