import { standardAir } from '@airspring/core/air';
import { butterworthShape, type FilterKernel, highPass, linkwitzRileyShape, lowPass } from '@airspring/core/filter';
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import {
  absorbing,
  bestDelay,
  boundaryPower,
  compileCorner,
  compilePath,
  compilePressureZone,
  compileRoomGain,
  gainLevel,
  joinMains,
  levelAtDistance,
  levelOfPower,
  mainPressure,
  pressureLevel,
  pressureZoneCorner,
  roomModes,
  solidAngleGain,
  soundPressure,
  sumAtListener,
} from '@airspring/core/room';
import fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const m = (value: number) => si('length', value);
const grid = logarithmicGrid('10 Hz', '500 Hz', 40);
const near = (got: ArrayLike<number>, expected: ArrayLike<number>, size: number) =>
  expect(
    Array.from(expected).reduce((most, want, i) => Math.max(most, Math.abs(got[i]! - want)), 0),
  ).toBeLessThanOrEqual(size);
/** Down to a millimetre, which no scale makes too small for a length. */
const thousandths = (most: number) => fc.integer({ min: -1000 * most, max: 1000 * most }).map((value) => value / 1000);
const along = thousandths(4).map(Math.abs);
const place = fc.tuple(along, along, along);
const away = between(0.05, 5);
const factors = fc.array(between(0, 1), { minLength: 0, maxLength: 3 });
const wallsOf = (distances: readonly number[], absorbed: readonly number[]) =>
  absorbed.map((coefficient, i) => ({ distance: m(distances[i]!), reflection: absorbing(coefficient) }));

test.prop([place, place, factors])('source and listener change places', (source, listener, absorbed) => {
  fc.pre(Math.hypot(...source.map((at, i) => at - listener[i]!)) > 0.01);
  const gain = (from: readonly number[], to: readonly number[]) => {
    const along = to.map((at, i) => m(i < absorbed.length ? at : at - from[i]!)) as [never, never, never];
    return gainLevel(compileCorner({ walls: wallsOf(from, absorbed), listener: along }), grid);
  };
  near(gain(source, listener), gain(listener, source), 1e-6);
});

test.prop([place, factors])('power near walls lies between none and that of walls that touch', (source, absorbed) => {
  const power = boundaryPower(wallsOf(source, absorbed), grid);
  const most = absorbed.reduce((sum, a) => sum + 10 * Math.log10(1 + Math.sqrt(1 - a)), 0);
  for (const level of power) expect(level).toBeLessThanOrEqual(most + 1e-9);
});

test.prop([place, place, factors, between(0.2, 5)])(
  'scaling: metres times a, hertz over a',
  (source, to, absorbed, a) => {
    fc.pre(Math.hypot(...source.map((at, i) => (i < absorbed.length ? at - to[i]! : to[i]!))) > 0.01);
    const scaled = frequencyGrid(grid.map((f) => f / a));
    const corner = (by: number) =>
      compileCorner({
        walls: wallsOf(
          source.map((at) => at * by),
          absorbed,
        ),
        listener: to.map((at) => m(at * by)) as [never, never, never],
      });
    near(
      gainLevel(corner(a), scaled).map((level) => level + 20 * Math.log10(a)),
      gainLevel(corner(1), grid),
      1e-6,
    );
    near(
      boundaryPower(
        wallsOf(
          source.map((at) => at * a),
          absorbed,
        ),
        scaled,
      ),
      boundaryPower(wallsOf(source, absorbed), grid),
      1e-9,
    );
  },
);

test.prop([between(1, 70), away, between(0.5, 20), between(0.2, 5)])('a room scales', (volume, distance, leak, a) => {
  const room = (by: number) => ({
    volume: si('volume', volume * by ** 3),
    distance: m(distance * by),
    leakCorner: si('frequency', leak / by),
  });
  const scaled = frequencyGrid(grid.map((f) => f / a));
  const shift = 20 * Math.log10(a);
  near(
    gainLevel(compileRoomGain(room(a)), scaled).map((x) => x + shift),
    gainLevel(compileRoomGain(room(1)), grid),
    1e-8,
  );
  const { distance: _, ...zone } = room(a);
  const { distance: __, ...first } = room(1);
  near(
    gainLevel(compilePressureZone(zone), scaled).map((x) => x + shift),
    gainLevel(compilePressureZone(first), grid),
    1e-8,
  );
});

test.prop([fc.tuple(between(2, 8), between(2, 8), between(2, 4))])(
  'modes: as many as the volume, walls and edges say',
  (edges) => {
    const [length, width, height] = edges.map(m) as [never, never, never];
    const upTo = 400;
    const x = upTo / standardAir.speedOfSound;
    const [l, w, h] = edges;
    const count =
      (4 * Math.PI * l * w * h * x ** 3) / 3 + (Math.PI * (l * w + w * h + h * l) * x ** 2) / 2 + ((l + w + h) * x) / 2;
    const found = roomModes({ length, width, height, upTo: si('frequency', upTo) }).length;
    expect(Math.abs(found - count)).toBeLessThan(0.03 * count + 12);
  },
);

test.prop([fc.constantFrom(2, 4, 6, 8), between(30, 200), away])(
  'Linkwitz–Riley sums are flat',
  (order, at, distance) => {
    const corner = si('frequency', at);
    const pressure = { re: new Float64Array(grid.length).fill(1), im: new Float64Array(grid.length) };
    const shape = linkwitzRileyShape(order);
    const common = { pressure, distance: m(distance) };
    const polarity = order % 4 === 0 ? 'normal' : 'inverted';
    const { sum } = joinMains(
      {
        box: { ...common, filter: lowPass(shape, corner) },
        main: { ...common, filter: highPass(shape, corner), polarity },
      },
      grid,
    );
    near(
      pressureLevel(sum),
      new Array(grid.length).fill(pressureLevel({ re: Float64Array.of(1 / distance), im: Float64Array.of(0) })[0]!),
      1e-9,
    );
  },
);

