import { completeDriver } from '@airspring/core/driver';
import { type ParallelBandPassInput, parallelBandPass, seriesBandPass } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { collisions, cuboidInterior } from '@airspring/core/space';
import { tuning } from '@airspring/core/vent';
import { type Brief, design, reportText } from 'airspring';
import { describe, expect, test } from 'vitest';
import { briefFacts } from '../../../docs-site/src/brief-facts.js';
import { boxFigure } from '../../../docs-site/src/figures/box-drawing.js';
import horn from '../../../packages/airspring/briefs/fog-horn.json' with { type: 'json' };
import dragon from '../../../packages/airspring/briefs/stage-dragon.json' with { type: 'json' };
import { assemble } from '../../../packages/airspring/src/record/assemble.js';
import { compileDemand } from '../../../packages/airspring/src/search/compiled-demand.js';
import { emptyDemand } from '../../../packages/airspring/src/search/demand.js';
import { nearestBrief } from '../../../packages/airspring/src/search/nearest.js';
import { bestOf, metByWeights, possible, searchFor } from '../../arbitrary/brief.js';
import { pathsOf } from '../../refusal/faults.js';

const flat = (text: string) => text.replace(/\s+/g, ' ');
const t = 0.015;
const driverOf = (brief: Brief) => {
  const { fs, Qts, Qes, Vas, Sd, Re, Le, Xmax } = brief.drivers[0]!;
  const sheet = completeDriver({ fs, Qts, Qes, Vas, Sd, Re, Le, Xmax } as Parameters<typeof completeDriver>[0]);
  if (!sheet.ok) throw new Error('the driver of the brief');
  return sheet.driver;
};
const kinds = [
  ['parallel-band-pass', { ...horn, box: { kinds: ['parallel-band-pass'] } } as unknown as Brief, parallelBandPass],
  ['series-band-pass', { ...dragon, box: { kinds: ['series-band-pass'] } } as unknown as Brief, seriesBandPass],
] as const;

type Made = ReturnType<typeof metByWeights>['designs'][number];
const numberOf = ({ numbers }: Made, what: string) =>
  (numbers.find((one) => one.what.startsWith(what))!.value[0] as readonly [number, string])[0];
/** The tubes of both chambers, the front one first, as the building instructions describe them: m. */
const tubesOf = (one: Made) =>
  [
    ...flat(reportText({ ...metByWeights(kinds[0][1]), designs: [one] })).matchAll(
      /tube of ([\d.]+) mm inner and ([\d.]+) mm outer diameter, with a flange of [\d.]+ mm diameter\. It is ([\d.]+) mm long/g,
    ),
  ].map(([, inner, outer, length]) => [inner, outer, length].map((mm) => Number(mm) / 1e3) as [number, number, number]);
const specOf = (brief: Brief, one: Made): ParallelBandPassInput => ({
  drivers: driverOf(brief),
  rearVolume: si('volume', numberOf(one, 'air of the rear')),
  rearTuning: si('frequency', numberOf(one, 'tuning of the rear')),
  frontVolume: si('volume', numberOf(one, 'air of the front')),
  frontTuning: si('frequency', numberOf(one, 'tuning of the front')),
  rearQL: 7,
  frontQL: 7,
  frontVentArea: si('area', (Math.PI / 4) * tubesOf(one)[0]![0] ** 2),
  rearVentArea: si('area', (Math.PI / 4) * tubesOf(one)[0]![0] ** 2),
  sourceResistance: '0.05 Ω',
});

test.each([
  ['a weak battery and a band of an octave', horn, 'parallel-band-pass'],
  ['a short travel, a weak amplifier and a box of which the front alone is open', dragon, 'series-band-pass'],
] as const)('%s: a brief is met that no other box meets', { timeout: 120_000 }, (_, brief, kind) => {
  expect(bestOf(brief).kind).toBe(kind);
  const others = brief.box.kinds.filter((one) => one !== kind);
  expect(others).toEqual(['closed', 'vented', 'band-pass']);
  expect(possible({ ...brief, box: { kinds: others } } as unknown as Brief)).toBe(false);
});

