type Script = 'sweep' | 'network' | 'search' | 'brief' | 'design' | 'workers' | 'transient' | 'workshop';
export type PeerName = 'c' | 'simd' | 'numpy' | 'scipy' | 'motion';

/** Where a row's rounds come from: a script of rows/ in a process of its own, or a peer in another language. */
export type Origin =
  | { readonly script: Script; readonly row: string }
  | { readonly peer: PeerName; readonly words: readonly string[] };

export interface Line {
  readonly id: string;
  readonly what: string;
  readonly origin: Origin;
  /** Unit of what is printed; `/s` is a rate: units handled a second. */
  readonly unit: 'ns' | 'µs' | 'ms' | '/s';
  /** The row whose time this row's time is divided by. */
  readonly against?: string;
  readonly goal?: { readonly of: 'ratio' | 'value'; readonly most?: number; readonly least?: number };
  /** Left out of a quick run. */
  readonly long?: true;
}

export interface Group {
  /** What `--group` calls it. */
  readonly name: string;
  readonly title: string;
  readonly lines: readonly Line[];
}

type More = Pick<Line, 'against' | 'goal' | 'long'>;
const own =
  (script: Script) =>
  (row: string, what: string, unit: Line['unit'], more: More = {}): Line => ({
    id: row,
    what,
    origin: { script, row },
    unit,
    ...more,
  });
const outside = (id: string, what: string, peer: PeerName, words: readonly string[], more: More): Line => ({
  id,
  what,
  origin: { peer, words },
  unit: 'µs',
  ...more,
});
const sweep = own('sweep');
const network = own('network');
const search = own('search');
const brief = own('brief');
const design = own('design');
const workers = own('workers');
const transient = own('transient');
const workshop = own('workshop');
/** A goal of one row by itself, in its unit. */
const within = (most: number) => ({ goal: { of: 'value', most } as const });
const atMost = (most: number) => ({ goal: { of: 'ratio', most } as const });
/** So many seconds of sound a second. */
const asFast = (least: number) => ({ goal: { of: 'value', least } as const });
const atLeast = (least: number) => ({ goal: { of: 'ratio', least } as const });

/** Counts of frequencies and of chain elements. */
const COUNTS = [100, 1000, 10_000, 100_000, 1_000_000];
const CHAINS = [10, 20, 50, 100];
/** Time an element may grow by from the shortest chain to the longest and still count as linear. */
const LINEAR = 1.3;
/** Share of the time of one worker in which two of them do the same work. */
const NEAR_LINEAR = 0.6;

