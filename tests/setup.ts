/**
 * Generated cases are the same in each run, so that a red run is red again; FUZZ_SEED looks at others. By hand each law is
 * tried on fewer of them than in CI, so that a run stays under a minute.
 */
import * as fc from 'fast-check';

fc.configureGlobal({
  seed: Number(process.env.FUZZ_SEED ?? 20261125),
  numRuns: process.env.CI === undefined ? 30 : 100,
});
