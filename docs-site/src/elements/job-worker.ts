/** The whole job of a brief, away from the page. */
import { faultLine, isInputError, toldAtMost } from '@airspring/core/fault';
import { type Brief, design } from 'airspring';
import { plainJson } from '../../../packages/airspring/src/command/json-fault.js';
import { reportText } from '../../../packages/airspring/src/words/report-text.js';
import { withValues } from '../brief-changes.js';
import { briefText } from '../brief-text.js';
import { curvesCsv } from '../curves-csv.js';
import { jsonPlaces, placeOfPath } from '../json-places.js';
import { briefAnswer } from '../page.js';
import { sheetsPage } from '../sections/sheets.js';
import type { Place } from './place.js';

export type JobTold =
  | { readonly type: 'ready' }
  | { readonly type: 'faults'; readonly places: readonly Place[] }
  | {
      readonly type: 'done';
      readonly answer: string;
      readonly rest: string;
      readonly said: string;
      readonly report: string;
      readonly csv: string;
      readonly line: string;
      readonly sheets: string;
      readonly sheetsPage: string;
      /** The text with the changes of the nearest brief. */
      readonly nearest?: string;
    };

const offsetOf = (text: string, line: number): number =>
  text
    .split('\n')
    .slice(0, line - 1)
    .join('\n').length + (line > 1 ? 1 : 0);

function job(text: string): JobTold {
  const plain = plainJson(text);
  if (!plain.ok) {
    const broken = plain.fault;
    const from = offsetOf(text, broken.line) + broken.column - 1;
    return {
      type: 'faults',
      places: [{ line: broken.line, from, to: from + 1, message: broken.says }],
    };
  }
  const brief = JSON.parse(plain.text) as Brief;
  try {
    const answer = design(brief);
    const met = answer.ok ? answer : answer.nearest?.answer;
    const { sentences, answer: top, rest, line, sheets } = briefAnswer(brief, answer);
    const nearest = answer.ok ? undefined : answer.nearest;
    return {
      type: 'done',
      answer: top.markup,
      rest: rest.markup,
      said: sentences.join(' '),
      report: reportText(answer, brief.units),
      csv: met ? curvesCsv(met) : '',
      line: line.markup,
      sheets: sheets.markup,
      sheetsPage: met ? sheetsPage(met, brief) : '',
      ...(nearest && {
        nearest:
          withValues(
            text,
            nearest.changes.map(({ path }) => path),
            nearest.brief,
          ) ?? briefText(nearest.brief),
      }),
    };
  } catch (error) {
    if (!isInputError(error)) throw error;
    const places = jsonPlaces(plain.text);
    return {
      type: 'faults',
      places: error.faults
        .slice(0, toldAtMost.faults)
        .map((fault) => ({ ...placeOfPath(places, fault.path), message: faultLine(fault) }))
        .sort((a, b) => a.line - b.line),
    };
  }
}

self.onmessage = ({ data }: MessageEvent<string>) => self.postMessage(job(data));
self.postMessage({ type: 'ready' } satisfies JobTold);
