import { standardAir } from '@airspring/core/air';
import { greatestLevel } from '@airspring/core/limit';
import { complexColumn } from '@airspring/core/numeric';
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import {
  compileCorner,
  compilePressureZone,
  compileRoomGain,
  gainLevel,
  levelAtDistance,
  roomModes,
  solidAngles,
} from '@airspring/core/room';
import { type Brief, reportText, retrofit, retrofitText } from 'airspring';
import { expect, test } from 'vitest';
import oldThunderBox from '../../../packages/airspring/briefs/old-thunder-box.json' with { type: 'json' };
import corner from '../../../packages/airspring/briefs/thunder-in-the-corner.json' with { type: 'json' };
import { heardOf } from '../../../packages/airspring/src/job/heard.js';
import { limitsOf } from '../../../packages/airspring/src/record/limits.js';
import { playingOf } from '../../../packages/airspring/src/record/playing.js';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { bestOf, demo, metByWeights, searchFor } from '../../arbitrary/brief.js';
import { faultsOf } from '../../refusal/faults.js';

const closed = { ...demo, box: { kinds: ['closed'] }, wanted: { ...demo.wanted, lowest: '45 Hz' } } as Brief;
/** The demonstration as a closed box, with its level wanted in a room. */
const heardIn = (room: Brief['room'], level = '90 dB', more: Partial<Brief['wanted']> = {}) =>
  ({ ...closed, wanted: { ...closed.wanted, level, at: 'listener', ...more }, room }) as Brief;

test('a room that is a half space at 1 m leads to the same designs as none', () => {
  const { wanted } = closed;
  const plain = { ...closed, wanted: { ...wanted, level: '90 dB' } } as Brief;
  const { heard, ...there } = bestOf(heardIn({ distance: '1 m', walls: ['0 mm'] }));
  const { assumed, cautions, ...rest } = there;
  expect(rest).toEqual(Object.fromEntries(Object.keys(rest).map((name) => [name, bestOf(plain)[name as 'box']])));
  expect(heard?.listener).toEqual(heard?.oneMetre);
});

test('a listener who sits twice as far away needs 6.02 dB more of the same box', () => {
  const near = bestOf(heardIn({ distance: '2 m' }, '86.020599913 dB'));
  const far = bestOf(heardIn({ distance: '4 m' }, '80 dB'));
  expect(far.box).toEqual(near.box);
  expect(near.loudness.level - far.loudness.level).toBeCloseTo(20 * Math.log10(2), 9);
  expect(far.atWantedLevel.displacementPeak.value).toBeCloseTo(near.atWantedLevel.displacementPeak.value, 9);
});

test('the directions over which images are averaged are those of the space that the walls leave', () => {
  const walls = [0.3, 0.7, 1.1];
  const distance = 900;
  const { gain } = heardOf({ distance, walls }, true, standardAir);
  const grid = frequencyGrid([40, 110, 240]);
  const sums = new Float64Array(grid.length);
  const N = 24;
  for (let i = 0; i < N; i++)
    for (let j = 0; j < N; j++) {
      const up = (i + 0.5) / N;
      const turn = ((j + 0.5) / N) * (Math.PI / 2);
      const flat = Math.sqrt(1 - up ** 2);
      const along = [flat * Math.cos(turn), flat * Math.sin(turn), up].map((part) => si('length', part * distance));
      const heard = complexColumn(grid.length);
      heard.re.fill(1);
      const near = walls.map((wall) => ({ distance: si('length', wall) }));
      compileCorner({ walls: near, listener: along as never })(grid, heard);
      for (let k = 0; k < grid.length; k++) sums[k]! += (heard.re[k]! ** 2 + heard.im[k]! ** 2) / N ** 2;
    }
  gain(grid).forEach((level, k) => expect(level).toBeCloseTo(10 * Math.log10(sums[k]!), 1));
});

