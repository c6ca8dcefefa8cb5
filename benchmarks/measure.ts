/** Seconds a call by the clock and by the processor, round by round; the latter empty where another process works. */
export interface Rounds {
  readonly wall: readonly number[];
  readonly cpu: readonly number[];
}

const ROUND = 0.01;
const LEAST_ROUNDS = 5;
/** A call of so many seconds is timed once a pass: its noise is small against it. */
const SLOW = 3;
/** Less than this, and the engine's compiler is still at work when the rounds begin. */
const LEAST_WARMING = 0.15;

/** A call that compiles a network runs through so much code that the engine takes this long over it. Cold is the network, not the engine. */
export const COMPILING = 1.5;

/**
 * Times a call in rounds of at least 10 ms for so many seconds, after it was warmed up: by the processor's clock, since on a
 * busy machine the compiler of the engine gets as little of it as the row does.
 */
async function measure(call: () => unknown, seconds: number, warming: number): Promise<Rounds> {
  const now = () => performance.now() / 1e3;
  const begun = now();
  const cold = () => {
    const { user, system } = process.cpuUsage(atBegin);
    return (user + system) / 1e6 < warming && now() < begun + 8 * warming;
  };
  const atBegin = process.cpuUsage();
  let took = 0;
  let count = 1;
  // The first loop of calls also finds how many make a round.
  do {
    const start = now();
    for (let i = 0; i < count; i++) {
      const pending = call();
      if (pending instanceof Promise) await pending;
    }
    took = now() - start;
    if (took < ROUND) count *= 2;
  } while (cold() || took < ROUND);
  const wall: number[] = [];
  const cpu: number[] = [];
  const end = now() + seconds;
  while (now() < end || wall.length < (took < SLOW ? LEAST_ROUNDS : 1)) {
    const used = process.cpuUsage();
    const start = now();
    for (let i = 0; i < count; i++) {
      const pending = call();
      if (pending instanceof Promise) await pending;
    }
    wall.push((now() - start) / count);
    const { user, system } = process.cpuUsage(used);
    cpu.push((user + system) / 1e6 / count);
  }
  return { wall, cpu };
}

/** A row's work: prepares, and gives back the call that is timed, how many units it handles, how long it warms up at least, and whether another process does it. */
export type Work = () => {
  readonly call: () => unknown;
  readonly per?: number;
  readonly warming?: number;
  readonly elsewhere?: true;
};

/** Runs the row that the command line names, and prints its rounds: each row has a process of its own. */
export async function runRow(works: Readonly<Record<string, Work>>): Promise<void> {
  const [name = '', seconds = '1'] = process.argv.slice(2);
  const work = works[name];
  if (work === undefined) throw new Error(`no row '${name}'`);
  const { call, per = 1, warming = LEAST_WARMING, elsewhere } = work();
  const { wall, cpu } = await measure(call, Number(seconds), Math.max(warming, Number(seconds) / 4));
  console.log(JSON.stringify({ wall: wall.map((t) => t / per), cpu: elsewhere ? [] : cpu.map((t) => t / per) }));
}
