/** Generated cases are the same in each run, so that a red run is red again; FUZZ_SEED looks at others. */
import * as fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.FUZZ_SEED ?? 20261125) });
