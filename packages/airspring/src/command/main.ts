#!/usr/bin/env node
import { writeSync } from 'node:fs';
import { visible } from '@airspring/core/fault';
import { progressLines } from './progress.js';
import { run } from './run.js';
import { written } from './written.js';

const CANNOT_WRITE = 4;
const PIPE_CLOSED = 5;
const FAULT_OF_THE_PROGRAM = 70;

/** Where the user stands: npm runs a script of this repository from its top, and says where it was called. */
const standing = (process.env.npm_package_name === 'airspring-workspace' ? process.env.INIT_CWD : undefined) ?? '.';

/** Written at once: the search leaves no time for a stream. */
const progress = progressLines((line) => writeSync(process.stderr.fd, line));

try {
  const { status, out, error } = run(process.argv.slice(2), standing, progress);
  const failed = await written(process.stdout, out);
  process.exitCode = failed === undefined ? status : failed.code === 'EPIPE' ? PIPE_CLOSED : CANNOT_WRITE;
  const why =
    failed?.code === 'EPIPE'
      ? 'the reader of the report closed the pipe before its end'
      : `the report cannot be written: ${failed?.code === 'ENOSPC' ? 'the disk is full' : failed?.code}`;
  await written(process.stderr, failed === undefined ? error : `airspring: ${why}\n`);
} catch (error) {
  // Told apart from an answer, and in one line: who mends it asks for the whole by a word in the environment.
  if (process.env.AIRSPRING_TRACE) console.error(error);
  await written(process.stderr, `airspring: this is a fault of the program: ${visible(String(error))}\n`);
  process.exitCode = FAULT_OF_THE_PROGRAM;
}
