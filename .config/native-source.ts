import { shortWork } from './short-work.js';

/**
 * How tests are read, and the source of our packages, so that none waits for a build: by Node itself with a loader of ours. Between
 * modules that the runner loads, each imported name is a getter, which makes a search a quarter slower, and it reads a module that
 * several files share again for each of them.
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
  experimental: { viteModuleRunner: false, nodeLoader: false },
};
