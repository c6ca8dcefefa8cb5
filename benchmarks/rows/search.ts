import { readFileSync } from 'node:fs';
import { readBrief } from '../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../packages/airspring/src/brief/standard-models.js';
import type { Variant } from '../../packages/airspring/src/kind/box-kind.js';
import { standard } from '../../packages/airspring/src/kind/standard.js';
import { WITHIN } from '../../packages/airspring/src/search/axis.js';
import { judge } from '../../packages/airspring/src/search/box.js';
import { compileDemand } from '../../packages/airspring/src/search/compiled-demand.js';
import { costByPoints } from '../../packages/airspring/src/search/cost.js';
import { emptyDemand } from '../../packages/airspring/src/search/demand.js';
import { explore } from '../../packages/airspring/src/search/explore.js';
import { leanings } from '../../packages/airspring/src/search/points.js';
import { searchOf } from '../../packages/airspring/src/search/search.js';
import { edgesOf, shapesFor } from '../../packages/airspring/src/search/shapes.js';
import { compile } from '../../packages/core/src/network/index.js';
import { type ComplexColumn, complexColumn } from '../../packages/core/src/numeric/index.js';
import { levelColumn } from '../../packages/core/src/response/index.js';
import { runRow } from '../measure.js';

const brief = JSON.parse(readFileSync('packages/airspring/briefs/whale-bench.json', 'utf8'));
const search = searchOf(readBrief(brief, standard), { kinds: standard, models: standardModels });
const { job, wishes } = search;
const vented = search.variants.find(({ geometric }) => geometric.length > 0);
if (vented === undefined) throw new Error('no variant with a vent');
const variant: Variant = vented;
const [axis] = variant.geometric;
const bores = Array.from(
  { length: 16 },
  (_, i) => (axis?.from ?? 0) * ((axis?.to ?? 0) / (axis?.from ?? 1)) ** (i / 15),
);

/** Boxes spread evenly over 15 to 60 L and 15 to 60 Hz, in an order without a pattern that a cache would like. */
const CANDIDATES = 1024;
const candidates = Array.from({ length: CANDIDATES }, (_, i) => [
  0.015 * 4 ** ((i * Math.SQRT2) % 1),
  15 * 4 ** ((i * Math.E) % 1),
  bores[(i * 7) % bores.length]!,
]);
type Candidate = readonly number[];

const t = 2 * job.space.panelThickness;
const inner = new Float64Array(3);
const edges = new Float64Array(3);
const excess = new Float64Array(wishes.list.length);
const demand = emptyDemand(variant);
const criteria = { depth: 0, level: 0, volume: 0, effort: 0 };
const parts = { extent: 0, taken: 0, effort: 0 };
const shapes = shapesFor(job, false);
const cost = costByPoints(job, job.weights);
let kept = 0;

/** Vent length, outer size of one shape, whether the vent fits between those edges. */
function fits(point: Candidate): boolean {
  if (!variant.parts(point, parts)) return false;
  const volume = point[0]! + variant.contents + parts.taken;
  if (!edgesOf(shapes[0] as (typeof shapes)[number], variant.least, volume, inner)) return false;
  for (let side = 0; side < 3; side++) edges[side] = inner[side]! + t;
  criteria.volume = edges[0]! * edges[1]! * edges[2]!;
  criteria.effort = parts.effort;
  wishes.size(edges, excess);
  return parts.extent <= variant.room(inner[0]!, inner[1]!, inner[2]!, point);
}

/** All limits, and the cost of what they leave. */
function weigh(point: Candidate): void {
  judge(job, wishes, variant, point, demand, criteria, excess);
  kept += cost.of(excess, criteria);
}

const all = (each: (candidate: Candidate) => void) => ({
  call: () => {
    for (const candidate of candidates) each(candidate);
    if (Number.isNaN(kept)) throw new Error('not a number');
  },
  per: CANDIDATES,
});

