import { shortWork } from './short-work.js';

/**
 * How tests read our packages: as source, so that none waits for a build, and by Node itself with a loader of ours.
 * Between modules that the runner loads, each imported name is a getter, which makes a search a quarter slower.
 */
export const nativeSource = {
  // Our modules hold no state: a worker loads them once for all its files.
  isolate: false,
  execArgv: [
    '--conditions=@airspring/source',
    '--import',
    new URL('source.mjs', import.meta.url).href,
    ...shortWork(32),
  ],
  server: { deps: { external: [/\/packages\/(core|transient|workshop|airspring)\/src\//] } },
};
