import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { serve } from '../../docs-site/src/server.js';
import { slowness } from './machine-speed.js';

const dist = fileURLToPath(new URL('../../docs-site/dist', import.meta.url));
const { CHROMIUM, CI } = process.env;
/** The one without a window first: it starts a page in half the time. */
const programs = ['chromium-headless-shell', 'chromium', 'chromium-browser'].map((name) => `/usr/bin/${name}`);
export const executablePath = [CHROMIUM, ...programs].find((path) => path !== undefined && existsSync(path));

/** Without a browser these tests are left out, and say so; where everything must pass, that is a failure. */
export const hasBrowser = executablePath !== undefined || CI !== undefined;
if (!hasBrowser) console.warn('No Chromium found: set CHROMIUM to its path, or install it (apt install chromium).');

/** Nothing that the browser does of its own accord. */
export const flags = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
];

export interface Visit {
  readonly page: Page;
  /** Everything that was asked for, and what the page complained about. */
  readonly requests: string[];
  readonly complaints: string[];
}

export interface Site {
  readonly address: () => string;
  readonly visit: (path: string, options?: BrowserContextOptions) => Promise<Visit>;
  /** A time as it would be on the machine for which the goals are stated, where this one is slower. */
  readonly stated: (time: number) => number;
  /**
   * Milliseconds of the longest task of the page's main thread while some moves are made (200), at a quarter of the stated processor. It is
   * the processor's time in the thread that counts, not the clock on the wall: what a page costs is ours to answer for, how long
   * another process kept it from running is not. Others that share the caches still add to it, and never take away: the least of
   * up to five times counts, and a time that is below the limit ends the tries.
   */
  readonly longestTask: (page: Page, moves: () => Promise<void>, options?: Watch) => Promise<number>;
  /** The same of several moves, one after the other in one trace: a trace takes as long as some moves. Only those that are too long are made again. */
  readonly longestTasks: (page: Page, moves: readonly (() => Promise<void>)[], options?: Watch) => Promise<number[]>;
}

interface Watch {
  /** Milliseconds that a task may take. */
  readonly limit?: number;
  /** How many moves of the hand there are in each. */
  readonly count?: number;
}

/** A task in a trace; times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** When it began, by the clock that never goes back, which is the same in every process. */
  readonly ts: number;
  /** Of the clock on the wall, and of the processor in this thread. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/** When each task of the main threads of pages began, µs, and what it took of the processor, ms. */
function mainThreadTasks(events: readonly TraceEvent[]): { readonly at: number; readonly took: number }[] {
  const mains = new Set(
    events
      .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  return events
    .filter(({ name, ph, pid, tid }) => ph === 'X' && name.endsWith('RunTask') && mains.has(`${pid} ${tid}`))
    .flatMap(({ ts, tdur }) => (tdur === undefined ? [] : [{ at: ts, took: tdur / 1000 }]));
}
const now = (): number => Number(process.hrtime.bigint()) / 1000;

/** Serves the built site and starts a browser for the tests of a file. */
export function site(): Site {
  let browser: Browser;
  let served: Awaited<ReturnType<typeof serve>>;
  let slower = 1;
  beforeAll(async () => {
    if (!executablePath) throw new Error('No Chromium found: set CHROMIUM to its path, or install it.');
    if (!existsSync(dist)) throw new Error('The site is not built: run `npm run site`.');
    served = await serve(dist, 0);
    browser = await chromium.launch({ executablePath, args: flags });
    slower = await slowness(browser);
  });
  afterAll(async () => {
    await browser?.close();
    served?.server.close();
  });
  const longestTasks: Site['longestTasks'] = async (page, moves, { limit = 50, count = 200 } = {}) => {
    const least = moves.map(() => Number.POSITIVE_INFINITY);
    for (let tries = 0; tries < 5; tries++) {
      const left = least.flatMap((time, k) => (time < limit ? [] : [k]));
      if (left.length === 0) break;
      if (tries > 0) slower = await slowness(browser);
      await browser.startTracing(page, { categories: ['toplevel'] });
      const ends = [now()];
      const work = async () => {
        for (const k of left) {
          await moves[k]!();
          ends.push(now());
        }
      };
      // A trace that nobody ends would stop all that follow.
      const trace = await work().then(
        () => browser.stopTracing(),
        async (error) => {
          await browser.stopTracing();
          throw error;
        },
      );
      const tasks = mainThreadTasks(JSON.parse(trace.toString()).traceEvents);
      left.forEach((k, i) => {
        const those = tasks.filter(({ at }) => at >= ends[i]! && at < ends[i + 1]!).map(({ took }) => took);
        // A task for each move at least; else the trace has no times of the processor, and says nothing.
        if (those.length <= count) throw new Error(`only ${those.length} tasks in the trace`);
        least[k] = Math.min(least[k]!, (4 * Math.max(...those)) / slower);
      });
    }
    return least;
  };
  return {
    address: () => served.address,
    stated: (time) => time / slower,
    visit: async (path, options = {}) => {
      const context = await browser.newContext({ viewport: { width: 1100, height: 900 }, ...options });
      const page = await context.newPage();
      const [requests, complaints]: [string[], string[]] = [[], []];
      page.on('request', (request) => requests.push(request.url()));
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
      await page.goto(`${served.address}${path}`, { waitUntil: 'load' });
      return { page, requests, complaints };
    },
    longestTasks,
    longestTask: async (page, moves, options) => (await longestTasks(page, [moves], options))[0]!,
  };
}

/** A file of the build. */
export const built = (path: string): string => join(dist, path);

/** A page of the build as it is served. */
export const textOf = (path: string): string => readFileSync(built(`${path}/index.html`), 'utf8');

/** Every page of the build, as paths. */
export async function pages(): Promise<string[]> {
  if (!existsSync(dist)) return [];
  return readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('index.html') && !path.startsWith('pagefind'))
    .map((path) => path.replace(/index\.html$/, ''))
    .sort();
}
