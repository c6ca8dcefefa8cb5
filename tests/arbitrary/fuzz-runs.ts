/** By hand each property draws a third of the cases that it draws in CI, so that a run stays short. */
const share = process.env.CI === undefined ? 1 / 3 : 1;

/** How many inputs a fuzz property draws: 300 in CI, 100 by hand, or as many as the environment asks for. */
export const fuzzRuns = Number(process.env.FUZZ_RUNS ?? 300 * share);

/** How many inputs a property draws whose single case is dear, from how many it draws in CI. */
export const cases = (inCI: number): number => Math.ceil(inCI * share);