test('where no edge is named, a brief that yields may divide another edge than the longest one of its space', () => {
  const { partition: _, ...free } = dragon;
  const brief = (kind: string, partition: object = {}) => ({
    ...free,
    ...partition,
    space: { ...dragon.space, width: '340 mm', height: '200 mm', depth: '345 mm' },
    wanted: { ...dragon.wanted, lowest: '80 Hz', level: '90 dB', fall: '6 dB' },
    box: { kinds: [kind], tuning: '90 Hz' },
    vent: { ...dragon.vent, smallest: '70 mm', largest: '70 mm', bends: 0 },
  });
  for (const [kind] of kinds.slice(1)) expect(searchFor(brief(kind)).variants).toHaveLength(3);
  const [any, longest] = [{}, { partition: { across: ['depth'] } }].map((partition) => {
    const search = searchFor(brief('band-pass', partition));
    const { changes, box } = nearestBrief(search)!;
    const [, to] = changes.map(({ from, to }) => [from, to].map(Number.parseFloat))[0]!;
    const { panels } = assemble(search, box, 'A', 'balanced', []).box;
    const board = panels.find(({ name }) => name.startsWith('partition ('))!.name;
    return { paths: changes.map(({ path }) => path), to: to!, board };
  });
  expect([any!.paths, longest!.paths]).toEqual([['space.height'], ['space.height']]);
  expect(any!.to).toBeLessThan(longest!.to - 15);
  expect(longest!.board).toContain('width');
  expect(any!.board).not.toBe(longest!.board);
});

test('of the dragon, both chambers of a parallel band-pass could not have vents in the front', () => {
  const parallel = () => design({ ...dragon, box: { kinds: ['parallel-band-pass'] } });
  expect(pathsOf(parallel)).toEqual(['partition.across']);
});