test('a wall that is far away is no wall, in the level and in what the response is counted from', () => {
  const grid = [20, 45, 120];
  const at = (walls: readonly number[], distance = 3) => heardOf({ distance, walls }, true, standardAir);
  const [none, far] = [at([0]), at([0, 1e5])];
  far.gain(grid).forEach((level, i) => expect(level).toBeCloseTo(none.gain(grid)[i]!, 2));
  expect(far.inStep).toBeCloseTo(none.inStep, 3);
  // One that comes nearer never lessens what is heard in step; one that touches doubles the pressure.
  const inStep = [100, 10, 3, 1, 0.3, 0].map((wall) => at([0, wall]).inStep);
  expect(inStep).toEqual(inStep.toSorted((a, b) => a - b));
  expect(inStep.at(-1)! - none.inStep).toBeCloseTo(20 * Math.log10(2), 12);
  expect([...at([0.3, 1, 2]).gain(grid)].map((level) => level.toFixed(9))).toEqual(
    [...at([2, 0.3, 1]).gain(grid)].map((level) => level.toFixed(9)),
  );
});

test('what a report tells of a room is what the functions of core say', () => {
  const room = { distance: '3 m', walls: ['0 mm', '0 mm'], volume: '40 m³', leakCorner: '4 Hz' };
  const brief = heardIn(room, '84 dB', { rise: '6 dB' });
  const search = searchFor(brief);
  const [box] = bestBoxes(search, 1);
  const told = bestOf(brief);
  const { system, drivers, limits } = playingOf(box!);
  const band = logarithmicGrid('45 Hz', '120 Hz', 200);
  const exact = compileRoomGain(
    { volume: '40 m³', distance: '3 m', leakCorner: '4 Hz', solidAngle: solidAngles.quarterSpace },
    system.air,
  );
  for (const { frequency, gain } of told.heard!.gains) {
    expect(Math.abs(gain - gainLevel(exact, [frequency])[0]!)).toBeLessThan(1e-9);
  }
  const most = greatestLevel(system, limitsOf(search.job, drivers, limits), band);
  const there = gainLevel(exact, band).map((gain, i) => gain + most.levelHalfSpace[i]!);
  expect(Math.abs(told.heard!.listener.level - Math.min(...there))).toBeLessThan(1e-9);
  expect(told.loudness.level).toBe(told.heard!.listener.level);
  expect(Math.abs(told.heard!.oneMetre.level - most.least.levelHalfSpace)).toBeLessThan(1e-9);
  const { gainOfCurves } = told.heard!;
  gainLevel(exact, told.curves.frequencies).forEach((gain, i) => {
    expect(Math.abs(gain - gainOfCurves[i]!)).toBeLessThan(1e-9);
  });
  const inStep = levelAtDistance({ level: '0 dB' as never, distance: '3 m', solidAngle: solidAngles.quarterSpace });
  expect(told.heard!.inStep).toBeCloseTo(inStep, 12);
  // The search finds the same reach by its own road.
  expect(Math.abs(told.response.cutoff - told.heard!.listener.cutoff!)).toBeLessThan(0.01);
});

test('at the told frequency the even pressure of a room equals the sound of the box with its walls in step', () => {
  for (const walls of [['0 mm'], ['0 mm', '2.5 m'], ['300 mm', '300 mm', '1 m'], []]) {
    const { heard } = bestOf(heardIn({ distance: '3 m', walls, volume: '40 m³' }, '70 dB', { rise: '20 dB' }));
    const { pressureBelow, volume } = heard!.room!;
    const even = gainLevel(compilePressureZone({ volume: si('volume', volume) }), [pressureBelow]);
    expect(even[0]).toBeCloseTo(heard!.inStep, 9);
  }
});

test('a reach that is only the end of the search is told as such, and one that is found is not', () => {
  const cabin = metByWeights(
    heardIn({ distance: '1.2 m', volume: '3 m³' }, '75 dB', { rise: '40 dB', lowest: '20 Hz' }),
  );
  const { heard, response } = cabin.designs[0]!;
  expect([response.depth, response.endOfSearch]).toEqual([5, true]);
  expect([heard?.listener.endOfSearch, heard?.oneMetre.endOfSearch]).toEqual([true, undefined]);
  const text = reportText(cabin).replace(/\s+/g, ' ');
  expect(text).toContain('It reaches at least down to 5.0 Hz, the lowest tone that is searched.');
  expect(text).toMatch(/at the listener ≤ 5\.0 Hz/);
  expect(text).not.toContain('reaches down to 5.0 Hz');
  const free = bestOf(heardIn({ distance: '1 m', walls: ['0 mm'] }));
  expect(free.response.endOfSearch).toBeUndefined();
});

