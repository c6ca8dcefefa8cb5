import { readFileSync } from 'node:fs';
import { printedWidth } from '../../packages/airspring/src/box/build.js';
import { compileGeometry, compileVentLength, tubeArea, ventBody } from '../../packages/airspring/src/box/candidate.js';
import { compileDemand, emptyDemand } from '../../packages/airspring/src/box/demand.js';
import { readBrief } from '../../packages/airspring/src/brief/read.js';
import { costByPoints } from '../../packages/airspring/src/search/cost.js';
import { explore } from '../../packages/airspring/src/search/explore.js';
import { leanings, points, sizeExcess, soundExcess, wishes } from '../../packages/airspring/src/search/wishes.js';
import { setVentedAir } from '../../packages/core/src/enclosure/vented-box.js';
import { compile, valuesOf } from '../../packages/core/src/network/index.js';
import { type ComplexColumn, complexColumn } from '../../packages/core/src/numeric/index.js';
import { levelColumn } from '../../packages/core/src/response/index.js';
import { runRow } from '../measure.js';

const job = readBrief(JSON.parse(readFileSync('packages/airspring/briefs/whale-bench.json', 'utf8')));
const offer = job.offers[0];
if (offer === undefined) throw new Error('no driver');
const kin = { offer, family: 'vented', shape: 'depth', vents: 1 } as const;
const geometry = compileGeometry(job, kin);
const t = job.space.panelThickness;

const bores = Array.from({ length: 16 }, (_, i) => {
  const diameter = job.vent.smallest * (job.vent.largest / job.vent.smallest) ** (i / 15);
  const body = ventBody(job, diameter);
  const length = compileVentLength(job, 1, diameter);
  return {
    diameter,
    body,
    length,
    area: (Math.PI * diameter ** 2) / 4,
    taken: tubeArea(body, 1),
    printed: printedWidth(body),
  };
});

/** Boxes spread evenly over 15 to 60 L and 15 to 60 Hz, in an order without a pattern that a cache would like. */
const CANDIDATES = 1024;
const candidates = Array.from({ length: CANDIDATES }, (_, i) => ({
  netVolume: 0.015 * 4 ** ((i * Math.SQRT2) % 1),
  fb: 15 * 4 ** ((i * Math.E) % 1),
  bore: bores[(i * 7) % bores.length] as (typeof bores)[number],
}));
type Candidate = (typeof candidates)[number];

const edges = new Float64Array(3);
const excess = new Float64Array(wishes.length);
const demand = emptyDemand();
const criteria = { cutoff: 0, level: 0, volume: 0, ventLength: 0 };
const cost = costByPoints((found) => points(job, job.weights, found));
let kept = 0;

/** Vent length, outer size, whether the vent fits between those edges. */
function fits({ netVolume, fb, bore }: Candidate): boolean {
  const ventLength = bore.length(netVolume, fb);
  geometry.size(netVolume, geometry.contents + bore.taken * Math.max(0, ventLength - t), edges);
  criteria.volume = (edges[0] as number) * (edges[1] as number) * (edges[2] as number);
  criteria.ventLength = ventLength;
  const longest = geometry.longestVent(edges, bore.body);
  sizeExcess(job, edges, bore.diameter, bore.printed, excess);
  return ventLength > t && ventLength <= longest;
}

/** All limits, and the cost of what they leave. */
function judge({ bore }: Candidate): void {
  criteria.level = soundExcess(job, demand, bore.area, excess);
  criteria.cutoff = demand.cutoff;
  kept += cost(excess, criteria);
}

const all = (each: (candidate: Candidate) => void) => ({
  call: () => {
    for (const candidate of candidates) each(candidate);
    if (Number.isNaN(kept)) throw new Error('not a number');
  },
  per: CANDIDATES,
});

const POINTS = 64;

const size = ({ re, im }: ComplexColumn, i: number): number =>
  Math.sqrt((re[i] as number) * (re[i] as number) + (im[i] as number) * (im[i] as number));

/** To the letter of the goal: coefficients, 64 frequencies in four complex columns, then four real columns, then their limits. */
function letter() {
  const { network, air } = compileDemand(job, offer as NonNullable<typeof offer>, 'vented').system(0.05, 30);
  const { slots, probes, network: made } = compile(network.topology);
  const values = valuesOf(slots, network.values);
  const { load, sweep } = made(values);
  const set = (name: string, value = 0) => {
    values[slots.of.get(name)?.at ?? -1] = value;
  };
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
  return ({ netVolume, fb, bore }: Candidate) => {
    setVentedAir({ netVolume, fb, ...job.losses }, air, set);
    load(values);
    sweep(grid, columns);
    levelColumn(grid, flow, air.density, 1, level);
    let [mostTravel, mostSpeed, mostCurrent, mostDrive] = [0, 0, 0, 0];
    let cutoff = 0;
    for (let i = POINTS - 1; i >= 0; i--) {
      const f = grid[i] as number;
      const c = size(current, i);
      travel[i] = (Math.SQRT2 * size(velocity, i)) / (2 * Math.PI * f);
      airSpeed[i] = (Math.SQRT2 * size(speed, i)) / bore.area;
      impedance[i] = size(terminals, i) / c;
      const drive = 10 ** ((job.wanted.level - (level[i] as number)) / 20);
      if (cutoff === 0 && (level[i] as number) < (level[POINTS - 1] as number) - job.wanted.fall) cutoff = f;
      if (f < lowest) continue;
      mostTravel = Math.max(mostTravel, drive * (travel[i] as number));
      mostSpeed = Math.max(mostSpeed, drive * (airSpeed[i] as number));
      mostCurrent = Math.max(mostCurrent, drive * c);
      mostDrive = Math.max(mostDrive, drive);
    }
    const { Xmax = Infinity, Pe = Infinity, Re } = (offer as NonNullable<typeof offer>).drivers.equivalent;
    demand.cutoff = cutoff;
    demand.travel = mostTravel / Xmax;
    demand.heat = mostCurrent * Math.sqrt(Re / Pe);
    demand.current = mostCurrent;
    demand.voltage = mostDrive;
    demand.ventFlow = mostSpeed * bore.area;
  };
}

const costs = leanings(job).map((weights) => costByPoints((found) => points(job, weights, found)));
const reach = { volume: 1, diameter: 1, step: 1 };

await runRow({
  candidate: () => {
    const { at } = compileDemand(job, offer, 'vented');
    return all((candidate) => {
      at(candidate.netVolume, candidate.fb, demand);
      if (fits(candidate)) kept++;
      judge(candidate);
    });
  },
  letter: () => {
    const sweep = letter();
    return all((candidate) => {
      sweep(candidate);
      if (fits(candidate)) kept++;
      judge(candidate);
    });
  },
  demand: () => {
    const { at } = compileDemand(job, offer, 'vented');
    return all(({ netVolume, fb }) => at(netVolume, fb, demand));
  },
  fit: () =>
    all((candidate) => {
      if (fits(candidate)) kept++;
    }),
  explore: () => {
    let visited = 0;
    explore(job, costs, reach, () => visited++);
    return { call: () => explore(job, costs, reach), per: visited };
  },
});
