/**
 * npm run bench [-- --quick] [-- --group NAME] [-- --keep]: agreement of all peers first, then every row in a process of its own, then goals.
 * A goal that is missed is printed, and is no failure: nothing here is a test of time.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type Agreement, agreementOutside, agreementWithin, agreementWithSimulator, disagreeing } from './agreement.js';
import { build } from './build.js';
import { importSizes } from './import-size.js';
import type { Rounds } from './measure.js';
import { ask, outsidePeers, type Peer } from './peers/outside.js';
import { type Row, rowOf, rowText } from './result.js';
import { type Line, table } from './table.js';

const top = fileURLToPath(new URL('..', import.meta.url));
const { values: asked } = parseArgs({
  options: { quick: { type: 'boolean' }, keep: { type: 'boolean' }, group: { type: 'string' } },
});
const quick = asked.quick ?? false;
/** The last group is measured by another tool, and has no rows in the table. */
const names = [...table.map(({ name }) => name), 'size'];
if (asked.group !== undefined && !names.includes(asked.group)) {
  console.error(`There is no group '${asked.group}': ${names.join(', ')}.`);
  process.exit(2);
}
const wanted = (name: string): boolean => asked.group === undefined || name === asked.group;
const chosen = table.filter(({ name }) => wanted(name));
const PASSES = quick ? 1 : 3;
const SECONDS = quick ? 0.12 : 0.5;

const peers = outsidePeers();
const missing = new Map<string, string>();

async function agreed(): Promise<Agreement[]> {
  const found = [...agreementWithin(), ...agreementOutside(peers)];
  try {
    found.push(await agreementWithSimulator());
  } catch (error) {
    missing.set('simulator-A', `no circuit simulator: ${String(error).split('\n')[0]}`);
  }
  return found;
}

const agreement = await agreed();
const wrong = disagreeing(agreement);
console.log('Agreement with ours, worst over all columns (columns.md); nothing is timed that gives other numbers.');
for (const { peer, set, worst, tolerance, delay, delayTolerance } of agreement) {
  const delayText = delay === undefined ? '' : ` · delay ${delay.toExponential(1)} (at most ${delayTolerance})`;
  console.log(`  ${peer.padEnd(22)} set ${set}  ${worst.toExponential(1)} (at most ${tolerance})${delayText}`);
}
if (wrong.length > 0) {
  console.error(`Not timed: ${wrong.map(({ peer, set }) => `${peer}, set ${set}`).join('; ')} give other numbers.`);
  process.exit(1);
}

const built = build(top);

function roundsOf({ origin }: Line): Rounds | string {
  if ('peer' in origin) {
    const peer: Peer = peers[origin.peer];
    if (!peer.ok) return peer.because;
    return JSON.parse(String(ask(peer, ['time', ...origin.words, String(SECONDS)]))) as Rounds;
  }
  const script = join(built, 'benchmarks/rows', `${origin.script}.js`);
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, origin.row, String(SECONDS)], {
    cwd: top,
    encoding: 'utf8',
  });
  if (status !== 0)
    return `failed: ${stderr.split('\n').find((line) => line.includes('Error')) ?? stderr.split('\n')[0]}`;
  return JSON.parse(stdout) as Rounds;
}

const load = loadavg()[0]!;
const rounds = new Map<string, Rounds>();
for (let pass = 0; pass < PASSES; pass++) {
  for (const line of chosen.flatMap(({ lines }) => lines)) {
    if (quick && line.long) missing.set(line.id, 'left out of a quick run');
    if (missing.has(line.id)) continue;
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[Kpass ${pass + 1} of ${PASSES}: ${line.id}`);
    const found = roundsOf(line);
    if (typeof found === 'string') missing.set(line.id, found);
    else {
      const before = rounds.get(line.id);
      rounds.set(line.id, {
        wall: [...(before?.wall ?? []), ...found.wall],
        cpu: [...(before?.cpu ?? []), ...found.cpu],
      });
    }
  }
}
if (process.stderr.isTTY) process.stderr.write('\r\x1b[K');

const groups: { title: string; rows: Row[] }[] = chosen.map(({ title, lines }) => ({
  title,
  rows: lines.map((line) => rowOf(line, rounds, missing.get(line.id))),
}));
if (wanted('size')) groups.push({ title: 'Size of an import, brotli', rows: importSizes(top) });

const machine = {
  processor: cpus()[0]?.model ?? 'unknown',
  cores: cpus().length,
  memoryGB: Math.round(totalmem() / 1e9),
  system: `${process.platform} ${process.arch}`,
};
const versions = {
  node: process.version,
  ...Object.fromEntries(Object.entries(peers).map(([name, peer]) => [name, peer.ok ? peer.version : peer.because])),
};
const date = new Date().toISOString();
for (const { title, rows } of groups) {
  console.log(`\n${title}\n  ${''.padEnd(74)}   median      best cpu time`);
  for (const row of rows) console.log(rowText(row));
}
console.log(
  `\n${machine.processor}, ${machine.cores} cores, ${machine.system}; load ${load.toFixed(1)} before, ${loadavg()[0]!.toFixed(1)} after; ${date}`,
);
console.log(
  Object.entries(versions)
    .map(([name, version]) => `${name}: ${version}`)
    .join('\n'),
);
const missed = groups.flatMap(({ rows }) => rows).filter(({ met }) => met === false);
console.log(
  missed.length === 0 ? 'Every goal that was judged is met.' : `Goals missed: ${missed.map(({ id }) => id).join(', ')}`,
);

// A group alone is a look at it, and no record of a run.
if (asked.group === undefined) {
  const record = { date, quick, passes: PASSES, secondsARow: SECONDS, load, machine, versions, agreement, groups };
  const text = `${JSON.stringify(record, null, 2)}\n`;
  mkdirSync(join(top, '.cache'), { recursive: true });
  writeFileSync(join(top, '.cache/bench.json'), text);
  // The run that the site shows; it is committed.
  if (asked.keep) writeFileSync(join(top, 'benchmarks/latest.json'), text);
}
// The simulator's thread never ends by itself.
process.exit(0);
