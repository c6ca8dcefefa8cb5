import { readFileSync } from 'node:fs';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { serve, tradeOffs, workers } from '../../packages/airspring/src/index.js';
import { builds } from '../../packages/airspring/src/workers/builds.js';
import { runRow } from '../measure.js';

const brief = JSON.parse(readFileSync('packages/airspring/briefs/whale-bench.json', 'utf8'));
const start = () => new Worker(new URL(import.meta.url));

/** Parts of the same size, as many as any count of workers divides evenly. */
const PARTS = 16;
const BUILDS = 10_000;
const runs = Array.from({ length: PARTS }, (_, i) => ({
  brief,
  variant: 1,
  point: [0.035, 30, 0.08],
  seed: 1,
  first: (i * BUILDS) / PARTS,
  count: BUILDS / PARTS,
}));
const lowest = ['30 Hz', '32 Hz', '34 Hz', '36 Hz', '38 Hz', '40 Hz', '42 Hz', '44 Hz'] as const;

/** Other threads work: the clock counts, not the processor of this one. */
const shared = (work: (count: number) => () => Promise<unknown>) =>
  [1, 2].map((count) => [count, () => ({ elsewhere: true as const, call: work(count) })] as const);

if (!isMainThread) serve(parentPort);
else {
  await runRow(
    Object.fromEntries([
      ...shared((count) => {
        const crew = workers({ count, start });
        return () => crew.run(builds, runs, {});
      }).map(([count, work]) => [`builds-${count}`, work]),
      ...shared((count) => {
        const crew = workers({ count, start });
        return () => tradeOffs(brief, { lowest, levels: ['92 dB'], workers: crew });
      }).map(([count, work]) => [`front-${count}`, work]),
    ]),
  );
  process.exit(0);
}
