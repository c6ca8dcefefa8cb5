/** A run stays short: each property draws a third of its cases, unless all are asked for. */
const share = process.env.MANY_CASES === undefined ? 1 / 3 : 1;

/**
 * How many inputs a fuzz property draws: 40, 300 where all are asked for, or as many as the environment tells. CI does, in a step
 * of its own, where it draws the same 40 and 260 after them.
 */
export const fuzzRuns = Number(process.env.FUZZ_RUNS ?? (process.env.MANY_CASES === undefined ? 40 : 300));

/** How many inputs a property draws whose single case is dear, from how many there are. */
export const cases = (all: number): number => Math.ceil(all * share);
