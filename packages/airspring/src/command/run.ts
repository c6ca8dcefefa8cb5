import { resolve } from 'node:path';
import { isInputError, visible } from '@airspring/core/fault';
import { briefJsonSchema, design } from '../design.js';
import type { Brief } from '../kind/standard.js';
import type { Answer } from '../record/answer.js';
import type { Progress } from '../search/search.js';
import { stands } from '../standing/read.js';
import { type Retrofit, retrofit } from '../standing/retrofit.js';
import { reportText } from '../words/report-text.js';
import { retrofitText } from '../words/retrofit-text.js';
import { sketchText } from '../words/sketch.js';
import { help, readArguments } from './arguments.js';
import { readBriefFile } from './brief-file.js';

const MET = 0;
const NOT_MET = 1;
const REFUSED = 2;
const UNREADABLE = 3;

/** The exit code of the command, and what it writes to each stream. */
export interface Ended {
  readonly status: typeof MET | typeof NOT_MET | typeof REFUSED | typeof UNREADABLE;
  readonly out: string;
  readonly error: string;
}

const told = (out: string): Ended => ({ status: MET, out, error: '' });
const refused = (lines: string): Ended => ({ status: REFUSED, out: '', error: `${lines}\n` });

/** The answer, or all faults of the brief, one on each line. */
function answerTo(brief: unknown, progress: Progress): Answer | Retrofit | string {
  try {
    return stands(brief) ? retrofit(brief) : design(brief, { progress });
  } catch (error) {
    if (!isInputError(error)) throw error;
    return error.message;
  }
}

/** JSON that is safe to show in a terminal: it also escapes control characters that JSON allows, with the same meaning. */
const jsonText = (answer: Answer | Retrofit): string =>
  JSON.stringify(answer).replace(
    /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

const printed = (answer: Answer | Retrofit, { units }: Brief): string => {
  if (!('ok' in answer)) return retrofitText(answer, units);
  const designs = answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? []);
  return `${reportText(answer, units)}${designs.length > 0 ? `\n${sketchText(designs)}` : ''}`;
};

/** Runs the command with its arguments; `standing` is the folder of the user. */
export function run(words: readonly string[], standing: string, progress: Progress = () => {}): Ended {
  const asked = readArguments(words);
  if (asked.what === 'refused') return refused(`${visible(asked.line)}; see airspring --help`);
  if (asked.what === 'help') return told(help);
  if (asked.what === 'schema') return told(`${JSON.stringify(briefJsonSchema(), null, 2)}\n`);
  const file = readBriefFile(resolve(standing, asked.path), visible(asked.path));
  if (!file.ok) return { ...refused(file.line), status: file.unreadable ? UNREADABLE : REFUSED };
  const answer = answerTo(file.brief, progress);
  if (typeof answer === 'string') return refused(answer);
  const out = asked.json ? `${jsonText(answer)}\n` : printed(answer, file.brief as Brief);
  return { status: !('ok' in answer) || answer.ok ? MET : NOT_MET, out, error: '' };
}
