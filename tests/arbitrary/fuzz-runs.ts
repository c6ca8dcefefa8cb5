/** How many inputs a fuzz property draws: 300, or as many as the environment asks for. */
export const fuzzRuns = Number(process.env.FUZZ_RUNS ?? 300);