test('the even pressure of a cabin carries a box deeper there than at 1 m in half space', () => {
  const { heard } = bestOf(
    heardIn({ distance: '1.2 m', volume: '4 m³', leakCorner: '6 Hz' }, '90 dB', { rise: '20 dB' }),
  );
  expect(heard!.oneMetre.cutoff! / heard!.listener.cutoff!).toBeGreaterThan(1.2);
  expect(heard!.listener.level).toBeGreaterThan(heard!.oneMetre.level);
});

test('a room changes no design whose level is wanted at 1 m; both places are told apart', () => {
  const room = { distance: '5 m', walls: ['100 mm', '400 mm'] };
  const { heard, assumed, ...plain } = bestOf({ ...closed, room } as Brief);
  const { assumed: _, ...without } = bestOf(closed);
  expect(plain).toEqual(without);
  expect(heard?.wantedAt).toBe('1 m');
  expect(heard?.oneMetre.level).toBe(plain.loudness.level);
});

test('the thunder in the corner: its report tells the room, both places and the main speakers', () => {
  const answer = metByWeights({ ...corner, box: { kinds: ['closed'] }, wanted: { ...corner.wanted, lowest: '50 Hz' } });
  const text = reportText(answer).replace(/\s+(?:! )?/g, ' ');
  const { length, width, height } = { length: '9 m', width: '7 m', height: '3.6 m' } as const;
  const mode = roomModes({ length, width, height, upTo: '60 Hz' })[0]!.frequency;
  for (const said of [
    'at the listener, 6 m away (wanted: 98 dB)',
    'near three walls at right angles (from the drivers: 130 mm, 300 mm, 350 mm)',
    'The wants of this brief are judged at the listener.',
    `Its first mode is at ${mode.toFixed(1)} Hz`,
    'filters of Linkwitz and Riley of fourth order at 100 Hz',
    'reflect all: a reflection factor of 1.00',
    'Nearer to the box it is louder',
  ])
    expect(text).toContain(said);
});

test.each([
  ['wanted.at', { wanted: { ...demo.wanted, at: 'listener' } }],
  ['wanted.at', { wanted: { ...demo.wanted, at: 'the stage' }, room: { distance: '3 m' } }],
  ['room.distance', { room: { walls: [] } }],
  ['room.distance', { room: { distance: '9 m', size: { length: '4 m', width: '3 m', height: '2 m' } } }],
  ['room.walls[1]', { room: { distance: '3 m', walls: ['0 mm', '5 L'] } }],
  ['room.walls', { room: { distance: '3 m', walls: ['0 mm', '0 mm', '0 mm', '0 mm'] } }],
  ['room.volume', { room: { distance: '1 m', volume: '3 m³', size: { length: '4 m', width: '3 m', height: '2 m' } } }],
  ['room.leakCorner', { room: { distance: '3 m', leakCorner: '4 Hz' } }],
  ['room.mains.f3', { room: { distance: '3 m', mains: { crossover: '80 Hz', distance: '3 m' } } }],
])('a fault of a room is told at its path: %s', (path, fields) => {
  expect(faultsOf(() => searchFor({ ...demo, ...fields })).map((fault) => fault.path)).toEqual([path]);
});

