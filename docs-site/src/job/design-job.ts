import { type Brief, design, unitsOf } from 'airspring';
import { reportText } from '../../../packages/airspring/src/words/report-text.js';
import { withValues } from '../brief-changes.js';
import { briefText } from '../brief-text.js';
import { curvesCsv } from '../curves-csv.js';
import { briefAnswer } from '../page.js';
import { sheetsPage } from '../sections/sheets.js';
import type { Told } from './told.js';

/** A brief for a new box. */
export function designJob(brief: Brief, text: string): Told {
  const answer = design(brief);
  const met = answer.ok ? answer : answer.nearest?.answer;
  const nearest = answer.ok ? undefined : answer.nearest;
  const { answer: top, rest, line, sheets } = briefAnswer(brief, answer);
  return {
    parts: { answer: top.markup, rest: rest.markup, sheets: sheets.markup },
    line: line.markup,
    files: {
      report: { text: reportText(answer, unitsOf(brief)), type: 'text/plain' },
      ...(met && {
        curves: { text: curvesCsv(met), type: 'text/csv' },
        sheets: { text: sheetsPage(met, brief), type: 'text/html' },
      }),
    },
    ...(nearest && {
      nearest:
        withValues(
          text,
          nearest.changes.map(({ path }) => path),
          nearest.brief,
        ) ?? briefText(nearest.brief),
    }),
  };
}
