import { completeDriver, group } from '@airspring/core/driver';
import { closedBox, passiveRadiatorBox, ventedBox } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  greatestLevel,
  heatLimit,
  radiatorTravelLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { logarithmicGrid } from '@airspring/core/quantity';
import { cutoff, lowestLoad, respond } from '@airspring/core/response';
import { type RowDone, retrofit, standard } from 'airspring';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStanding } from '../../../packages/airspring/src/standing/read.js';
import { wayBehind } from '../../../packages/airspring/src/standing/way.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { standingBriefs } from '../../arbitrary/standing.js';

/** Two hundred boxes where many cases are drawn, fewer where the whole suite waits. */
const RUNS = fuzzRuns > 300 ? 200 : 24;
type Brief = typeof standingBriefs extends fc.Arbitrary<infer T> ? T : never;
const answers = fc
  .sample(standingBriefs, { numRuns: RUNS, seed: 20261128 })
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

const near = (got: number, expected: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(expected));

/** Whether any point of a tube, with the free air before its end, is outside the box or in a driver. */
function meets(brief: Brief, length: number, diameter: number): boolean {
  const { outer, drivers, vents } = brief.standing as {
    outer: Record<string, string>;
    drivers: readonly { across: string; up: string }[];
    vents: readonly { place: { across: string; up: string } }[];
  };
  const { across, up } = vents[0]!.place;
  const radius = (diameter + 6) / 2;
  const end = length + diameter;
  if (end > number(outer.depth!) - 15) return true;
  for (let z = 15; z <= end; z += 1) {
    for (let angle = 0; angle < 360; angle += 5) {
      const x = number(across) + radius * Math.cos((angle * Math.PI) / 180);
      const y = number(up) + radius * Math.sin((angle * Math.PI) / 180);
      if (Math.min(x, y) < 15 || x > number(outer.width!) - 15 || y > number(outer.height!) - 15) return true;
      if (z <= 78 && drivers.some((one) => Math.hypot(x - number(one.across), y - number(one.up)) < 73)) return true;
    }
  }
  return false;
}

describe('a box that stands', () => {
  test.each(answers)('what each row tells is what its own system does: %#', ({ brief, answer: { rows, now } }) => {
    const band = logarithmicGrid(number(brief.wanted.lowest), 150, 160);
    for (const row of [now, ...rows.filter((one): one is RowDone => one.ok)]) {
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
      if (perVolt.airSpeedPeak) near(account.wanted.airSpeed!.value, asked(perVolt.airSpeedPeak));
      if (row.box.highPass) continue;
      const found = cutoff(system, { drop: 6, from: '5 Hz', to: '150 Hz' });
      if (found.ok && account.reach !== undefined) near(account.reach, found.frequency);
    }
  });

  test.each(answers)('keeps what is to be kept: %#', ({ brief, answer: { rows, now } }) => {
    const keep = new Set(brief.standing.keep);
    for (const row of rows) {
      if (!row.ok) continue;
      const { box } = row;
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
        const hole = number(brief.standing.vents[0]!.hole) / 1e3;
        // A tube passes its hole, or is as wide as the hole and stands behind it.
        for (const { diameter } of box.tubes) expect(diameter).toBeLessThanOrEqual(hole + 1e-9);
      }
    }
  });

  test.each(answers)('a straight tube that does not fit has no room when it is drawn: %#', ({ brief, answer }) => {
    if (!('drivers' in brief.standing)) return;
    for (const row of answer.rows) {
      if (row.ok || row.way === undefined) continue;
      expect(meets(brief, 1e3 * row.way.needed, 1e3 * row.way.diameter)).toBe(true);
    }
  });

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