const POINTS = 64;

const size = ({ re, im }: ComplexColumn, i: number): number => Math.sqrt(re[i]! * re[i]! + im[i]! * im[i]!);

/** To the letter of the goal: coefficients, 64 frequencies in four complex columns, then four real columns, then their limits. */
function letter() {
  const { network, air } = variant.system([0.05, 30, 1]);
  const { slots, network: made } = compile(network.topology);
  const values = new Float64Array(slots.size);
  const fill = (point: readonly number[]) => {
    variant.values(point, (name, value) => {
      values[slots.of.get(name)?.at as number] = value as number;
    });
    return values;
  };
  const { probes, load, sweep } = made(fill([0.05, 30, 1]));
  const columns = probes.map(() => complexColumn(POINTS));
  const named = (name: string) => columns[probes.indexOf(name)] as (typeof columns)[number];
  const [flow, velocity, current, terminals, speed] = [
    named('radiatedFlow'),
    named('coneVelocity'),
    named('current'),
    named('terminalVoltage'),
    named('ventAirSpeed'),
  ];
  const { lowest, highest } = job.wanted;
  const grid = Float64Array.from(
    { length: POINTS },
    (_, i) => (lowest / 2) * ((2 * highest) / lowest) ** (i / (POINTS - 1)),
  );
  const [level, travel, airSpeed, impedance] = [0, 1, 2, 3].map(() => new Float64Array(POINTS)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return ([netVolume, fb, bore]: Candidate) => {
    const area = (Math.PI / 4) * (bore as number) ** 2;
    load(fill([netVolume as number, fb as number, bore as number]));
    sweep(grid, columns);
    levelColumn(grid, flow, air.density, 1, level);
    let [mostTravel, mostSpeed, mostCurrent, mostDrive] = [0, 0, 0, 0];
    let cutoff = 0;
    for (let i = POINTS - 1; i >= 0; i--) {
      const f = grid[i]!;
      const c = size(current, i);
      travel[i] = (Math.SQRT2 * size(velocity, i)) / (2 * Math.PI * f);
      airSpeed[i] = (Math.SQRT2 * size(speed, i)) / area;
      impedance[i] = size(terminals, i) / c;
      const drive = 10 ** ((job.wanted.level - level[i]!) / 20);
      if (cutoff === 0 && level[i]! < level[POINTS - 1]! - job.wanted.fall) cutoff = f;
      if (f < lowest) continue;
      mostTravel = Math.max(mostTravel, drive * travel[i]!);
      mostSpeed = Math.max(mostSpeed, drive * airSpeed[i]!);
      mostCurrent = Math.max(mostCurrent, drive * c);
      mostDrive = Math.max(mostDrive, drive);
    }
    const { Xmax = Infinity, Pe = Infinity, Re } = variant.choice.drivers.equivalent;
    demand.cutoff = cutoff;
    demand.depth = cutoff;
    demand.travel = mostTravel / Xmax;
    demand.heat = mostCurrent * Math.sqrt(Re / Pe);
    demand.current = mostCurrent;
    demand.voltage = mostDrive;
    demand.loads[0] = mostSpeed * area;
  };
}

const costs = leanings(job).map(({ weights }) => costByPoints(job, weights));

await runRow({
  candidate: () => {
    const at = compileDemand(job, variant);
    return all((candidate) => {
      at(candidate, demand);
      if (fits(candidate)) kept++;
      weigh(candidate);
    });
  },
  letter: () => {
    const sweep = letter();
    return all((candidate) => {
      sweep(candidate);
      if (fits(candidate)) kept++;
      weigh(candidate);
    });
  },
  demand: () => {
    const at = compileDemand(job, variant);
    return all((candidate) => at(candidate, demand));
  },
  fit: () =>
    all((candidate) => {
      if (fits(candidate)) kept++;
    }),
  explore: () => ({ call: () => explore(search, costs, WITHIN), per: 1 }),
});