describe.each(kinds)('%s', (kind, brief, familyOf) => {
  const answer = metByWeights(brief, 2);
  const cases = answer.designs.map((one) => [one.name, one] as const);

  test.each(cases)('box %s holds its chambers, the partition, the driver, the brace and both tubes', (_, one) => {
    const [width, height, depth] = one.box.inner;
    const partition = one.box.panels.find(({ name }) => name.startsWith('partition'))!;
    const tubes = tubesOf(one);
    expect(tubes).toHaveLength(2);
    const taken = tubes.reduce((sum, [, outer, length]) => sum + (Math.PI / 4) * outer ** 2 * (length - t), 0);
    const air = numberOf(one, 'air of the rear') + numberOf(one, 'air of the front');
    expect(one.box.netVolume).toBeCloseTo(air, 12);
    const held = air + partition.length * partition.width * t + 1e-3 + 0.3e-3 + taken;
    expect(held).toBeCloseTo(width * height * depth, 6);
  });

  test.each(cases)('box %s: each vent tunes its chamber', (_, one) => {
    const chambers = ['front', 'rear'].map((name) => [`air of the ${name}`, `tuning of the ${name}`] as const);
    tubesOf(one).forEach(([inner, outer, length], i) => {
      const found = tuning({
        vent: {
          diameter: si('length', inner),
          length: si('length', length),
          wall: si('length', (outer - inner) / 2),
        },
        netVolume: si('volume', numberOf(one, chambers[i]![0])),
        panelThickness: '15 mm',
      });
      expect(found.ok && Math.abs(found.fb / numberOf(one, chambers[i]![1]) - 1)).toBeLessThan(1e-3);
    });
  });

  test.each(cases)('box %s plays as core says, and keeps its limits in a finer sweep', (_, one) => {
    const system = familyOf(specOf(brief, one));
    const { frequencies, levelHalfSpace, driveVoltageRms } = one.curves;
    const own = respond(system, [...frequencies], { driveVoltageRms: si('voltageRms', Number(driveVoltageRms)) });
    levelHalfSpace.forEach((level, i) => expect(Math.abs(level - own.levelHalfSpace[i]!)).toBeLessThan(0.01));

    const [lowest, highest, wanted, volts] = [
      brief.wanted.lowest,
      brief.wanted.highest,
      brief.wanted.level,
      brief.amplifier.voltage,
    ].map((text) => Number.parseFloat(text as string)) as [number, number, number, number];
    const band = logarithmicGrid(si('frequency', lowest), si('frequency', highest), 1500);
    const {
      levelHalfSpace: levels,
      airSpeedPeak,
      displacementPeak,
    } = respond(system, band, { driveVoltageRms: '1 V' });
    const greatest = Math.max(...respond(system, logarithmicGrid(15, highest, 3000)).levelHalfSpace);
    let speed = 0;
    levels.forEach((level, i) => {
      const drive = 10 ** ((wanted - level) / 20);
      expect(level).toBeGreaterThan(greatest - 4 - 0.02);
      expect(drive).toBeLessThan(volts * 1.002);
      expect(drive * displacementPeak[i]!).toBeLessThan(
        Number.parseFloat(brief.drivers[0]!.Xmax as string) * 1.0025e-3,
      );
      speed = Math.max(speed, drive * airSpeedPeak![i]!);
    });
    expect(speed).toBeLessThan(17 * 1.002);
    expect(Math.abs(one.atWantedLevel.own!.at.value / speed - 1)).toBeLessThan(2e-3);
  });

  test.each(cases)('box %s: driver and both vents stand clear of each other, each in its chamber', (_, one) => {
    const [width, height, depth] = one.box.outer.map((edge) => si('length', edge)) as [never, never, never];
    const interior = cuboidInterior({ outer: { width, height, depth }, thickness: '15 mm' });
    expect(collisions(interior, one.box.solids)).toEqual([]);
    expect(one.box.solids.filter(({ part }) => part === 'vent').length).toBeGreaterThanOrEqual(2);
    const driverHole = one.box.holes.find(({ what }) => what === 'driver')!;
    const near = driverHole.board!.from[2];
    const axis = ['left', 'bottom', 'front'].indexOf(driverHole.face);
    const sides = one.box.solids
      .filter(({ part }) => part === 'vent')
      .map(({ least, greatest }) => {
        // No vent passes through the partition from a chamber into the other.
        if (greatest[axis]! <= near + 1e-9) return 'front';
        return least[axis]! >= near + t - 1e-9 ? 'rear' : 'both';
      });
    expect(new Set(sides)).toEqual(new Set(['front', 'rear']));
    // The chambers begin and end at panels and partition, share the air, and hold no more than there is room for.
    const { chambers = [], outer, inner, netVolume } = one.box;
    expect(chambers.map(({ name, vented }) => [name, vented])).toEqual([
      ['front chamber', true],
      ['rear chamber', true],
    ]);
    const ends = chambers.flatMap(({ from, to }) => [from, to]);
    [t, near, near + t, outer[axis]! - t].forEach((end, i) => {
      expect(ends[i]).toBeCloseTo(end, 9);
    });
    expect(chambers.reduce((sum, chamber) => sum + chamber.netVolume, 0)).toBeCloseTo(netVolume, 9);
    for (const { across, from, to, netVolume: air } of chambers) {
      expect(across).toBe(['width', 'height', 'depth'][axis]);
      const room = inner.reduce((product, edge, k) => product * (k === axis ? to - from : edge), 1);
      expect(air).toBeLessThan(room);
      expect(air).toBeGreaterThan(0.6 * room);
    }
    // The tubes pass through holes of their own.
    expect(one.box.holes.filter(({ what }) => what === 'vent')).toHaveLength(2);
    const inBoard = one.box.holes.filter(({ what, board }) => what === 'vent' && board?.name === 'partition');
    expect(inBoard).toHaveLength(kind === 'series-band-pass' ? 1 : 0);
    for (const hole of inBoard) {
      const apart = Math.hypot(hole.across - driverHole.across, hole.up - driverHole.up);
      const radius = hole.form === 'circle' ? hole.diameter / 2 : Number.NaN;
      expect(apart).toBeGreaterThan(0.105 + radius);
      const [across, up] = hole.board!.size;
      expect(Math.min(hole.across, hole.up, across - hole.across, up - hole.up)).toBeGreaterThan(radius);
    }
  });

  test('the drawing shows the tubes of both chambers, the partition and the driver', () => {
    const drawing = String(boxFigure(answer.designs[0]!, briefFacts(brief)).draw(640));
    expect(drawing).not.toMatch(/NaN|undefined/);
    // In each of three views: both tubes and the partition.
    expect(drawing.match(/class="behind"/g)!.length).toBeGreaterThanOrEqual(9);
  });

  test('it is told', () => {
    const text = reportText(answer);
    for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(flat(text)).toContain(`is a ${kind.split('-')[0]} band-pass box for one`);
    expect(flat(text)).toMatch(/The front chamber is tuned to [\d.]+ Hz by one vent/);
    expect(flat(text)).toMatch(/The rear chamber is tuned to [\d.]+ Hz by one vent/);
    expect(flat(text)).toContain(kind === 'series-band-pass' ? 'open into the front one' : 'through the vents of both');
    expect(flat(text)).toMatch(/Up to [\d.]+ dB every vent is quiet: .* in the vent of the (front|rear) chamber, at/);
    expect(flat(text)).toMatch(/The air loses pressure in the vents by its speed: at the wanted level/);
    expect(flat(text).includes('from the front side of the partition')).toBe(kind === 'series-band-pass');
  });

  test('the demand of the search is that of the compiled system', () => {
    const search = searchFor({ ...brief, box: { kinds: [kind] } });
    const { lowest, highest, level } = search.job.wanted;
    const demand = compileDemand(search.job, search.variants[0]!);
    for (const [volume, tuned, ratio, share, diameter] of [
      [0.02, 90, 0.5, 0.7, 0.05],
      [0.03, 70, 0.35, 0.4, 0.08],
      [0.015, 110, 0.9, 0.6, 0.1],
    ] as const) {
      const out = emptyDemand(search.variants[0]!);
      demand([volume, tuned, ratio, share, diameter], out);
      const area = si('area', (Math.PI / 4) * diameter ** 2);
      const system = familyOf({
        drivers: driverOf(brief),
        rearVolume: si('volume', volume * share),
        rearTuning: si('frequency', tuned * ratio),
        frontVolume: si('volume', volume * (1 - share)),
        frontTuning: si('frequency', tuned),
        rearQL: 7,
        frontQL: 7,
        frontVentArea: area,
        rearVentArea: area,
        sourceResistance: '0.05 Ω',
      });
      const band = logarithmicGrid(si('frequency', lowest), si('frequency', highest), 2000);
      const { levelHalfSpace, airSpeedPeak } = respond(system, band, { driveVoltageRms: '1 V' });
      const drives = levelHalfSpace.map((one) => 10 ** ((level - one) / 20));
      expect(Math.abs(out.voltage / Math.max(...drives) - 1)).toBeLessThan(2e-3);
      // The greater of both vents: the search reads their flow.
      const speeds = drives.map((drive, i) => drive * airSpeedPeak![i]!);
      expect(Math.abs(out.loads[0]! / area / Math.max(...speeds) - 1)).toBeLessThan(2e-3);
    }
  });
});

describe('what a brief may say', () => {
  test('vents outside that could open only through the partition are refused, in whichever chamber', () => {
    const across = (kind: string, faces: string[]) =>
      ({
        ...horn,
        box: { kinds: [kind] },
        vent: { ...horn.vent, faces },
        partition: { across: ['depth'] },
      }) as unknown as Brief;
    expect(() => design(across('parallel-band-pass', ['front']))).toThrow(/partition\.across.*both chambers/);
    expect(() => design(across('parallel-band-pass', ['back']))).toThrow(/partition\.across/);
    expect(() => design(across('series-band-pass', ['back']))).toThrow(/partition\.across/);
    expect(searchFor(across('series-band-pass', ['front'])).variants).toHaveLength(1);
    expect(searchFor(across('parallel-band-pass', ['front', 'left'])).variants).toHaveLength(1);
  });
  test('the fields of the partition need a kind that has one', () => {
    const wrong = { ...horn, box: { kinds: ['vented'] }, partition: { across: ['width'] } } as unknown as Brief;
    expect(() => design(wrong)).toThrow(/partition: .*band-pass/);
  });
});
