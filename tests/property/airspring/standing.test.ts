import { completeDriver, group } from '@airspring/core/driver';
import { closedBox, passiveRadiatorBox, ventedBox } from '@airspring/core/enclosure';
import { butterworthShape, filterLevel, highPass } from '@airspring/core/filter';
import {
  airSpeedLimit,
  greatestLevel,
  heatLimit,
  radiatorTravelLimit,
  travelLimit,
  ventOnsets,
  voltageLimit,
} from '@airspring/core/limit';
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, lowestLoad, referenceLevel, respond } from '@airspring/core/response';
import { type RowDone, retrofit, standard } from 'airspring';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStanding } from '../../../packages/airspring/src/standing/read.js';
import { wayBehind } from '../../../packages/airspring/src/standing/way.js';
import { works } from '../../../packages/airspring/src/standing/work.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { standingBriefs } from '../../arbitrary/standing.js';

/** Each takes most of a second. */
const RUNS = Math.min(200, Math.max(4, Math.ceil(fuzzRuns / 12)));
type Brief = typeof standingBriefs extends fc.Arbitrary<infer T> ? T : never;
const answers = fc
  .sample(standingBriefs, { numRuns: RUNS, seed: 20261337 })
  .map((brief) => ({ brief, answer: retrofit(brief) }));
const number = (text: string): number => Number.parseFloat(text);

/** A row's own box by the public doors of core, from its numbers alone. */
function systemOf({ box }: Pick<RowDone, 'box'>, brief: Brief) {
  const { wirings: _, ...sheet } = brief.drivers[0]!;
  const completed = completeDriver(sheet as never);
  if (!completed.ok) throw new Error('the sheet is whole');
  const drivers = group(completed.driver, box.wiring);
  const common = { drivers, netVolume: `${box.netVolume} m³`, sourceResistance: '0.05 Ω' } as const;
  const limits = [...travelLimit(drivers), ...heatLimit(drivers), voltageLimit('20 V')];
  if (box.radiator) {
    const { counts: _c, ...radiator } = { counts: 1, ...brief.radiators[0]! };
    const { count, addedMass } = box.radiator;
    const system = passiveRadiatorBox({ ...common, radiator, count, addedMass: `${addedMass} kg`, QL: 7 } as never);
    return { system, limits: [...limits, ...radiatorTravelLimit(radiator as never)] };
  }
  if (box.fb === undefined) return { system: closedBox(common as never), limits };
  const system = ventedBox({ ...common, fb: `${box.fb} Hz`, ventArea: `${box.ventArea} m²`, QL: 7 } as never);
  return { system, limits: [...limits, airSpeedLimit(`${17 / Math.SQRT2} m/s`)] };
}

const near = (got: number, expected: number, within = 1e-9) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(within * Math.abs(expected));
const slotOf = ({ width, height }: NonNullable<RowDone['box']['slot']>) => ({
  width: si('length', width),
  height: si('length', height),
});
type Tube = RowDone['box']['tubes'][number];
const isNew = ({ tubes }: RowDone['box'], { diameter, length }: Tube): boolean =>
  !tubes.some((one) => one.diameter === diameter && one.length === length);

type Point = readonly [x: number, y: number, z: number];
interface WrittenVent {
  readonly diameter: string;
  readonly length: string;
  readonly place: { readonly face: 'front' | 'back'; readonly across: string; readonly up: string };
}

/** Tells of points whether they are outside the box, or in a driver, or in one of the other vents; mm from left, bottom, front. */
function compileBlocked(brief: Brief, vent: number, tubes: readonly Tube[] = []) {
  const { outer, drivers, vents } = brief.standing as unknown as {
    outer: Record<string, string>;
    drivers: readonly { across: string; up: string }[];
    vents: readonly WrittenVent[];
  };
  const [width, height, depth] = [number(outer.width!), number(outer.height!), number(outer.depth!)];
  const magnets = drivers.map(({ across, up }) => [number(across), number(up)] as const);
  const others = vents.flatMap(({ diameter, length, place }, i) => {
    if (i === vent) return [];
    const now = tubes.find((tube) => tube.vent === i);
    return {
      across: number(place.across),
      up: number(place.up),
      isFront: place.face === 'front',
      radius: (now ? 1e3 * now.diameter : number(diameter)) / 2 + 3,
      length: now ? 1e3 * now.length : number(length),
    };
  });
  return ([x, y, z]: Point): boolean => {
    if (Math.min(x, y, z) < 15 || x > width - 15 || y > height - 15 || z > depth - 15) return true;
    if (z <= 78 && magnets.some(([across, up]) => Math.hypot(x - across, y - up) < 73)) return true;
    return others.some(
      ({ across, up, isFront, radius, length }) =>
        (isFront ? z : depth - z) <= length && Math.hypot(x - across, y - up) < radius,
    );
  };
}

