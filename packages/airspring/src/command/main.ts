#!/usr/bin/env node
import { writeSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { visible } from '@airspring/core/fault';
import { progressLines } from './progress.js';
import { run } from './run.js';
import { writeAll } from './write-all.js';

const CANNOT_WRITE = 4;
const PIPE_CLOSED = 5;
const FAULT_OF_THE_PROGRAM = 70;

/** The user's folder: npm runs a script from the top of this repository and tells in which folder it was called. */
const standing = (process.env.npm_package_name === 'airspring-workspace' ? process.env.INIT_CWD : undefined) ?? '.';

// The engine of Node 20 compiles a function a second time so soon that a search, which is short, spends a quarter of its time on
// that. Engines of later versions wait by themselves, and have no such option.
if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=500000');

/** Written synchronously, since the search leaves no time for a stream. */
const progress = progressLines((line) => writeSync(process.stderr.fd, line));

try {
  const { status, out, error } = await run(process.argv.slice(2), standing, progress);
  const failed = await writeAll(process.stdout, out);
  process.exitCode = failed === undefined ? status : failed.code === 'EPIPE' ? PIPE_CLOSED : CANNOT_WRITE;
  const why =
    failed?.code === 'EPIPE'
      ? 'the reader of the report closed the pipe early'
      : `the report cannot be written: ${failed?.code === 'ENOSPC' ? 'the disk is full' : failed?.code}`;
  await writeAll(process.stderr, failed === undefined ? error : `airspring: ${why}\n`);
} catch (error) {
  // One line, with an exit code of its own. A developer gets the whole error by setting AIRSPRING_TRACE.
  if (process.env.AIRSPRING_TRACE) console.error(error);
  await writeAll(process.stderr, `airspring: the program itself has a fault: ${visible(String(error))}\n`);
  process.exitCode = FAULT_OF_THE_PROGRAM;
}
