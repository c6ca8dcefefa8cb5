/** Generated cases are the same in each run, so that a red run is red again; FUZZ_SEED looks at others. */
import * as fc from 'fast-check';
import { cases } from './arbitrary/fuzz-runs.js';

fc.configureGlobal({
  seed: Number(process.env.FUZZ_SEED ?? 20261125),
  numRuns: cases(90),
});