const faces = ['left', 'right', 'bottom', 'top', 'front', 'back'];

/** Points on the outside of a tube, straight or bent, with the free air before its end; millimetres. */
function pointsOf(
  brief: Brief,
  vent: number,
  { diameter, length, bend }: Pick<Tube, 'diameter' | 'length' | 'bend'>,
  { along, around: turns } = { along: 1, around: 72 },
) {
  const { outer, vents } = brief.standing as unknown as { outer: { depth: string }; vents: readonly WrittenVent[] };
  const { place } = vents[vent]!;
  const [across, up, depth] = [number(place.across), number(place.up), number(outer.depth)];
  const front = place.face === 'front';
  const radius = 500 * diameter + 3 - 1e-6;
  const [first, arc, second] = bend
    ? [bend.first, bend.arc, bend.second].map((leg) => 1e3 * leg)
    : [1e3 * length, 0, 0];
  const R = (2 * arc!) / Math.PI;
  const end = first! + arc! + second! + 1e3 * diameter - 1e-6;
  const turn = bend ? faces.indexOf(bend.towards) >> 1 : 0;
  const sign = bend && faces.indexOf(bend.towards) & 1 ? 1 : -1;
  const points: Point[] = [];
  const start = 15 + 1e-6;
  const steps = Math.ceil((end - start) / along);
  for (let step = 0; step <= steps; step++) {
    const s = Math.min(end, start + step * along);
    // How far in and how far aside the middle is, and which way it goes there.
    const angle = Math.min(Math.max(0, s - first!), arc!) / (R || 1);
    const on = Math.max(0, s - first! - arc!);
    const [inwards, aside] = bend
      ? [Math.min(s, first!) + R * Math.sin(angle), R * (1 - Math.cos(angle)) + on]
      : [s, 0];
    for (let around = 0; around < 2 * Math.PI - 1e-9; around += (2 * Math.PI) / turns) {
      const [a, b] = [radius * Math.cos(around), radius * Math.sin(around)];
      const point: [number, number, number] = [across, up, 0];
      const z = inwards - a * Math.sin(angle);
      point[2] = front ? z : depth - z;
      point[turn as 0 | 1] += sign * (aside + a * Math.cos(angle));
      point[(1 - turn) as 0 | 1] += b;
      points.push(point);
    }
  }
  return points;
}

/** Wall to wall, as the brief of these boxes has it, m. */
const WALL = 3e-3;
const COARSE = { along: 8, around: 8 } as const;

/** A bend with which a tube of this length has room, if one of all first legs in whole millimetres, to all sides, has. */
function bendWithRoom(brief: Brief, vent: number, { diameter, length }: Pick<Tube, 'diameter' | 'length'>) {
  const arc = (Math.PI / 2) * (diameter + 2 * WALL);
  const blocked = compileBlocked(brief, vent);
  const isFree = (bend: NonNullable<Tube['bend']>, step?: typeof COARSE) =>
    !pointsOf(brief, vent, { diameter, length, bend }, step).some(blocked);
  for (const towards of ['left', 'right', 'bottom', 'top'] as const) {
    for (let first = 0.015; first + arc <= length + 1e-9; first += 1e-3) {
      const bend = { first, arc, second: Math.max(0, length - first - arc), towards };
      if (isFree(bend, COARSE) && isFree(bend)) return bend;
    }
  }
  return undefined;
}

