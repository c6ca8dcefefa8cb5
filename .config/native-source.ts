/**
 * How tests read our packages: as source, so that none waits for a build, and by Node itself with a loader of ours.
 * Between modules that the runner loads, each imported name is a getter, which makes a search a quarter slower.
 */
export const nativeSource = {
  // Our modules hold no state: a worker loads them once for all its files.
  isolate: false,
  // Room for what is forgotten at once: clearing it away took a tenth of the time.
  execArgv: [
    '--conditions=@airspring/source',
    '--import',
    new URL('source.mjs', import.meta.url).href,
    '--max-semi-space-size=32',
    // The engine of Node 20 compiles functions a second time too soon for work that is short.
    ...(process.versions.v8.startsWith('11.') ? ['--interrupt-budget=500000'] : []),
  ],
  server: { deps: { external: [/\/packages\/(core|transient|workshop|airspring)\/src\//] } },
};
