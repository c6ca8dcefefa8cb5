/** The brief of the demonstration and all that is made of it, once a build. */
import { type Brief, design } from 'airspring';
import written from '../../packages/airspring/briefs/whale-bench.json?raw';
import { reportText } from '../../packages/airspring/src/words/report-text.js';
import references from '../../tests/ledger/references.json';
import { briefText } from './brief-text.js';
import { curvesCsv } from './curves-csv.js';
import { briefAnswer } from './page.js';
import { sheetsPage } from './sections/sheets.js';
import { sources } from './sections/sources.js';

const brief = JSON.parse(written) as Brief;
const answer = design(brief);
const met = answer.ok ? answer : answer.nearest?.answer;

export const demonstration = {
  title: brief.title,
  text: briefText(brief),
  note: brief.note ?? '',
  ...briefAnswer(brief, answer),
  report: reportText(answer, brief.units),
  csv: met ? curvesCsv(met) : '',
  sheetsPage: met ? sheetsPage(met, brief) : '',
  sources: sources(references),
};