describe('a box that stands', () => {
  test.each(answers)(
    'what each row tells is what its own system does: %#',
    ({ brief, answer: { rows, designs, now } }) => {
      const band = logarithmicGrid(number(brief.wanted.lowest), 150, 160);
      for (const row of [now, ...rows.filter((one): one is RowDone => one.ok), ...designs]) {
        const { system, limits } = systemOf(row, brief);
        const { account } = row;
        const { least } = greatestLevel(system, limits, band);
        near(account.loudest.level, least.levelHalfSpace);
        expect(account.loudest.binding).toBe(least.binding);
        near(account.leastLoad.value, lowestLoad(system, { from: '20 Hz', to: '200 Hz' }).impedance.value);
        const perVolt = respond(system, band);
        const asked = (column: Float64Array) =>
          Math.max(
            ...column.map(
              (x, i) => x * 10 ** (((row.box.level ?? number(brief.wanted.level)) - perVolt.levelHalfSpace[i]!) / 20),
            ),
          );
        near(account.wanted.travel.value, asked(perVolt.displacementPeak));
        if (perVolt.airSpeedPeak) {
          near(account.wanted.airSpeed!.value, asked(perVolt.airSpeedPeak));
          const { tubes, slot } = row.box;
          // Where several kinds of vents share the flow, the numbers of a row do not tell how.
          if (tubes.length + (slot ? 1 : 0) === 1) {
            const vent = slot ? slotOf(slot) : { diameter: si('length', tubes[0]!.diameter) };
            const onsets = ventOnsets(system, vent, band);
            near(account.noise!.quiet.level, Math.min(...onsets.quiet.levelHalfSpace), 1e-9);
            near(account.noise!.noisy.level, Math.min(...onsets.noisy.levelHalfSpace), 1e-9);
          }
          const { low, nominal, high } = account.compression!;
          expect(low).toBeLessThanOrEqual(nominal);
          expect(nominal).toBeLessThanOrEqual(high);
        }
        if (row.box.highPass) {
          if (account.reach === undefined) continue;
          // Where the response behind the filter crosses the wanted fall, it has fallen by it.
          const filter = highPass(butterworthShape(2), `${row.box.highPass.corner} Hz`);
          const at = frequencyGrid([account.reach]);
          const level = respond(system, at).levelHalfSpace[0]! + filterLevel(filter, at)[0]!;
          if (account.reach > number(brief.wanted.lowest) / 4 + 1e-6) near(level, referenceLevel(system) - 6);
          continue;
        }
        const found = cutoff(system, { drop: 6, from: '5 Hz', to: '150 Hz' });
        if (found.ok && account.reach !== undefined) near(account.reach, found.frequency);
      }
    },
  );

  test('among them are boxes with every place known, with tubes that fit and tubes that do not, and whole designs', () => {
    const known = answers.filter(({ brief: { standing } }) => 'drivers' in standing).map(({ answer }) => answer);
    expect(answers.length).toBeGreaterThan(known.length);
    const rows = known.flatMap((one) => one.rows);
    expect(rows.filter((row) => row.ok && row.fitting === 'fits').length).toBeGreaterThan(5);
    expect(rows.filter((row) => !row.ok && row.way !== undefined).length).toBeGreaterThan(1);
    expect(known.flatMap(({ designs }) => designs).length).toBeGreaterThan(1);
  });

  test.each(answers)('calls no two changes by one name: %#', ({ answer: { rows } }) => {
    const names = rows.map(({ change }) => change);
    expect(names).toEqual([...new Set(names)]);
  });

  test.each(answers)('keeps what is to be kept: %#', ({ brief, answer: { rows, designs, now } }) => {
    const keep = new Set(brief.standing.keep);
    for (const { box } of [...rows.filter((one): one is RowDone => one.ok), ...designs]) {
      if (keep.has('drivers')) {
        const count = ({ series, parallel }: typeof box.wiring) => series * parallel;
        expect(count(box.wiring)).toBe(count(now.box.wiring));
        expect(box.wiring.isobaric).toBe(now.box.wiring.isobaric);
      }
      if (keep.has('wiring')) expect(box.wiring.series).toBe(now.box.wiring.series);
      if (keep.has('tuning') && !box.radiator) expect(Math.abs(box.fb! / now.box.fb! - 1)).toBeLessThan(0.01);
      if (keep.has('holes')) {
        expect(box.slot).toBeUndefined();
        expect(box.radiator).toBeUndefined();
        expect(box.tubes.every(({ count }) => count === 1)).toBe(true);
        const hole = Math.max(...brief.standing.vents.map((vent) => number(vent.hole))) / 1e3;
        // A tube passes its hole, or is as wide as the hole and stands behind it.
        for (const { diameter } of box.tubes) expect(diameter).toBeLessThanOrEqual(hole + 1e-9);
      }
    }
  });

  test.each(answers)('a straight tube that does not fit has no room when it is drawn: %#', ({ brief, answer }) => {
    if (!('drivers' in brief.standing)) return;
    for (const row of answer.rows) {
      if (row.ok || row.way === undefined) continue;
      const { vent, needed, diameter } = row.way;
      const points = pointsOf(brief, vent, { diameter, length: needed });
      expect(points.some(compileBlocked(brief, vent))).toBe(true);
    }
  });

  test.each(answers)(
    'a tube that does not fit has no room with one bend either, wherever it turns: %#',
    ({ brief, answer }) => {
      if (!('drivers' in brief.standing)) return;
      for (const row of answer.rows) {
        if (row.ok || row.way === undefined) continue;
        const { vent, needed, diameter } = row.way;
        const bend = bendWithRoom(brief, vent, { diameter, length: needed });
        expect(bend, `${row.change}: ${JSON.stringify(row.way)}`).toBeUndefined();
      }
    },
  );

  test.each(answers)('what fits has room when it is drawn: %#', ({ brief, answer }) => {
    if (!('drivers' in brief.standing)) return;
    const fits = [...answer.rows.filter((one): one is RowDone => one.ok), ...answer.designs];
    for (const { fitting, box } of fits) {
      // Known places are those of the vents and drivers as they stand.
      if (fitting !== 'fits' || box.slot || box.radiator || box.wiring.isobaric) continue;
      for (const tube of box.tubes.filter((one) => isNew(answer.now.box, one))) {
        const points = pointsOf(brief, tube.vent, tube);
        expect(points.find(compileBlocked(brief, tube.vent, box.tubes))).toBeUndefined();
      }
    }
  });

  test.each(answers)('a design is in nothing worse than another, or than a change alone: %#', ({ answer }) => {
    const numbersOf = ({ account: { reach = Infinity, loudest, noise } }: Pick<RowDone, 'account'>) =>
      [-reach, loudest.level, noise?.quiet.level ?? Infinity] as const;
    const rows = answer.rows.filter((one): one is RowDone => one.ok && one.box.level === undefined);
    for (const one of answer.designs) {
      for (const other of [...rows, ...answer.designs]) {
        if (other === one) continue;
        const [mine, theirs] = [numbersOf(one), numbersOf(other)];
        const beaten =
          mine.every((value, i) => theirs[i]! >= value) && mine.some((value, i) => theirs[i]! > value + 0.1);
        expect(beaten, `${one.name} by ${JSON.stringify(theirs)}`).toBe(false);
      }
    }
  });

  test.each(answers)(
    'a whole design tells its work in order, and its parts are those of its numbers: %#',
    ({ answer }) => {
      for (const design of answer.designs) {
        const places = design.steps.map(({ does }) => works.indexOf(does));
        expect(places).toEqual([...places].sort((a, b) => a - b));
        expect(design.atWantedLevel.driveVoltageRms.value).toBeGreaterThan(0);
        near(design.loudness.level, design.account.loudest.level, 1e-3);
        const made = design.parts.filter(({ what }) => what === 'tube' || what === 'pipe');
        for (const tube of new Set(design.box.tubes.filter((one) => isNew(answer.now.box, one)))) {
          const words = JSON.stringify(made);
          expect(words).toContain(JSON.stringify([tube.diameter, 'length']));
        }
      }
    },
  );

  test.each(answers)('what fits at known places is not refused where places are not told: %#', ({ brief }) => {
    if (!('drivers' in brief.standing)) return;
    const known = readStanding(brief, standard);
    const { driverPlaces: _, ...rest } = known;
    const untold = { ...rest, ways: new Map() };
    for (const outerDiameter of [0.04, 0.056, 0.075]) {
      const body = { outerDiameter, clearance: outerDiameter - 0.006, bendRadius: outerDiameter };
      const there = wayBehind(known, known.vents[0]!.place, body)!;
      const best = wayBehind(untold, undefined, body)!;
      expect(best.straight).toBeGreaterThanOrEqual(there.straight - 1e-9);
      expect(best.bent()).toBeGreaterThanOrEqual(there.bent() - 1e-9);
    }
  });
});
