/**
 * What Node is started with for work that makes much and is soon over: room for what is forgotten at once, and, where the engine is
 * that of Node 20, no second compilation before it pays. Later engines wait by themselves, and do not know that option.
 */
export const shortWork = (megabytes: number): readonly string[] => [
  `--max-semi-space-size=${megabytes}`,
  ...(process.versions.v8.startsWith('11.') ? ['--interrupt-budget=500000'] : []),
];
