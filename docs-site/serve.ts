/** Runs the demonstration brief, prints its report, and serves it as a page. */
import { readFileSync } from 'node:fs';
import { type Brief, design, reportText } from 'airspring';
import { page } from './src/page.js';
import { serveNear } from './src/server.js';

const DEFAULT_PORT = 4173;
const text = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');

const { PORT: wanted } = process.env;
const port = wanted === undefined || wanted === '' ? DEFAULT_PORT : Number(wanted);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  console.error(`PORT: got '${wanted}', expected a whole number from 0 to 65535.`);
  process.exit(1);
}

const brief = JSON.parse(text('../packages/airspring/briefs/whale-bench.json')) as Brief;
const answer = design(brief);
console.log(reportText(answer, brief.units));

const markup = page({
  question: 'Will a quiet vent fit under the seat?',
  story:
    'A learning centre by the sea builds a bench that plays whale song to the people who sit on it. The driver and the vent share the space under the seat, and the vent must be printed in short pieces.',
  brief,
  answer,
  references: JSON.parse(text('../tests/ledger/references.json')),
  style: text('./src/style.css'),
});
const { address } = await serveNear(markup, port, console.log);
console.log(`The worked example is at ${address} (end with Ctrl-C)`);
