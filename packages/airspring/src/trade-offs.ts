import { type Fault, refuse } from '@airspring/core/fault';
import { type Frequency, type Level, readInto, type Text } from '@airspring/core/quantity';
import { tradeOffFront } from '@airspring/core/tolerance';
import { readBrief } from './brief/read.js';
import { type Job, SHORTEST_BAND } from './job/job.js';
import { completeOptions } from './kind/brief-options.js';
import { inPlace } from './workers/in-place.js';
import { type SmallestBox, smallest } from './workers/smallest.js';
import type { Watched, Workers } from './workers/workers.js';

/** Which beginnings of the band and which levels are tried, and where. */
export interface TradeOffOptions extends Watched {
  /** Default seven, a quarter of an octave apart, around that of the brief. */
  readonly lowest?: readonly (Frequency | Text<'frequency'>)[];
  /** Default five, 3 dB apart, around that of the brief. */
  readonly levels?: readonly (Level | Text<'level'>)[];
  /** Workers that share the work, one beginning of the band at a time; default none: it is done in place. */
  readonly workers?: Workers;
}

/** How large a box must be to play so loud from so low a frequency upwards. */
export interface TradeOffs {
  readonly title: string;
  /** What was tried: Hz, and dB. */
  readonly lowest: readonly number[];
  readonly levels: readonly number[];
  /** Boxes of which none is bettered by another in depth, level and outer volume at once. By depth, and then by level. */
  readonly boxes: readonly SmallestBox[];
}

const QUARTERS = [-2, -1, 0, 1, 2, 3, 4];
const STEPS = [-6, -3, 0, 3, 6];
/** More of either would take minutes. */
const MOST = 60;

/** Reads a list of quantities: at least one, each at its path. What cannot be read stands there as NaN. */
function numbersOf(faults: Fault[], kind: 'frequency' | 'level', given: unknown, path: string): number[] {
  if (!Array.isArray(given)) {
    faults.push({ code: 'inconsistent', path, got: given, expected: 'a list', remedy: 'Put it in square brackets.' });
    return [];
  }
  const list: readonly unknown[] = given;
  if (list.length === 0 || list.length > MOST) {
    const expected = `a list of 1 to ${MOST} values`;
    faults.push({ code: 'out-of-range', path, got: list, expected, remedy: 'Give a few.' });
    return [];
  }
  return list.map((one, i) => readInto(faults, kind, one as never, `${path}[${i}]`, 'positive') ?? Number.NaN);
}

/** The band must keep some breadth above each of its beginnings. */
const tooHigh = ({ wanted }: Job, lowest: readonly number[]): Fault[] =>
  lowest.flatMap((got, i): Fault[] => {
    // Rounded down: what is named is taken.
    const expected = `at most ${Math.floor((100 * wanted.highest) / SHORTEST_BAND) / 100} Hz, for a band that ends at ${wanted.highest} Hz`;
    const remedy = 'Give lower ones, or a higher wanted.highest.';
    return got * SHORTEST_BAND > wanted.highest
      ? [{ code: 'out-of-range', path: `options.lowest[${i}]`, got, expected, remedy }]
      : [];
  });

/**
 * The trade-off between volume, depth and level: the smallest box of a brief that plays each of some levels from each of some
 * frequencies upwards, with every other wish met. The search is done again for each frequency; the answer is the same with any
 * number of workers.
 *
 * @throws InputError with every fault of the brief at its path, and of the options; for workers in which briefs may name other things
 * @example (await tradeOffs(brief)).boxes.map(({ lowest, level, volume }) => [lowest, level, volume])
 */
export async function tradeOffs(brief: unknown, options: TradeOffOptions = {}): Promise<TradeOffs> {
  if (typeof options !== 'object' || options === null) {
    const expected = 'a record of options';
    refuse([
      { code: 'inconsistent', path: 'options', got: options, expected, remedy: 'Give a record, or leave it out.' },
    ]);
  }
  const { lowest, levels, workers = inPlace, ...watched } = options;
  const { kinds, models, alignments, shapes } = completeOptions(watched);
  const job = readBrief(brief, kinds, models, alignments, shapes);
  const { wanted } = job;
  const faults: Fault[] = [];
  const around = QUARTERS.map((k) => Math.round(10 * wanted.lowest * 2 ** (k / 4)) / 10);
  const asked = {
    lowest: lowest
      ? numbersOf(faults, 'frequency', lowest, 'options.lowest')
      : around.filter((one) => one * SHORTEST_BAND <= wanted.highest),
    levels: levels ? numbersOf(faults, 'level', levels, 'options.levels') : STEPS.map((step) => wanted.level + step),
  };
  refuse([...faults, ...tooHigh(job, asked.lowest)]);
  const tried = { lowest: [...new Set(asked.lowest)], levels: [...new Set(asked.levels)] };
  const inputs = tried.lowest.map((one) => ({ brief: job.written, lowest: one, levels: tried.levels }));
  const boxes = (await workers.run(smallest, inputs, watched))
    .flat()
    .sort((a, b) => a.lowest - b.lowest || a.level - b.level);
  const front = tradeOffFront(boxes.map((box) => [box.lowest, -box.level, box.volume]));
  return { title: job.title, ...tried, boxes: front.map((i) => boxes[i]!) };
}
