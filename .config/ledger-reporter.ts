/**
 * Gathers the rows that the checks of a run gave. A full run writes .cache/ledger.json and is the gate for formulas
 * without an outside check; a run of some files writes .cache/ledger-part.json and judges nothing.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Reporter, Vitest } from 'vitest/node';
import { quotedCount, readInPrint, rowCounts } from '../tests/ledger/counts.js';
import { isLoose, isOutside, type LedgerRow, toleranceSize } from '../tests/ledger/row.js';
import { auditedExports, auditedSources, formulasToCheck, ledgerFaults } from './ledger-gate.js';

export function ledgerReporter(root: string): Reporter {
  let vitest: Vitest;
  return {
    onInit(context) {
      vitest = context;
    },
    async onTestRunEnd(modules) {
      const rows: LedgerRow[] = modules
        .flatMap((module) => [...module.children.allTests()])
        .flatMap((test) => test.meta().ledger ?? [])
        .sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
      const whole = await isWhole(vitest, modules.length);
      mkdirSync(join(root, '.cache'), { recursive: true });
      const file = join(root, '.cache', whole ? 'ledger.json' : 'ledger-part.json');
      writeFileSync(file, `${JSON.stringify(rows.map(flagged), null, 2)}\n`);
      console.log(summary(rows));
      for (const line of looseLines(rows)) console.log(line);

      if (!whole) return;
      const kept = (file: string) => JSON.parse(readFileSync(join(root, 'tests/ledger', file), 'utf8'));
      const exported = auditedExports(...auditedSources(root));
      for (const line of printLines(rows, formulasToCheck(exported, kept('exceptions.json')))) console.log(line);
      const faults = ledgerFaults(rows, exported, kept('exceptions.json'), kept('references.json'));
      for (const fault of faults) console.error(`ledger: ${fault}`);
      if (faults.length > 0) process.exitCode = 1;
    },
  };
}

/** The projects that have every file with checks: those of all tests, and of the site. */
const WITH_CHECKS = ['numbers', 'ledger'];

/** Whether every file that holds checks ran, unfiltered. */
async function isWhole(vitest: Vitest, modules: number): Promise<boolean> {
  if (vitest.getGlobalTestNamePattern() || vitest.config.shard) return false;
  if (!vitest.projects.some(({ name }) => WITH_CHECKS.includes(name))) return false;
  return modules === (await vitest.globTestSpecifications()).length;
}

const flagged = (row: LedgerRow) => (isLoose(row) ? { ...row, loose: true } : row);

/** How many rows are loose, and the five loosest of them with the reason they give. */
function looseLines(rows: readonly LedgerRow[]): string[] {
  const room = (row: LedgerRow) => toleranceSize(row) / row.deviation;
  const loose = rows.filter(isLoose).sort((a, b) => room(b) - room(a));
  const worst = loose.slice(0, 5).map((row) => {
    const text = `tolerance ${toleranceSize(row)} for a deviation of ${row.deviation.toPrecision(2)}`;
    return `ledger: loose: ${row.id}: ${text}; ${row.tolerance.why}`;
  });
  return [`ledger: ${loose.length} rows allow more than a hundred times their deviation`, ...worst];
}

/** How many rows rest on what, and by floor how many formulas have a value that was read in print. */
function printLines(rows: readonly LedgerRow[], formulas: readonly string[]): string[] {
  const counts = Object.entries(rowCounts(rows)).map(([words, count]) => `${count} ${words}`);
  const floors = readInPrint(rows, formulas).map(
    ({ floor, read, unread }) => `${floor} ${read.length} of ${read.length + unread.length}`,
  );
  return [
    `ledger: ${counts.join(', ')}; ${quotedCount(rows)} of those read in print as another text quotes them`,
    `ledger: formulas with a value read in print: ${floors.join(', ')}`,
  ];
}

function summary(rows: readonly LedgerRow[]): string {
  const share = (row: LedgerRow) => row.deviation / toleranceSize(row);
  const worst = rows.filter((row) => row.deviation > 0).sort((a, b) => share(b) - share(a))[0];
  const tail = worst ? `, worst ${worst.id} at ${(100 * share(worst)).toPrecision(3)} % of its tolerance` : '';
  return `ledger: ${rows.length} rows, ${rows.filter(isOutside).length} outside${tail}`;
}
