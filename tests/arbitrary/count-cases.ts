/** Gives each property a minute and a half, and writes down how many cases it drew: what was cut short counts as short as it was. */
import { appendFileSync } from 'node:fs';
import * as fc from 'fast-check';

fc.configureGlobal({
  ...fc.readConfigureGlobal(),
  interruptAfterTimeLimit: 90_000,
  reporter: (details) => {
    appendFileSync('.cache/fuzz-cases', `${details.numRuns}\n`);
    const message = fc.defaultReportMessage(details);
    if (message !== undefined) throw new Error(message, { cause: details.errorInstance });
  },
});
