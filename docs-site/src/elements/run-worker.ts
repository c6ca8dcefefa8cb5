/** Runs one text of code, away from the page: it can loop or throw, and only this worker ends. */
import { lineOf, printedOf, tableLines } from '../example/printed.js';
import { checkedModule, MissingImport } from './checked-module.js';
import { compiled, SyntaxFault } from './compile.js';
import type { Place } from './place.js';
import { LIMIT } from './run-limit.js';

const modules: Readonly<Record<string, () => Promise<unknown>>> = {
  '@airspring/core/air': () => import('@airspring/core/air'),
  '@airspring/core/driver': () => import('@airspring/core/driver'),
  '@airspring/core/duct': () => import('@airspring/core/duct'),
  '@airspring/core/enclosure': () => import('@airspring/core/enclosure'),
  '@airspring/core/fault': () => import('@airspring/core/fault'),
  '@airspring/core/filter': () => import('@airspring/core/filter'),
  '@airspring/core/laws': () => import('@airspring/core/laws'),
  '@airspring/core/limit': () => import('@airspring/core/limit'),
  '@airspring/core/network': () => import('@airspring/core/network'),
  '@airspring/core/numeric': () => import('@airspring/core/numeric'),
  '@airspring/core/quantity': () => import('@airspring/core/quantity'),
  '@airspring/core/response': () => import('@airspring/core/response'),
  '@airspring/core/simd': () => import('@airspring/core/simd'),
  '@airspring/core/space': () => import('@airspring/core/space'),
  '@airspring/core/tolerance': () => import('@airspring/core/tolerance'),
  '@airspring/core/vent': () => import('@airspring/core/vent'),
  '@airspring/transient/recording': () => import('@airspring/transient/recording'),
  '@airspring/transient/signal': () => import('@airspring/transient/signal'),
  '@airspring/transient/simulation': () => import('@airspring/transient/simulation'),
  '@airspring/transient/timeline': () => import('@airspring/transient/timeline'),
  '@airspring/workshop/drawing': () => import('@airspring/workshop/drawing'),
  '@airspring/workshop/mesh': () => import('@airspring/workshop/mesh'),
  '@airspring/workshop/nesting': () => import('@airspring/workshop/nesting'),
  '@airspring/workshop/outline': () => import('@airspring/workshop/outline'),
  '@airspring/workshop/panel': () => import('@airspring/workshop/panel'),
  '@airspring/workshop/shape': () => import('@airspring/workshop/shape'),
  '@airspring/workshop/solid': () => import('@airspring/workshop/solid'),
  airspring: () => import('airspring'),
};

export type Told =
  | { readonly type: 'ready' }
  | { readonly type: 'done'; readonly printed: string }
  | { readonly type: 'failed'; readonly threw: boolean; readonly places: readonly Place[] };

const tell = (told: Told) => self.postMessage(told);
const LINES = 2000;
/** Rounds of loops between two looks at the clock. */
const ROUNDS = 16;

/** A loop was still going round when the time was over. */
class StillGoing extends Error {
  constructor(readonly line: number) {
    super(`Stopped after ${LIMIT / 1000} s, still in this loop. Does it ever end?`);
  }
}

/** The line of the code that a stack leads to, as browsers write stacks. */
function lineIn(error: unknown, address: string): number | undefined {
  const stack = (error as Error).stack ?? '';
  const at = stack.indexOf(address);
  const found = at < 0 ? undefined : /^:(\d+)/.exec(stack.slice(at + address.length))?.[1];
  return found === undefined ? undefined : Number(found);
}

/** Where the code has the field that a path ends in: at or after the line that threw, else anywhere. */
function placeOf(code: string, path: string, line = 1): Pick<Place, 'line' | 'from' | 'to'> {
  const field = /([\w$]+)(?:\[\d+\])?$/.exec(path)?.[1];
  const start = code
    .split('\n')
    .slice(0, line - 1)
    .join('\n').length;
  const pattern = field && new RegExp(`(?<![\\w$])['"]?${field}['"]?\\s*[:,}]`, 'g');
  const found = pattern ? [...code.matchAll(pattern)].map(({ index }) => index) : [];
  const from = found.find((index) => index >= start) ?? found[0];
  if (from === undefined || field === undefined) return { line };
  return { line: code.slice(0, from).split('\n').length, from, to: from + field.length };
}

/** Whether the code began to run: what cannot be read, or lacks what it imports, does not. */
const hasRun = (error: unknown): boolean =>
  !(
    error instanceof SyntaxFault ||
    error instanceof MissingImport ||
    /^Module: /.test((error as Error)?.message ?? '')
  );

function placesOf(error: unknown, code: string, address: string): Place[] {
  if (error instanceof SyntaxFault) return [error.place];
  if (error instanceof StillGoing) return [{ line: error.line, message: error.message }];
  if (error instanceof MissingImport) {
    const { module, imported } = error;
    const at = code.search(new RegExp(`\\b${imported.replaceAll('$', '\\$')}\\b[^;]*['"]${module}['"]`));
    const place = at < 0 ? {} : { line: code.slice(0, at).split('\n').length, from: at, to: at + imported.length };
    return [{ ...place, message: error.message }];
  }
  const line = lineIn(error, address);
  const {
    name = 'Error',
    message = String(error),
    faults,
  } = error as Error & { faults?: readonly { path: string; got: unknown; expected: string; remedy: string }[] };
  if (name === 'InputError' && faults) {
    return faults.map(({ path, got, expected, remedy }) => ({
      ...placeOf(code, path, line),
      message: `${path}: got ${lineOf(got)}, expected ${expected}. ${remedy}`,
    }));
  }
  const importing = /^Module: '(.*)'/.exec(message)?.[1];
  const at = importing === undefined ? line : code.slice(0, Math.max(0, code.indexOf(importing))).split('\n').length;
  return [
    {
      ...(at !== undefined && { line: at }),
      message:
        importing === undefined
          ? `${name}: ${message}`
          : `There is no module '${importing}' here. There are ${Object.keys(modules).join(', ')}.`,
    },
  ];
}

self.onmessage = async ({ data: code }: MessageEvent<string>) => {
  const logged: string[] = [];
  const log = (...parts: unknown[]) => {
    if (logged.length < LINES) logged.push(lineOf(...parts));
  };
  const table = (rows: unknown) => {
    for (const line of tableLines(rows)) log(line);
  };
  Object.assign(console, { log, info: log, warn: log, error: log, table });
  const end = performance.now() + LIMIT;
  let rounds = 0;
  Object.assign(self, {
    __more: (line: number): true => {
      if (++rounds % ROUNDS === 0 && performance.now() > end) throw new StillGoing(line);
      return true;
    },
    __module: async (name: string) => {
      const load = Object.hasOwn(modules, name) ? modules[name] : undefined;
      if (!load) throw new Error(`Module: '${name}'`);
      return checkedModule(name, (await load()) as object);
    },
  });
  let address = '\0';
  try {
    const plain = compiled(code);
    address = URL.createObjectURL(new Blob([plain], { type: 'text/javascript' }));
    const example: object = await import(/* @vite-ignore */ address);
    tell({ type: 'done', printed: printedOf(example, logged) });
  } catch (error) {
    tell({ type: 'failed', threw: hasRun(error), places: placesOf(error, code, address) });
  }
};
// When the library throws, the line of the reader may be far down the stack.
Error.stackTraceLimit = 100;
tell({ type: 'ready' });