test.prop([away, away, thousandths(10).map((milliseconds) => milliseconds / 1000), fc.boolean()])(
  'no delay adds better than the best',
  (near_, far, delay, inverted) => {
    const pressure = { re: new Float64Array(grid.length).fill(1), im: new Float64Array(grid.length) };
    const [low, high] = [lowPass(butterworthShape(3), '80 Hz'), highPass(butterworthShape(3), '80 Hz')];
    const box = { pressure, filter: low, distance: m(near_) };
    const main = { pressure, filter: high, distance: m(far) };
    const band = { from: si('frequency', 40), to: si('frequency', 160) };
    const best = bestDelay(joinMains({ box, main }, grid), { ...band, most: si('time', 0.025) });
    const tried = joinMains(
      {
        box: { ...box, delay: si('time', Math.max(-delay, 0)) },
        main: { ...main, delay: si('time', Math.max(delay, 0)), polarity: inverted ? 'inverted' : 'normal' },
      },
      grid,
    );
    // With next to no delay left to choose, the measure of that trial alone.
    const there = bestDelay(tried, { ...band, most: si('time', 1e-9) });
    const shortfall = there.polarity === 'normal' ? there.shortfall : there.otherPolarity.shortfall;
    expect(best.shortfall).toBeLessThanOrEqual(shortfall + 1e-6);
  },
);

const wild = fc.oneof(
  fc.double(),
  between(0.01, 100),
  fc.constantFrom(0, -0, 1, 1e-6, 1e3, 1e7, -3, Number.NaN),
  fc.constantFrom('1 m', '3 m³', '50 Hz', '2 ms', '90 dB', '4 kg', 'inverted', '', null, undefined),
) as fc.Arbitrary<never>;
const widest = logarithmicGrid(1e-4, 1e7, 13);
const column = fc.record({
  re: fc
    .array(fc.oneof(between(-1, 1), fc.double()), { minLength: 13, maxLength: 13 })
    .map((list) => Float64Array.from(list)),
  im: fc.array(between(-1e100, 1e100), { minLength: 12, maxLength: 13 }).map((list) => Float64Array.from(list)),
});
const fields = fc.record({
  distance: wild,
  delay: wild,
  polarity: fc.constantFrom('normal', 'inverted', 'up', undefined) as fc.Arbitrary<never>,
  level: wild,
  solidAngle: wild,
});
const path = fc.oneof(
  fields,
  fields.map(({ distance }) => ({ distance })),
);
const run = (kernel: FilterKernel) => {
  const out = { re: new Float64Array(widest.length).fill(1), im: new Float64Array(widest.length) };
  kernel(widest, out);
  return out;
};

test.prop([wild, wild, wild, wild, path, column, fc.array(wild, { maxLength: 4 })], { numRuns: fuzzRuns })(
  'any input is answered with finite numbers or refused',
  (a, b, c, d, way, pressure, list) => {
    const answers: readonly (() => unknown)[] = [
      () => solidAngleGain(a),
      () =>
        boundaryPower(
          list.map((distance) => ({ distance })),
          [b, c],
        ),
      () => boundaryPower([{ distance: '1 m', reflection: Object.assign(() => a, { sources: [] }) }], widest),
      () => absorbing(a)(b),
      () => run(compileCorner({ walls: [{ distance: a }], listener: [b, c, d] })),
      () => run(compileCorner({ walls: list.map((distance) => ({ distance })), listener: [b, c, d] })),
      () => roomModes({ length: a, width: b, height: c, upTo: d }),
      () => roomModes({ length: '4 m', width: '3 m', height: '2 m', upTo: a }),
      () => run(compilePressureZone({ volume: a, leakCorner: b })),
      () => run(compileRoomGain({ volume: a, distance: b, leakCorner: c, solidAngle: d })),
      () => pressureZoneCorner({ volume: a, distance: b, solidAngle: c }),
      () => levelAtDistance({ level: a, distance: b, solidAngle: c }),
      () => levelOfPower({ power: a, distance: b, solidAngle: c }),
      () => gainLevel(compilePath(way), [a]),
      () => run(compilePath(way)),
      () => soundPressure({ levelHalfSpace: pressure.re, phase: pressure.im }),
      () => soundPressure({ levelHalfSpace: Float64Array.of(a), phase: Float64Array.of(b) }),
      () => mainPressure({ level: a, highPass: highPass(butterworthShape(2), b) }, widest),
      () => mainPressure({ level: a, highPass: b }, widest),
      () =>
        sumAtListener(
          [
            { pressure, ...way },
            { pressure, distance: '1 m' },
          ],
          widest,
        ),
      () => joinMains({ box: { pressure, ...way }, main: { pressure, distance: '1 m', filter: a } }, widest),
      () => {
        const joined = joinMains({ box: { pressure, ...way }, main: { pressure, distance: '1 m' } }, widest);
        return [
          joined,
          bestDelay(joined, { from: '1 Hz', to: '1 kHz' }),
          bestDelay(joined, { from: a, to: b, most: c }),
        ];
      },
      () => joinMains(a, b),
      () => bestDelay(a, b),
      () => sumAtListener(a, b),
      () => roomModes(a),
    ];
    for (const answer of answers) allFinite(answered(answer));
  },
  5000 + 10 * fuzzRuns,
);
