/** The whole job of a brief, away from the page. */
import { faultLine, isInputError, toldAtMost } from '@airspring/core/fault';
import { plainJson } from '../../../packages/airspring/src/command/json-fault.js';
import { jobOf } from '../job/job.js';
import type { Told } from '../job/told.js';
import { jsonPlaces, placeOfPath } from '../json-places.js';
import type { Place } from './place.js';

export type JobTold =
  | { readonly type: 'ready' }
  | { readonly type: 'faults'; readonly places: readonly Place[] }
  | { readonly type: 'done'; readonly told: Told };

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
  try {
    return { type: 'done', told: jobOf(JSON.parse(plain.text), text) };
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
