#!/usr/bin/env node
import { resolve } from 'node:path';
import type { Answer } from '../answer.js';
import { briefJsonSchema } from '../brief/json-schema.js';
import type { Brief } from '../brief/schema.js';
import { design } from '../design.js';
import { sketchText } from '../report/sketch.js';
import { reportText } from '../report/text.js';
import { help, readArguments } from './arguments.js';
import { readBriefFile } from './brief-file.js';

/** What the command ends with. */
const MET = 0;
const NOT_MET = 1;
const REFUSED = 2;

/** Where the user stands: npm moves a script of this repository to its top, and says where it was called. */
const startedIn = (): string =>
  (process.env.npm_package_name === 'airspring-workspace' ? process.env.INIT_CWD : undefined) ?? '.';

function refuse(line: string): number {
  process.stderr.write(`${line}\n`);
  return REFUSED;
}

/** The answer, or `undefined` with every fault of the brief on the error stream, one a line. */
function answerTo(brief: unknown): Answer | undefined {
  try {
    return design(brief);
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error) || error.code !== 'airspring-input') throw error;
    refuse(error.message);
    return undefined;
  }
}

const printed = (answer: Answer, { units }: Brief): string => {
  const designs = answer.ok ? answer.designs : (answer.nearest?.answer.designs ?? []);
  return `${reportText(answer, units)}${designs.length > 0 ? `\n${sketchText(designs)}` : ''}`;
};

function run(words: readonly string[]): number {
  const asked = readArguments(words);
  if (asked.what === 'refused') return refuse(`${asked.line}; see airspring --help`);
  if (asked.what === 'help') {
    process.stdout.write(help);
    return MET;
  }
  if (asked.what === 'schema') {
    process.stdout.write(`${JSON.stringify(briefJsonSchema(), null, 2)}\n`);
    return MET;
  }
  // npm runs a script from the top of the repository and says where its reader stands.
  const file = readBriefFile(resolve(startedIn(), asked.path), asked.path);
  if (!file.ok) return refuse(file.line);
  const answer = answerTo(file.brief);
  if (answer === undefined) return REFUSED;
  process.stdout.write(asked.json ? `${JSON.stringify(answer)}\n` : printed(answer, file.brief as Brief));
  return answer.ok ? MET : NOT_MET;
}

// A reader who has seen enough closes the pipe: no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
try {
  process.exitCode = run(process.argv.slice(2));
} catch (error) {
  // A fault of this program: shown whole, and told apart from an answer.
  console.error(error);
  process.exitCode = 70;
}
