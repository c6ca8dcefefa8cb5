/** Runs the demonstration brief, prints its report, and serves the site, built first where it is older than its sources. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Brief, design, unitsOf } from 'airspring';
import { reportText } from '../packages/airspring/src/words/report-text.js';
import { builtSoon } from './src/build.js';
import { serveNear } from './src/server.js';

const DEFAULT_PORT = 4173;
const top = fileURLToPath(new URL('..', import.meta.url));

const { PORT: wanted } = process.env;
const port = wanted === undefined || wanted === '' ? DEFAULT_PORT : Number(wanted);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  console.error(`PORT: got '${wanted}', expected a whole number from 0 to 65535.`);
  process.exit(1);
}

const text = readFileSync(new URL('../packages/airspring/briefs/whale-bench.json', import.meta.url), 'utf8');
const brief = JSON.parse(text) as Brief;
console.log(reportText(design(brief), unitsOf(brief)));

const { folder, audited } = await builtSoon(top, console.log);
const { address } = await serveNear(folder, port, console.log);
console.log(`The site is at ${address}; this very brief at ${address}worked-examples/quiet-vent/ (end with Ctrl-C)`);
if (audited) {
  await audited();
  console.log('The formula pages now show what the checks found: load them again.');
}