test('an existing box is judged at 1 m, and told at the listener beside that', () => {
  const { wanted } = oldThunderBox;
  const refused = faultsOf(() =>
    retrofit({ ...oldThunderBox, wanted: { ...wanted, at: 'listener' }, room: { distance: '3 m' } }),
  );
  expect(refused.map(({ path }) => path)).toEqual(['wanted.at']);
  // Without saws there are fewer changes.
  const answer = retrofit({ ...oldThunderBox, workshop: { holeSaws: [] }, room: { distance: '2 m' } });
  expect(answer.designs.length).toBeGreaterThan(0);
  const { account, heard } = answer.now;
  expect(heard!.oneMetre).toMatchObject({ frequency: account.loudest.frequency, binding: account.loudest.binding });
  expect(Math.abs(heard!.oneMetre.level - account.loudest.level)).toBeLessThan(0.02);
  // On a floor, twice as far: a half space.
  expect(heard!.oneMetre.level - heard!.listener.level).toBeCloseTo(20 * Math.log10(2), 9);
  expect(heard!.listener.cutoff).toBeCloseTo(account.reach!, 1);
  for (const design of answer.designs) expect(design.heard).toBeDefined();
  const text = retrofitText(answer, {}).replace(/\s+/g, ' ');
  expect(text).toContain('The box stands on a floor (half space), and the listener is 2 m away.');
  expect(text).toContain('The wants of this brief are judged at 1 m in half space.');
});

test('in free air the box joins its main speakers: where they cross, how they stand to each other, and what adds best', () => {
  const mains = { crossover: '90 Hz', distance: '4.5 m', f3: '70 Hz' };
  const brief = { ...closed, room: { distance: '4 m', walls: [], mains } } as unknown as Brief;
  const one = bestOf(brief);
  const told = one.heard!.mains!;
  const [{ variant, point }] = bestBoxes(searchFor(brief), 1) as [NonNullable<ReturnType<typeof bestBoxes>[0]>];
  const system = variant.system(point);
  const { speedOfSound } = system.air;

  type Complex = readonly [size: number, angle: number];
  const times = (...all: Complex[]): Complex => all.reduce(([r, a], [s, b]) => [r * s, a + b]);
  /** s^n / (s² + √2 s + 1) at s = j f/corner. */
  const section = (x: number, power: number): Complex => [
    x ** power / Math.hypot(1 - x * x, Math.SQRT2 * x),
    (power * Math.PI) / 2 - Math.atan2(Math.SQRT2 * x, 1 - x * x),
  ];
  const late = (f: number, metres: number): Complex => [1, (-2 * Math.PI * f * metres) / speedOfSound];
  const both = (f: number): readonly [box: Complex, main: Complex] => {
    const { levelHalfSpace, phase } = respond(system, [f]);
    const alone: Complex = [10 ** ((levelHalfSpace[0]! - one.response.referenceLevel) / 20), phase[0]!];
    const [low, high] = [section(f / 90, 0), section(f / 90, 2)];
    return [times(alone, low, low, late(f, 4)), times(section(f / 70, 2), high, high, late(f, 4.5))];
  };
  const { frequency, phaseDifference } = told.crossing!;
  const [box, main] = both(frequency);
  expect(box[0] / main[0]).toBeCloseTo(1, 3);
  const turn = box[1] - main[1] - phaseDifference;
  expect(Math.abs(turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)))).toBeLessThan(1e-3);

  /** How far the sum stays below both in phase within an octave of the crossover, as a mean, if the box comes later by a delay. */
  const tones = Array.from(logarithmicGrid(45, 180, 97), (f) => [f, ...both(f)] as const);
  const shortfall = (delay: number, sign: 1 | -1) =>
    tones.reduce((sum, [f, [r, a], [s, b]]) => {
      const apart = a - 2 * Math.PI * f * delay - b;
      const size = Math.hypot(r * Math.cos(apart) + sign * s, r * Math.sin(apart));
      return sum + (20 * Math.log10((r + s) / size)) / tones.length;
    }, 0);
  const { best } = told;
  const delay = best.boxDelay - best.mainDelay;
  expect(shortfall(delay, best.polarity === 'normal' ? 1 : -1)).toBeCloseTo(best.shortfall, 1);
  expect(shortfall(0, 1)).toBeCloseTo(told.shortfallAsItIs, 1);
  for (let k = -80; k <= 80; k++)
    for (const sign of [1, -1] as const) expect(shortfall(k / 4000, sign)).toBeGreaterThan(best.shortfall - 0.02);

  const text = reportText(metByWeights(brief)).replace(/\s+/g, ' ');
  expect(text).toContain('The box stands in free air, and the listener is 4 m away.');
  expect(text).toContain(`equally loud at ${frequency.toFixed(1)} Hz`);
  expect(text).not.toContain('Walls reflect all');
});
