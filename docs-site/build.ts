/** Builds the site, if it is older than its sources. */
import { fileURLToPath } from 'node:url';
import { built } from './src/build.js';

console.log(`The site is in ${await built(fileURLToPath(new URL('..', import.meta.url)), console.log)}`);
