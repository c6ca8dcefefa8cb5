import { type Brief, retrofit, retrofitText, unitsOf } from 'airspring';
import { retrofitPage } from '../../../packages/airspring/src/page/retrofit-page.js';
import { changesCsv, tubesCsv } from '../retrofit/csv.js';
import { retrofitAnswer } from '../retrofit/page.js';
import type { Told } from './told.js';

/** A brief about a box that stands. */
export function retrofitJob(brief: Brief): Told {
  const answer = retrofit(brief);
  const { answer: top, rest, line, drawing, sheets } = retrofitAnswer(brief, answer);
  return {
    parts: { answer: top.markup, rest: rest.markup, sheets: sheets.markup },
    line: line.markup,
    drawing: drawing.markup,
    files: {
      report: { text: retrofitText(answer, unitsOf(brief)), type: 'text/plain' },
      changes: { text: changesCsv(answer), type: 'text/csv' },
      ...(answer.tubeSets.length > 0 && { tubes: { text: tubesCsv(answer), type: 'text/csv' } }),
      page: { text: retrofitPage(answer, unitsOf(brief)), type: 'text/html' },
    },
  };
}
