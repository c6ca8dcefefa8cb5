import { flanged, mutualLength } from '@airspring/core/duct';
import {
  airSpeedLimit,
  currentLimit,
  greatestLevel,
  heatLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, referenceLevel, respond } from '@airspring/core/response';
import type { Solid } from '@airspring/core/space';
import { tuning, type VentInput } from '@airspring/core/vent';
import { type Brief, type Design, design, reportText, standard } from 'airspring';
import { describe, expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import { metBy } from '../../../packages/airspring/src/design.js';
import type { PlacedBoard } from '../../../packages/airspring/src/kind/build-record.js';
import { endsInRow } from '../../../packages/airspring/src/kind/row-of-vents.js';
import { anyBox, bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { balanced, bestOf, demo, demoRadiator, metByWeights, possible, searchFor } from '../../arbitrary/brief.js';
import { pathsOf } from '../../refusal/faults.js';

const slot = (fields: object): Brief => ({ ...demo, box: { kinds: ['slot-vented'] }, slot: fields }) as Brief;
const flared = (flare: object, vent: object = {}): Brief =>
  ({ ...demo, box: { kinds: ['flared-vented'] }, flare, vent: { ...demo.vent, ...vent } }) as Brief;

/** A brief for each form of vent, and how the report calls it. */
const cases: readonly (readonly [string, Brief, string, string])[] = [
  ['a slot from side to side', slot({ smallest: '18 mm' }), 'slot-vented', 'left and right panels serve as boards'],
  ['a free slot', slot({ width: '180 mm', along: ['none'], wall: '10 mm' }), 'slot-vented', 'It stands alone'],
  ['a slot along one panel', slot({ width: '180 mm', along: ['one'] }), 'slot-vented', 'panel serves as one'],
  ['a slot in a corner', slot({ width: '180 mm', along: ['two'], bends: 0 }), 'slot-vented', 'panels serve as boards'],
  ['flared tubes', flared({ inner: '20 mm', outer: '12 mm' }), 'flared-vented', 'quarter round of 20 mm radius'],
  [
    'two flared tubes',
    flared({ inner: '0 mm' }, { counts: [2], smallest: '30 mm' }),
    'flared-vented',
    'is not rounded',
  ],
  [
    'four tubes in a row',
    {
      ...demo,
      box: { kinds: ['vented'] },
      space: { ...demo.space, width: '620 mm' },
      vent: { ...demo.vent, smallest: '25 mm', counts: [4], airSpeed: '17 m/s' },
    },
    'vented',
    'The vents stand in a row.',
  ],
];

type Vec = readonly [number, number, number];
function inside(p: Vec, { form, axis, least, greatest }: Solid): boolean {
  if (!p.every((x, k) => x > least[k]! + 1e-6 && x < greatest[k]! - 1e-6)) return false;
  if (form === 'cuboid') return true;
  const across = [0, 1, 2].filter((k) => 'xyz'[k] !== axis);
  const radius = (greatest[across[0]!]! - least[across[0]!]!) / 2;
  return Math.hypot(...across.map((k) => p[k]! - (least[k]! + greatest[k]!) / 2)) < radius - 1e-6;
}

/** Points spread evenly through a solid, without a pattern. */
const pointsIn = ({ least, greatest }: Solid): Vec[] =>
  Array.from(
    { length: 400 },
    (_, n) =>
      least.map((low, k) => low + (((n + 0.5) * [0.819173, 0.671044, 0.5497][k]!) % 1) * (greatest[k]! - low)) as never,
  );

const ofVent = ({ part }: Solid) => part === 'vent' || part === 'clearance';

/** The answer to a brief, and the best box as the search has it. */
const answerOf = memory((brief: Brief) => {
  const search = searchFor(brief);
  // By the weights of the brief, and the deeper one.
  const boxes = bestBoxes(search, 2);
  const answer = metBy(search, boxes);
  if (answer === undefined) throw new Error('no box stands');
  return { answer, search, box: boxes[0]! };
});

/** The top of the parabola through three points, by Lagrange's formula; the ends stand as they are. */
function topOf(grid: readonly number[], values: readonly number[]): number {
  const top = values.indexOf(Math.max(...values));
  if (top === 0 || top === values.length - 1) return values[top]!;
  const x = [-1, 0, 1].map((d) => Math.log(grid[top + d]! / grid[top]!));
  const [a, b, c] = [-1, 0, 1].map((d) => values[top + d]!) as [number, number, number];
  const [l, , r] = x as [number, number, number];
  const square = a / (l * (l - r)) + b / (l * r) + c / (r * (r - l));
  const slope = (-a * r) / (l * (l - r)) - (b * (l + r)) / (l * r) - (c * l) / (r * (r - l));
  return b - slope ** 2 / (4 * square);
}

describe.each(cases)('%s', { timeout: 60_000 }, (_name, brief, kind, told) => {
  const { answer } = answerOf(brief);
  const t = 0.018;

  test('is searched, and told', () => {
    expect(answer.designs.map((one) => one.kind)).toEqual(answer.designs.map(() => kind));
    const text = reportText(answer);
    expect(text.replace(/\s+/g, ' ')).toContain(told);
    // Tables may be as wide as what stands in them.
    for (const line of text.split('\n')) if (!/ {2,}\S/.test(line)) expect(line.length).toBeLessThanOrEqual(80);
    for (const { box } of answer.designs) {
      expect(box.holes.some(({ what }) => what === 'vent')).toBe(true);
      for (const { length, width } of box.panels) expect(Math.min(length, width)).toBeGreaterThan(0);
    }
  });

  test('stands inside, in nothing else', () => {
    for (const { box } of answer.designs) {
      expect(box.solids.some(({ part }) => part === 'vent')).toBe(true);
      for (const one of box.solids) {
        for (let k = 0; k < 3; k++) {
          expect(one.least[k]!).toBeGreaterThan(t - 1e-9);
          expect(one.greatest[k]!).toBeLessThan(box.outer[k]! - t + 1e-9);
        }
        for (const p of pointsIn(one)) {
          if (!inside(p, one)) continue;
          const other = box.solids.find((two) => two !== one && !(ofVent(one) && ofVent(two)) && inside(p, two));
          expect(other).toBeUndefined();
        }
      }
    }
  });

  test('the boards of a slot stand where they are told: those of the cut list, in its solids, in none of its air, each alone', () => {
    for (const { box, vent } of answer.designs) {
      if (kind !== 'slot-vented') {
        expect(box.placed).toBeUndefined();
        continue;
      }
      expect(vent).toBeUndefined();
      const placed = box.placed!;
      const sorted = (sizes: readonly number[]) =>
        [...sizes].sort((a, b) => b - a).map((size) => (1e3 * size).toFixed(3));
      const sizesOf = ({ least, greatest }: (typeof placed)[number]) =>
        sorted(least.map((from, k) => greatest[k]! - from));
      const cut = box.boards.flatMap(({ count, length, width, thickness = t }) =>
        Array.from({ length: count }, () => sorted([length, width, thickness]).join(' ')),
      );
      expect(placed.map((one) => sizesOf(one).join(' ')).sort()).toEqual(cut.sort());
      const free = placed.some(({ least }) => Math.min(...least) < 1e-9);
      const hole = box.holes.find(({ what }) => what === 'vent')!;
      const air = [hole.across, hole.up, t + 0.01] as const;
      for (const one of placed) {
        const clear = one.least.every((from, k) => from > t - 1e-9 && one.greatest[k]! < box.outer[k]! - t + 1e-9);
        expect(clear || free).toBe(true);
        expect(air.every((at, k) => at > one.least[k]! && at < one.greatest[k]!)).toBe(false);
        const middle = one.least.map((from, k) => Math.max(t + 1e-3, (from + one.greatest[k]!) / 2)) as unknown as Vec;
        expect(box.solids.some((solid) => solid.part === 'vent' && inside(middle, solid))).toBe(true);
        for (const other of placed) {
          if (other === one) continue;
          const overlap = one.least.map(
            (from, k) => Math.min(one.greatest[k]!, other.greatest[k]!) - Math.max(from, other.least[k]!),
          );
          expect(Math.min(...overlap)).toBeLessThan(1e-9);
        }
      }
    }
  });

  test('each hole of a vent lies before its air, and is drawn to scale', () => {
    const [first] = answer.designs as [Design];
    const drawing = boxFigure(first, briefFacts(brief)).draw(640);
    const scale = Number(/M0 0H([\d.]+)/.exec(drawing)![1]) / first.box.outer[0];
    const height = first.box.outer[1];
    for (const hole of first.box.holes) {
      if (hole.what !== 'vent') continue;
      expect(hole.face).toBe('front');
      const behind: Vec = [hole.across, hole.up, t + 1e-3];
      expect(first.box.solids.some((one) => one.part === 'vent' && inside(behind, one))).toBe(true);
      if (hole.form === 'circle') continue;
      const [wide, high] = hole.sides;
      const [left, right] = [hole.across - wide / 2, hole.across + wide / 2];
      const [upper, lower] = [height - hole.up - high / 2, height - hole.up + high / 2];
      const corners = /class="cutout" d="M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)/.exec(drawing)!.slice(1).map(Number);
      // To the tenth of a pixel that is written, and to that of the scale.
      [left, lower, right, upper].forEach((at, i) => expect(Math.abs(corners[i]! - at * scale)).toBeLessThan(0.11));
    }
  });

  test('what the search asks of a box is what its compiled system answers', () => {
    const { search, box } = answerOf(brief);
    const { variant, point } = box;
    const { wanted } = search.job;
    const demand = emptyDemand(variant);
    search.demandOf(variant)(point, demand);
    const system = variant.system(point);
    const equal = (got: number, expected: number) => expect(Math.abs(got / expected - 1)).toBeLessThan(1e-9);
    const at = (grid: readonly number[]) => {
      const columns = respond(system, grid);
      const drive = Array.from(columns.levelHalfSpace, (level) => 10 ** ((wanted.level - level) / 20));
      const by = (column: ArrayLike<number>) => drive.map((volts, i) => volts * column[i]!);
      return { drive, by, columns };
    };
    const below = Array.from({ length: 21 }, (_, i) => (wanted.lowest / 4) * 4 ** (i / 20));
    const run = at(below);
    run.by(run.columns.airSpeedPeak!).forEach((speed, i) => {
      equal(demand.loadsBelow[0]![i]! * variant.loads![0]!.perReading(point), speed);
    });
    const band = Array.from({ length: 44 }, (_, i) => wanted.lowest * (wanted.highest / wanted.lowest) ** (i / 43));
    const { drive, by, columns } = at(band);
    const { Xmax = Number.NaN, Pe = Number.NaN, Re } = variant.choice.drivers.equivalent;
    equal(demand.voltage, topOf(band, drive));
    equal(demand.travel * Xmax, topOf(band, by(columns.displacementPeak)));
    equal(demand.current, topOf(band, by(columns.currentRms)));
    equal(demand.heat, Math.sqrt(Re / Pe) * topOf(band, by(columns.currentRms)));
    equal(demand.loads[0]! * variant.loads![0]!.perReading(point), topOf(band, by(columns.airSpeedPeak!)));
    // The limits of the record are those that the search judges by.
    const speed = search.wishes.list.find(({ path }) => path === 'vent.airSpeed')!.allowed;
    const [limit] = variant.limits(point);
    equal(limit!.greatestRms * Math.SQRT2, speed);
    equal(variant.loads![0]!.capacity(point) * variant.loads![0]!.perReading(point), speed);
  });

  test('keeps every limit, by a finer sweep', () => {
    const { search, box } = answerOf(brief);
    const { wanted, amplifier } = search.job;
    const system = box.variant.system(box.point);
    const { drivers } = box.variant.choice;
    const speed = Number(brief.vent!.airSpeed!.split(' ')[0]);
    const limits = [
      ...travelLimit(drivers),
      ...heatLimit(drivers),
      airSpeedLimit(si('airSpeedRms', speed / Math.SQRT2)),
      voltageLimit(si('voltageRms', amplifier.voltage)),
      currentLimit(si('currentRms', amplifier.current)),
    ];
    const { least } = greatestLevel(system, limits, logarithmicGrid(wanted.lowest, wanted.highest, 1500));
    expect(least.levelHalfSpace).toBeGreaterThanOrEqual(wanted.level - 0.02);
    const found = cutoff(system, {
      drop: wanted.fall,
      from: si('frequency', 3),
      to: si('frequency', wanted.highest),
    });
    expect(found.ok && found.frequency).toBeLessThanOrEqual(wanted.lowest + 0.01);
    const { levelHalfSpace } = respond(system, logarithmicGrid(wanted.lowest / 4, wanted.highest, 1500));
    expect(Math.max(...levelHalfSpace) - referenceLevel(system)).toBeLessThanOrEqual(wanted.rise + 0.02);
    const { width, height, depth, volume } = search.job.space;
    [width, height, depth].forEach((edge, k) => expect(box.edges[k]).toBeLessThanOrEqual(edge + 1e-9));
    expect(box.edges.reduce((product, edge) => product * edge, 1)).toBeLessThanOrEqual(volume + 1e-12);
    for (const one of answer.designs) {
      for (const { path, relative } of one.margins) expect(relative, path).toBeLessThan(1e-3);
    }
  });
});

test('a slot from side to side is exactly as wide as the box inside', () => {
  for (const { box } of answerOf(cases[0]![1]).answer.designs) {
    const hole = box.holes.find(({ what }) => what === 'vent')!;
    expect(hole.form === 'rectangle' && hole.sides[0]).toBeCloseTo(box.inner[0], 9);
    const long = box.panels.filter(({ name }) => name.includes('long board'));
    expect(long.length).toBeGreaterThan(0);
    for (const { width } of long) expect(width).toBeCloseTo(box.inner[0], 9);
    expect(box.panels.filter(({ name }) => name.includes('short board'))).toEqual([]);
  }
});

test('net volume and tuning of a straight slot in a corner are those of its boards', () => {
  const { box, search } = answerOf(cases[3]![1]);
  const [netVolume = 0, fb = 0, height = 0] = box.point;
  const placed = box.variant.place(box.edges, box.point);
  const record = placed.ok ? box.variant.record({ edges: box.edges, point: box.point, fit: placed }) : undefined;
  const boards = record!.boards!;
  const length = boards[0]!.length + 0.018;
  const wood = boards.reduce((sum, board) => sum + board.count * board.length * board.width * 0.018, 0);
  const inner = box.edges.reduce((product, edge) => product * (edge - 0.036), 1);
  const air = 0.18 * height * (length - 0.018);
  expect(netVolume).toBeCloseTo(inner - box.variant.contents - wood - air, 12);
  const vent: VentInput = {
    width: '180 mm',
    height: si('length', height),
    wall: '18 mm',
    along: 'two',
    length: si('length', length),
  };
  const found = tuning({ vent, netVolume: si('volume', netVolume) }, search.job.air);
  expect(found.ok && found.fb).toBeCloseTo(fb, 7);
});

describe.each([
  ['free', cases[1]![1]],
  ['along one panel', cases[2]![1]],
  ['in a corner', slot({ width: '180 mm', along: ['two'] })],
  ['from side to side', cases[0]![1]],
  ['of thin boards, its tuning held', { ...slot({ wall: '9 mm' }), box: { kinds: ['slot-vented'], tuning: '31 Hz' } }],
] as const)('the air that a folded slot leaves: %s', { timeout: 60_000 }, (_name, brief) => {
  const { box, search } = answerOf(brief as Brief);
  const [netVolume = 0, fb = 0] = box.point;
  const placed = box.variant.place(box.edges, box.point);
  if (!placed.ok) throw new Error('it stands');
  const { boards = [], placed: standing = [] } = box.variant.record({
    edges: box.edges,
    point: box.point,
    fit: placed,
  });
  const within = ({ least, greatest }: PlacedBoard) =>
    least.reduce((all, from, k) => all * (greatest[k]! - Math.max(from, k === 2 ? 0.018 : 0)), 1);

  test('is what its boards and the air between them leave', () => {
    const { firstLeg, bend } = placed.placement.vent!;
    if (bend === undefined) throw new Error('it is folded');
    const hole = placed.holes.find(({ part }) => part === 'vent')!;
    // The opening of a free slot is that of its boards.
    const walls = standing.some(({ least }) => Math.min(...least) < 1e-9) ? 2 * boards[0]!.thickness! : 0;
    const sides = hole.form === 'rectangle' ? hole.edges.filter((side) => side > 0).map((side) => side - walls) : [];
    const [short = 0, long = 0] = sides.sort((a, b) => a - b);
    // The first leg ends at the outside of the fold, and the second one begins beside it.
    const air = long * short * (firstLeg - 0.018 + short + bend.secondLeg);
    const wood = standing.reduce((all, one) => all + within(one), 0);
    const inner = box.edges.reduce((product, edge) => product * (edge - 0.036), 1);
    expect(netVolume).toBeCloseTo(inner - box.variant.contents - wood - air, 12);
  });

  test('and the tuning is that of this air', () => {
    const { section, length } = box.variant.openings!(box.point)[0]!;
    const found = tuning(
      { vent: { ...section, length: length! } as VentInput, netVolume: si('volume', netVolume) },
      search.job.air,
    );
    expect(found.ok && found.fb).toBeCloseTo(fb, 6);
  });
});

test('vents in a row act as much longer as their neighbours make them, on the mean', () => {
  const [diameter, pitch] = [0.05, 0.08];
  const pair = (places: number) =>
    mutualLength({ diameter: si('length', diameter), distance: si('length', places * pitch) });
  const { innerEnd, outerEnd } = endsInRow(3, pitch, diameter);
  const alone = flanged({ radius: diameter / 2 }, 0);
  // Of three, each outer one has a neighbour and a second one; the middle one has two neighbours.
  const mean = (2 * (pair(1) + pair(2)) + 2 * pair(1)) / 3;
  expect(outerEnd({ radius: diameter / 2 }, 0) - alone).toBeCloseTo(mean, 12);
  const one = endsInRow(1, pitch, diameter);
  const inner =
    innerEnd({ radius: diameter / 2, wall: 0.003 }, 0) - one.innerEnd({ radius: diameter / 2, wall: 0.003 }, 0);
  expect(inner).toBeCloseTo(mean / 2, 12);
  expect(one.outerEnd).toBe(flanged);
});

test('a row tunes lower than as many vents far apart', () => {
  const { box, search } = answerOf(cases[6]![1]);
  const [netVolume = 0, fb = 0, diameter = 0] = box.point;
  const placed = box.variant.place(box.edges, box.point);
  if (!placed.ok) throw new Error('it stands');
  const { length } = box.variant.record({ edges: box.edges, point: box.point, fit: placed }).vent!;
  const vent = { diameter: si('length', diameter), count: 4, wall: '3 mm', length: si('length', length) } as const;
  const apart = tuning({ vent, netVolume: si('volume', netVolume) }, search.job.air);
  const ratio = apart.ok ? apart.fb / fb : 0;
  expect(ratio).toBeGreaterThan(1.002);
  expect(ratio).toBeLessThan(1.05);
});

describe('what a brief may say', () => {
  const paths = (brief: unknown) => pathsOf(() => design(brief));

  test.each([
    ['slot.along', slot({ along: ['one'] })],
    ['slot.along', slot({ width: 'full', along: ['none'] })],
    ['slot.along[0]', slot({ width: '100 mm', along: ['three'] })],
    ['slot.smallest', slot({ smallest: '60 mm', largest: '40 mm' })],
    ['slot.width', slot({ width: 'wide' })],
    ['vent.faces', { ...slot({ smallest: '20 mm' }), vent: { faces: ['left'] } }],
    ['flare.inner', flared({ inner: '-3 mm' })],
    ['vent.counts[0]', { ...demo, vent: { ...demo.vent, counts: [7] } }],
  ])('%s', (path, brief) => {
    expect(paths(brief)).toEqual([path]);
  });

  test('kinds that are tried only by name leave a brief that names none as it is', { timeout: 30_000 }, () => {
    const named = standard.filter((kind) => 'byName' in kind && kind.byName).map(({ name }) => name);
    expect(named).toContain('slot-vented');
    const few = standard.filter(({ name }) => !named.includes(name));
    expect(metByWeights(demo)).toEqual(balanced(searchFor(demo, few)));
    expect(searchFor(demo).variants.map(({ kind }) => kind.name)).toEqual(['closed', 'vented']);
  });

  test('one more kind never makes the answer worse', { timeout: 180_000 }, () => {
    // One width of vents, and straight ones: kinds add boxes, not sizes.
    const vent = { ...demo.vent, smallest: '70 mm', largest: '70 mm', bends: 0 };
    const few = { ...demo, vent, wanted: { ...demo.wanted, lowest: '40 Hz' } } as Brief;
    const all = {
      ...few,
      radiators: [demoRadiator],
      box: { ...demo.box, kinds: standard.map(({ name }) => name) },
      // One partition stands for those across the other edges.
      partition: { across: ['width'] },
    } as Brief;
    const points = (brief: Brief) => bestOf(brief).points;
    expect(points(all)).toBeGreaterThanOrEqual(points(few) - 1e-9);
  });

  test.each(['30 mm', '60 mm'])(
    'the elbow of a mouth rounded by %s turns around the room that is kept free for it',
    (outer) => {
      const brief = flared({ inner: '0 mm', outer }, { smallest: '60 mm', largest: '60 mm' });
      expect(() => possible(brief)).not.toThrow();
    },
  );

  test('a flange that the printer does not take is a wish that yields', { timeout: 30_000 }, () => {
    const brief = flared({ inner: '0 mm', outer: '40 mm' }, { smallest: '90 mm', largest: '90 mm' });
    const narrow = { ...brief, printer: { height: '200 mm', width: '190 mm' } } as Brief;
    expect(possible(narrow)).toBe(false);
    expect(anyBox(searchFor({ ...narrow, printer: { height: '200 mm', width: '400 mm' } }))).toBeDefined();
  });
});
