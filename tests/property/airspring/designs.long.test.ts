import { air } from '@airspring/core/air';
import { completeDriver, type DriverGroup, group } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  currentLimit,
  greatestLevel,
  heatLimit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, HALF_POWER, referenceLevel, respond } from '@airspring/core/response';
import { type Face, fit, netVolume } from '@airspring/core/space';
import { tuning } from '@airspring/core/vent';
import { type Answer, type Brief, type Design, design, type Hole, type Met } from 'airspring';
import { describe, expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { leanings, pointsOf } from '../../../packages/airspring/src/search/points.js';
import { answerTo, demo } from '../../arbitrary/brief.js';

const number = (text: string) => Number(text.split(' ')[0]);
const met = (answer: Answer): Met => {
  if (!answer.ok) throw new Error(answer.because.join(' '));
  return answer;
};

/** Briefs of unlike kinds; every driver is invented. All lengths in mm, volumes in L, so that the tests can read them. */
const puppetTheatre: Brief = {
  ...demo,
  title: 'Thunder for a puppet theatre',
  space: { width: '640 mm', height: '520 mm', depth: '560 mm', panelThickness: '18 mm' },
  wanted: { lowest: '34 Hz', highest: '110 Hz', level: '98 dB', fall: '6 dB' },
  drivers: [{ ...demo.drivers[0]!, wirings: [{}, { parallel: 2 }] }],
  amplifier: { voltage: '28 V', sourceResistance: '0.1 Ω' },
  vent: { airSpeed: '17 m/s', smallest: '50 mm', largest: '120 mm', counts: [1, 2], faces: ['front', 'back'] },
};
const campfire: Brief = {
  ...demo,
  title: 'A closed box for the campfire',
  space: { width: '420 mm', height: '330 mm', depth: '300 mm', panelThickness: '15 mm' },
  wanted: { lowest: '50 Hz', highest: '120 Hz', level: '88 dB', fall: '4 dB' },
  box: { kinds: ['closed'], QL: 12 },
};
const briefs: readonly (readonly [string, Brief])[] = [demo, puppetTheatre, campfire].map((brief) => [
  brief.title,
  brief,
]);

function groupOf(brief: Brief, one: Design): DriverGroup {
  const { name, wirings, ...sheet } = brief.drivers.find((driver) => driver.name === one.drivers.name)!;
  const completed = completeDriver(sheet as object);
  if (!completed.ok) throw new Error(`${name} is not complete; ${wirings?.length ?? 1} wirings`);
  const { series, parallel, isobaric } = one.drivers;
  return group(completed.driver, { series, parallel, isobaric });
}

const diameterOf = (hole: Hole) => (hole.form === 'circle' ? hole.diameter : Number.NaN);
const airOf = (brief: Brief) => air((brief.air ?? {}) as Parameters<typeof air>[0]);
const metres = (value: number) => si('length', value);

function systemOf(brief: Brief, one: Design): System {
  const drivers = groupOf(brief, one);
  const QL = brief.box?.QL ?? 7;
  const sourceResistance = si('resistance', number(brief.amplifier.sourceResistance ?? '0 Ω'));
  const shared = { drivers, netVolume: si('volume', one.box.netVolume), QL, sourceResistance };
  if (one.vent === undefined) return closedBox(shared, airOf(brief));
  const ventArea = si('area', one.vent.count * (Math.PI / 4) * one.vent.diameter ** 2);
  return ventedBox({ ...shared, fb: si('frequency', one.vent.fb), ventArea }, airOf(brief));
}

describe.each(briefs)('%s', { timeout: 30_000 }, (_, brief) => {
  const answer = met(answerTo(brief));
  const { designs } = answer;
  const [lowest, highest] = [number(brief.wanted.lowest), number(brief.wanted.highest)];
  const cells = designs.map((one) => [one.name, one] as const);

  test('offers one to five boxes, the first for its own weights', () => {
    expect(designs.length).toBeGreaterThanOrEqual(1);
    expect(designs.length).toBeLessThanOrEqual(5);
    expect(designs[0]?.leaning).toBe('balanced');
  });

  test.each(cells)('%s: net volume and tuning are those of its boards and tubes', (_name, one) => {
    const { space } = brief;
    const drivers = groupOf(brief, one);
    const [width, height, depth] = one.box.outer.map(metres) as [never, never, never];
    const t = number(space.panelThickness) / 1e3;
    const wall = number(brief.vent?.wall ?? '3 mm') / 1e3;
    const found = netVolume({
      outer: { width, height, depth },
      thickness: metres(t),
      contents: {
        driver: { displacedVolume: drivers.driver.displacedVolume!, count: drivers.fronts },
        bracing: { volume: si('volume', number(space.bracing ?? '0 L') / 1e3) },
        ...(one.vent && {
          vent: {
            outerDiameter: metres(one.vent.outerDiameter),
            lengthInside: metres(one.vent.length - t),
            count: one.vent.count,
          },
        }),
      },
    });
    expect(found.ok && found.netVolume).toBeCloseTo(one.box.netVolume, 12);
    if (one.vent === undefined) return;
    expect(one.vent.outerDiameter).toBeCloseTo(one.vent.diameter + 2 * wall, 12);
    const { diameter, count, length } = one.vent;
    const tuned = tuning(
      {
        vent: { diameter: metres(diameter), count, wall: metres(wall), length: metres(length) },
        netVolume: si('volume', one.box.netVolume),
      },
      airOf(brief),
    );
    expect(tuned.ok && tuned.fb).toBeCloseTo(one.vent.fb, 9);
  });

  test.each(cells)('%s: boards and tubes are whole millimetres, within the space, and add up', (_name, one) => {
    const whole = (value: number) => expect(Math.abs(value * 1e3 - Math.round(value * 1e3))).toBeLessThan(1e-9);
    one.box.outer.forEach(whole);
    one.box.panels.forEach(({ length, width }) => [length, width].forEach(whole));
    const { width, height, depth, volume } = brief.space;
    [width, height, depth].forEach((edge, i) =>
      expect(one.box.outer[i]).toBeLessThanOrEqual(number(edge) / 1e3 + 1e-12),
    );
    const outer = one.box.outer.reduce((product, edge) => product * edge, 1);
    expect(one.box.outerVolume).toBeCloseTo(outer, 12);
    if (volume !== undefined) expect(outer).toBeLessThanOrEqual(number(volume) / 1e3);
    const wood = one.box.panels.reduce(
      (sum, { count, length, width: w }) => sum + count * length * w * one.box.panelThickness,
      0,
    );
    const inner = one.box.inner.reduce((product, edge) => product * edge, 1);
    expect(wood).toBeCloseTo(outer - inner, 12);
    if (one.vent === undefined) return;
    [one.vent.diameter, one.vent.length].forEach(whole);
    expect(one.vent.diameter).toBeGreaterThanOrEqual(number(brief.vent?.smallest ?? '30 mm') / 1e3);
    expect(one.vent.diameter).toBeLessThanOrEqual(number(brief.vent?.largest ?? '150 mm') / 1e3);
    // A stub of less than a tenth of a millimetre after a bend is no piece.
    expect(Math.abs(one.vent.pieces.reduce((sum, piece) => sum + piece, 0) - one.vent.length)).toBeLessThan(1e-4);
    if (brief.printer === undefined) return;
    for (const piece of one.vent.pieces) expect(piece).toBeLessThanOrEqual(number(brief.printer.height) / 1e3 + 1e-9);
    expect(one.vent.flangeDiameter).toBeLessThanOrEqual(number(brief.printer.width) / 1e3);
  });

  test.each(cells)('%s: everything fits, and the holes are where the parts are', (_name, one) => {
    const drivers = groupOf(brief, one);
    const { outerDiameter, cutoutDiameter, depth } = drivers.driver;
    const [width, height, deep] = one.box.outer.map(metres) as [never, never, never];
    const found = fit({
      outer: { width, height, depth: deep },
      thickness: metres(one.box.panelThickness),
      driver: { outerDiameter: outerDiameter!, cutoutDiameter: cutoutDiameter!, depth: depth!, count: drivers.fronts },
      ...(one.vent && {
        vent: {
          diameter: metres(one.vent.diameter),
          wall: metres((one.vent.outerDiameter - one.vent.diameter) / 2),
          flangeDiameter: metres(one.vent.flangeDiameter),
          ...(one.vent.bend && { bendRadius: metres(one.vent.bend.radius) }),
          bends: one.vent.bend ? 'one-bend' : 'straight',
          count: one.vent.count,
          faces: (brief.vent?.faces ?? ['front']) as Face[],
          length: metres(one.vent.length),
        },
      }),
    });
    expect(found.ok).toBe(true);
    expect(one.box.holes.filter(({ what }) => what === 'driver')).toHaveLength(drivers.fronts);
    expect(one.box.holes.filter(({ what }) => what === 'vent')).toHaveLength(one.vent?.count ?? 0);
    for (const hole of one.box.holes) {
      const { face, across, up } = hole;
      const diameter = diameterOf(hole);
      const axis = ['left', 'right', 'bottom', 'top', 'front', 'back'].indexOf(face) >> 1;
      const [first, second] = [
        [2, 1],
        [0, 2],
        [0, 1],
      ][axis]!;
      for (const [at, edge] of [
        [across, one.box.outer[first!]!],
        [up, one.box.outer[second!]!],
      ] as const) {
        expect(at - diameter / 2).toBeGreaterThan(0);
        expect(at + diameter / 2).toBeLessThan(edge);
      }
    }
    for (const [i, a] of one.box.holes.entries()) {
      for (const b of one.box.holes.slice(i + 1)) {
        if (a.face === b.face)
          expect(Math.hypot(a.across - b.across, a.up - b.up)).toBeGreaterThan((diameterOf(a) + diameterOf(b)) / 2);
      }
    }
  });

  test.each(cells)('%s: keeps every limit of sound, by a finer sweep than the search had', (_name, one) => {
    const system = systemOf(brief, one);
    const drivers = groupOf(brief, one);
    const { wanted, amplifier } = brief;
    const band = logarithmicGrid(lowest, highest, 1500);
    const speed = number(brief.vent?.airSpeed ?? '17 m/s');
    const limits = [
      ...travelLimit(drivers),
      ...heatLimit(drivers),
      ...(one.vent ? [airSpeedLimit(si('airSpeedRms', speed / Math.SQRT2))] : []),
      voltageLimit(si('voltageRms', number(amplifier.voltage as string))),
      ...(amplifier.current ? [currentLimit(si('currentRms', number(amplifier.current)))] : []),
    ];
    const { least } = greatestLevel(system, limits, band);
    // 0.02 dB: the extremes of a smooth curve lie between the search's 44 points.
    expect(least.levelHalfSpace).toBeGreaterThanOrEqual(number(wanted.level) - 0.02);
    expect(Math.abs(least.levelHalfSpace - one.loudness.level)).toBeLessThan(0.02);

    const drop = wanted.fall ? number(wanted.fall) : HALF_POWER;
    const found = cutoff(system, { drop, from: si('frequency', 3), to: si('frequency', highest) });
    expect(found.ok && found.frequency).toBeLessThanOrEqual(lowest + 0.01);
    expect(found.ok && Math.abs(found.frequency - one.response.cutoff)).toBeLessThan(0.01);

    const { levelHalfSpace } = respond(system, logarithmicGrid(lowest / 4, highest, 1500));
    const rise = Math.max(...levelHalfSpace) - referenceLevel(system);
    expect(rise).toBeLessThanOrEqual(number(wanted.rise ?? '1.5 dB') + 0.02);
    expect(Math.abs(rise - one.response.greatestRise)).toBeLessThan(0.02);
  });

  test('any two differ by 2 Hz of f3, by 1.5 dB or by a tenth of the volume, and none beats another', () => {
    const f3 = designs.map((one) => {
      const found = cutoff(systemOf(brief, one), { from: si('frequency', 2), to: si('frequency', highest) });
      return found.ok ? found.frequency : Number.NaN;
    });
    designs.forEach((a, i) => {
      designs.slice(i + 1).forEach((b, k) => {
        const apart = Math.abs(f3[i]! - f3[i + 1 + k]!) >= 1.99;
        const louder = Math.abs(a.loudness.level - b.loudness.level) >= 1.48;
        const ratio = b.box.outerVolume / a.box.outerVolume;
        const larger = Math.max(Math.abs(ratio - 1), Math.abs(1 / ratio - 1)) >= 0.0999;
        expect(apart || louder || larger).toBe(true);
      });
    });
    const tubes = ({ vent }: Design) => (vent ? vent.count * vent.length : 0);
    for (const a of designs) {
      for (const b of designs) {
        if (a === b) continue;
        const better = [
          b.response.cutoff - a.response.cutoff,
          a.loudness.level - b.loudness.level,
          b.box.outerVolume - a.box.outerVolume,
          tubes(b) - tubes(a),
        ];
        expect(better.every((gain) => gain >= 1e-6) && `${a.name} beats ${b.name}`).toBe(false);
      }
    }
  });

  test('each is the best of them for the wish it leans to', () => {
    const job = readBrief(brief, standard);
    const score = (one: Design, leaning: string) => {
      const { depth } = one.response;
      const effort = (one.vent?.count ?? 0) * (one.vent?.length ?? 0);
      const criteria = { depth, level: one.loudness.level, volume: one.box.outerVolume, effort };
      return pointsOf(job, leanings(job).find(({ name }) => name === leaning)!.weights, criteria);
    };
    for (const one of designs) {
      // 0.05 points: the level is of a finer sweep here, and weighs up to four times.
      for (const other of designs) expect(score(one, one.leaning)).toBeGreaterThan(score(other, one.leaning) - 0.05);
    }
  });

  test('the answer survives JSON', () => {
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  test('the same brief through JSON, with its faces and fields in another order, has the same answer', () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, one]) => [key, turned(one)]),
      );
    };
    const faces = [...(brief.vent?.faces ?? ['front'])].reverse();
    const other = { ...(turned(brief) as Brief), vent: { ...brief.vent, faces } };
    expect(design(JSON.parse(JSON.stringify(other)))).toEqual(answer);
  });
});

test('the order of the drivers changes nothing', { timeout: 30_000 }, () => {
  const other = {
    ...demo.drivers[0]!,
    name: 'eight-inch driver, invented',
    fs: '31 Hz',
    Vas: '38 L',
    Sd: '215 cm²',
    Xmax: '6 mm',
    outerDiameter: '215 mm',
    cutoutDiameter: '186 mm',
    depth: '96 mm',
    displacedVolume: '1.1 L',
  };
  // Two edges are exact, so that its search is short.
  const space = { ...demo.space, exactly: ['width', 'height'] } as Brief['space'];
  const both: Brief = { ...demo, space, drivers: [demo.drivers[0]!, other] };
  // Paths and the number of the driver say where in the brief it stands: that alone follows the order.
  const anywhere = (brief: Brief) =>
    JSON.stringify(met(design(brief)).designs)
      .replaceAll(/drivers\[\d\]/g, 'drivers[]')
      .replaceAll(/"index":\d/g, '"index":0');
  expect(anywhere({ ...both, drivers: [other, demo.drivers[0]!] })).toBe(anywhere(both));
});