export const table: readonly Group[] = [
  {
    name: 'sweep',
    title: 'Sweep of a vented box, 500 frequencies, column set A (four complex columns)',
    lines: [
      outside('c-A', 'C -O2, the same passes', 'c', ['A'], { against: 'ours-A' }),
      sweep('ours-A', 'ours: polynomials, compiled once', 'µs', { against: 'c-A', ...atMost(1.25) }),
      sweep('wasm-A', 'ours in WebAssembly SIMD, columns copied in and out', 'µs', { against: 'c-A', ...atMost(0.65) }),
      sweep('wasm-made', 'that kernel made, once a program', 'µs'),
      outside('c-F', 'C -O2, the same arithmetic in one pass', 'c', ['F'], { against: 'ours-A' }),
      outside('simd-A', 'C -O3 in vectors, the same passes', 'simd', ['A'], { against: 'ours-A' }),
      outside('numpy-algebra-A', 'numpy with our algebra', 'numpy', ['algebra', 'A'], {
        against: 'ours-A',
        ...atLeast(2),
      }),
      outside('numpy-usual-A', 'numpy as usually written', 'numpy', ['usual', 'A'], {
        against: 'ours-A',
        ...atLeast(3),
      }),
      sweep('plan-A', 'ours: elimination plan, compiled once', 'µs', { against: 'ours-A', ...atMost(8) }),
      sweep('naive-A', 'TypeScript, an object a complex number', 'µs', { against: 'ours-A' }),
      sweep('simulator-A', 'circuit simulator, netlist to columns', 'µs', { against: 'ours-A' }),
    ],
  },
  {
    name: 'response',
    title: 'The same, column set B (seven real columns)',
    lines: [
      outside('c-B', 'C -O2', 'c', ['B'], { against: 'B-compiled' }),
      sweep('B-compiled', 'ours: the kernel of respond, compiled once, columns handed in', 'µs', {
        against: 'c-B',
        ...atMost(2),
      }),
      sweep('B-again', 'ours: respond, the same system again', 'µs', { against: 'c-B', ...atMost(3.5) }),
      sweep('B-cold', 'ours: the box made, compiled and swept by respond', 'µs', { against: 'c-B', ...atMost(8) }),
      sweep('ours-B-complex', 'ours: the five complex columns under it', 'µs', { against: 'B-compiled' }),
      outside('simd-B', 'C -O3 in vectors', 'simd', ['B'], { against: 'B-compiled' }),
      outside('numpy-algebra-B', 'numpy with our algebra', 'numpy', ['algebra', 'B'], { against: 'B-compiled' }),
      outside('numpy-usual-B', 'numpy as usually written, delay by differences', 'numpy', ['usual', 'B'], {
        against: 'B-compiled',
      }),
      sweep('naive-B', 'TypeScript, an object a complex number', 'µs', { against: 'B-compiled' }),
    ],
  },
  {
    name: 'frequencies',
    title: 'Cost of one frequency against their count, column set A',
    lines: (['ours', 'plan'] as const).flatMap((form) =>
      COUNTS.map((count) =>
        sweep(
          `${form}-${count}`,
          `${form === 'ours' ? 'polynomials' : 'elimination plan'}, ${count} frequencies`,
          'ns',
          {
            ...(count > 100 && { against: `${form}-100` }),
            ...(count >= 1_000_000 && { long: true as const }),
          },
        ),
      ),
    ),
  },
  {
    name: 'chain',
    title: 'Elimination plan against the elements of a chain: time an element',
    lines: [
      ...CHAINS.map((count) =>
        network(`chain-${count}`, `sweep of 500 frequencies, ${count} elements`, 'ns', {
          ...(count > 10 && { against: 'chain-10', ...atMost(LINEAR) }),
        }),
      ),
      ...CHAINS.map((count) =>
        network(
          `chain-plan-${count}`,
          `compilePlan, ${count} elements`,
          'ns',
          count > 10 ? { against: 'chain-plan-10' } : {},
        ),
      ),
    ],
  },
  {
    name: 'compile',
    title: 'Compiling, once a topology or once a box',
    lines: [
      network('topology-closed', 'compilePolynomials of a closed box', 'µs'),
      network('topology-vented', 'compilePolynomials of a vented box with three losses', 'µs'),
      network('plan-vented', 'compilePlan of the same', 'µs'),
      network('coefficients', 'coefficients of the next such box', 'µs'),
      network('compile-2-chambers', 'compile of two vented chambers', 'µs', { against: 'c-B', ...atMost(40) }),
      network('compile-3-chambers', 'compile of three vented chambers', 'µs', { against: 'c-B', ...atMost(40) }),
    ],
  },
  {
    name: 'questions',
    title: 'What is asked of a box, compiled before; the coil with eddy currents against the plain one',
    lines: [
      network('features', 'features', 'µs', { against: 'c-B', ...atMost(12) }),
      network('safe-frequency', 'lowestSafeFrequency for a travel limit', 'µs', { against: 'c-B', ...atMost(6) }),
      network('plain-sweep', 'sweep of 500 frequencies, all probes', 'µs'),
      network('coils-sweep', 'the same with two lossy coils', 'µs', { against: 'plain-sweep', ...atMost(3) }),
      network('coils-features', 'features with two lossy coils', 'µs', { against: 'features', ...atMost(3) }),
      network('coils-safe-frequency', 'lowestSafeFrequency with two lossy coils', 'µs', {
        against: 'safe-frequency',
        ...atMost(3),
      }),
    ],
  },
  {
    name: 'gradient',
    title:
      'Gradient of one result by all elements; a sweep is the elimination plan over as many frequencies, all probes',
    lines: [
      network('sweep-500', 'sweep of 500 frequencies', 'µs'),
      network('gradient-500', 'gradient of a probe at each of 500', 'µs', { against: 'sweep-500', ...atMost(4) }),
      network('sweep-1', 'sweep of one frequency', 'µs'),
      network('gradient-1', 'gradient of a probe at one frequency', 'µs', { against: 'sweep-1', ...atMost(4) }),
      network('sweep-door', 'plan compiled, one frequency swept', 'µs'),
      network('gradient-door', 'levelGradient, from the system', 'µs', { against: 'sweep-door', ...atMost(4) }),
      network('cutoff', 'cutoff', 'µs'),
      network('gradient-cutoff', 'cutoffGradient, its cutoff included', 'µs', { against: 'cutoff' }),
      network('sensitivity', 'sensitivity of the level by five inputs', 'µs', { against: 'gradient-door' }),
    ],
  },
  {
    name: 'search',
    title: 'Search, one core: candidates of the whale bench, all judged, none cut short',
    lines: [
      search('candidate', 'as the search judges: 64 frequencies, cut-off, limits, vent length, fit', '/s', {
        goal: { of: 'value', least: 200_000 },
      }),
      search('letter', 'the same by four real columns at all 64 frequencies, level in dB', '/s', {
        goal: { of: 'value', least: 100_000 },
      }),
      search('demand', 'of it: coefficients, sweep, cut-off, limits', '/s'),
      search('fit', 'of it: vent length, outer size, fit', '/s'),
      search('explore', 'the search itself: a brief to the best box of each leaning', '/s'),
    ],
  },
  {
    name: 'design',
    title:
      'Of a whole design: an alignment, 10,000 builds at 200 frequencies, a map of 100 × 100 vents, compression of a vent',
    lines: [
      design('alignment', 'QB3 of a driver: volume, tuning and parameter', 'µs', within(50)),
      outside('scipy-alignment', 'scipy, fsolve on the printed equations', 'scipy', ['alignment'], {
        against: 'alignment',
      }),
      design('alignment-whole', 'solveAlignment: every box, its deviation and f3', 'µs', within(300)),
      design('builds', 'builds: level at 200 frequencies and f3 of 10,000', 'ms', within(500)),
      outside('numpy-builds', 'numpy, arrays over the builds', 'scipy', ['builds'], { against: 'builds' }),
      design('map', 'ventMap', 'ms', within(1500)),
      outside('numpy-map', 'numpy, arrays over the cells; room without the driver', 'scipy', ['map'], {
        against: 'map',
      }),
      design('compression', 'compileAtLevel: 100 levels at 200 frequencies', 'ms', within(300)),
    ],
  },
  {
    name: 'transient',
    title: 'Time simulation at 48 kHz, one core: seconds of sound a second, the vented box at 30 and 100 Hz',
    lines: [
      transient('linear-1', 'linear, pressure', '/s', asFast(1500)),
      transient('linear-4', 'linear: pressure, travel, air speed, current', '/s', asFast(400)),
      transient('nonlinear', 'Bl(x), stiffness, vent: pressure', '/s', asFast(120)),
      transient('nonlinear-4', 'the same: pressure, travel, air speed, current', '/s'),
      transient('everything', 'Le(x), heat and stop too: these four', '/s', asFast(60)),
      transient('oversampled', 'Bl(x), stiffness, vent, four steps a sample, filtered: pressure', '/s', asFast(30)),
      transient('oversampled-4', 'the same: these four', '/s'),
      {
        ...outside('scipy-motion', 'scipy, LSODA at 1e-6: Bl(x), stiffness, vent', 'motion', [], {
          against: 'nonlinear',
        }),
        unit: '/s',
      },
      transient(
        'timeline',
        'timeline of five minutes of music, limits and onsets judged: seconds of sound a second',
        '/s',
        {
          ...asFast(50),
        },
      ),
      transient('circuit', 'circuit simulator, steps of 20.8 µs: the same', '/s', { against: 'nonlinear', long: true }),
    ],
  },
  {
    name: 'workshop',
    title: 'From numbers to wood and plastic, one core',
    lines: [
      workshop('vent-solid', 'a flared and bent vent as a solid, of the usual fineness', 'ms', within(300)),
      workshop('triangles', 'a vent of 200,000 triangles: made, judged, written as STL', 'ms', within(1000)),
      workshop('nest', '40 panels on sheets, cut from edge to edge', 'ms', within(30)),
      workshop('packer', 'maxrects-packer: one order, and no cuts from edge to edge', 'ms', { against: 'nest' }),
      workshop('dossier', 'whale bench, process started to folder written', 'ms', within(3000)),
      workshop(
        'dossier-worker',
        'the same as one archive, in a worker as on the page: started to received',
        'ms',
        within(3000),
      ),
    ],
  },
  {
    name: 'workers',
    title: 'Shared among workers of Node, by the clock: two cores at best halve it',
    lines: [
      workers('builds-1', '10,000 builds of the whale bench in one worker', 'ms'),
      workers('builds-2', 'in two workers', 'ms', { against: 'builds-1', ...atMost(NEAR_LINEAR) }),
      workers('front-1', 'tradeOffs at eight lowest tones in one worker', 'ms'),
      workers('front-2', 'in two workers', 'ms', { against: 'front-1', ...atMost(NEAR_LINEAR) }),
    ],
  },
  {
    name: 'brief',
    title: 'The whole brief',
    lines: [
      brief('cold-whale-bench', 'whale bench, process started to report printed', 'ms', {
        goal: { of: 'value', most: 450 },
      }),
      brief('warm-whale-bench', 'whale bench, warm', 'ms', { goal: { of: 'value', most: 1000 } }),
      brief('cold-every-kind', 'the same, every kind of box allowed', 'ms', { goal: { of: 'value', most: 1500 } }),
      brief('cold-impossible-bench', 'impossible bench, a brief that is refused', 'ms', {
        goal: { of: 'value', most: 1000 },
      }),
      brief('cold-ten-drivers', 'ten drivers, each in three wirings, at 112 dB', 'ms', {
        long: true,
        goal: { of: 'value', most: 4000 },
      }),
      brief('cold-fog-horn', 'fog horn, band-pass boxes of fourth and sixth order among others', 'ms', {
        goal: { of: 'value', most: 1500 },
      }),
      brief('cold-classroom-organ-pipe', 'classroom organ pipe, a line that is folded up to twice and filled', 'ms', {
        goal: { of: 'value', most: 2000 },
      }),
      ...['campfire-box', 'puppet-thunder'].flatMap((name) => [
        brief(`cold-${name}`, `${name.replace('-', ' ')}, process started to report printed`, 'ms', { long: true }),
        brief(`warm-${name}`, `${name.replace('-', ' ')}, warm`, 'ms', { long: true }),
      ]),
      brief('warm-impossible-bench', 'impossible bench, warm', 'ms', { long: true }),
      ...(['cold', 'warm'] as const).flatMap((start) => [
        brief(`${start}-quiet-campfire-box`, `campfire box with a quiet vent as a wish, ${start}`, 'ms', {
          against: `${start}-campfire-box`,
          ...atMost(1.5),
          long: true,
        }),
        brief(
          `${start}-quiet-whale-bench`,
          `whale bench with a wish for a quiet vent that is refused, ${start}`,
          'ms',
          {
            against: `${start}-whale-bench`,
            ...atMost(1.5),
            long: true,
          },
        ),
      ]),
    ],
  },
];
