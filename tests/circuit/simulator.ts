/**
 * A circuit simulator as a second road to every number of a network. One thread, one run at a time, with a time limit:
 * the engine can hang on a bad netlist, and after a failed run it hands out the data of the run before.
 */
import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { type Network, netlist } from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import type { ResultType } from 'eecircuit-engine';

const LIMIT_MS = 20_000;
const harmless = /^(note|warning:.*gmin|.*gmin step|.*source step|using sparse)/i;

let worker: Promise<Worker> | undefined;
let queue: Promise<unknown> = Promise.resolve();
let runs = 0;

async function started(): Promise<Worker> {
  const made = new Worker(new URL('./simulator-worker.mjs', import.meta.url), { stdout: true, stderr: true });
  made.unref();
  await once(made, 'message');
  return made;
}

/** Runs a netlist whose first line is its title; columns by the simulator's names: `v(cone)`, `i(v_drive)`. */
async function run(text: string, dataType: 'complex' | 'real'): Promise<ReadonlyMap<string, ComplexColumn>> {
  worker ??= started();
  const thread = await worker;
  const [title = ''] = text.split('\n');
  thread.postMessage(text);
  const signal = AbortSignal.timeout(LIMIT_MS);
  const answer = once(thread, 'message', { signal });
  try {
    const [{ result, complaints }] = (await answer) as [{ result: ResultType; complaints: string[] }];
    const bad = complaints.filter((line) => line.trim() !== '' && !harmless.test(line.trim()));
    if (bad.length > 0) throw new Error(`${title}: ${bad.join('; ')}`);
    if (!result.header.toLowerCase().includes(title.toLowerCase()))
      throw new Error(`${title}: got the run of '${result.header}'`);
    if (result.dataType !== dataType) throw new Error(`${title}: not the run that was asked for`);
    return new Map(
      result.data.map(({ name, values }) => {
        const column = complexColumn(values.length);
        values.forEach((value, i) => {
          if (typeof value === 'number') column.re[i] = value;
          else [column.re[i], column.im[i]] = [value.real, value.img];
        });
        return [name.toLowerCase(), column];
      }),
    );
  } catch (error) {
    if (signal.aborted) {
      worker = undefined;
      await thread.terminate();
    }
    throw error;
  }
}

/** Simulates a network at `points` frequencies in equal ratios from `from` to `to`, both included. */
export function simulate(network: Network, from: number, to: number, points: number) {
  const title = `airspring run ${++runs}`;
  return queued(withSweep(netlist(network, title), from, to, points), 'complex');
}

/** Runs a netlist over time, without its title; the columns are real, `time` one of them. */
export async function simulateOverTime(lines: readonly string[]): Promise<ReadonlyMap<string, Float64Array>> {
  const run = await queued([`airspring run ${++runs}`, ...lines, '.end', ''].join('\n'), 'real');
  return new Map([...run].map(([name, { re }]) => [name, re]));
}

function queued(text: string, dataType: 'complex' | 'real') {
  const job = queue.then(() => run(text, dataType));
  queue = job.catch(() => undefined);
  return job;
}

/** The simulator steps in whole points a decade; a list of points is a sweep of decades with the right number of them. */
function withSweep(text: string, from: number, to: number, points: number): string {
  const perDecade = (points - 1) / Math.log10(to / from);
  if (Math.abs(perDecade - Math.round(perDecade)) > 1e-9) throw new Error('whole points a decade');
  return `${text}\n.ac dec ${Math.round(perDecade)} ${from} ${to}\n.end\n`;
}
