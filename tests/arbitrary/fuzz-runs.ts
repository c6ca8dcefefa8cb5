/** A run stays short: each property draws a third of its cases, unless all are asked for. */
const share = process.env.MANY_CASES === undefined ? 1 / 3 : 1;

/** How many inputs a fuzz property draws: 100, 300 where all are asked for, or as many as the environment tells. */
export const fuzzRuns = Number(process.env.FUZZ_RUNS ?? 300 * share);

/** How many inputs a property draws whose single case is dear, from how many there are. */
export const cases = (all: number): number => Math.ceil(all * share);
