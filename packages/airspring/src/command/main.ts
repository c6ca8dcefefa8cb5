#!/usr/bin/env node
import { run } from './run.js';

/** Where the user stands: npm runs a script of this repository from its top, and says where it was called. */
const standing = (process.env.npm_package_name === 'airspring-workspace' ? process.env.INIT_CWD : undefined) ?? '.';

// A reader who has seen enough closes the pipe: no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
try {
  const { status, out, error } = run(process.argv.slice(2), standing);
  process.stdout.write(out);
  process.stderr.write(error);
  process.exitCode = status;
} catch (error) {
  // A fault of this program: shown whole, and told apart from an answer.
  console.error(error);
  process.exitCode = 70;
}
