/** Levels at a distance, and several sources at a listener. */
import { butterworthShape, compileFilter, highPass } from '@airspring/core/filter';
import { frequencyGrid, si } from '@airspring/core/quantity';
import {
  compilePath,
  gainLevel,
  levelAtDistance,
  levelOfPower,
  mainPressure,
  pressureLevel,
  solidAngles,
  soundPressure,
  sumAtListener,
} from '@airspring/core/room';
import { checkIn } from '../../ledger/check.js';
import { byProgram, fixtures, hertz, metres, multiplied, numpy, roundAir, scipy } from './fixtures.js';

const check = checkIn(roundAir);

const beranek = { key: 'beranek2012', locator: 'pressure of a simple source' } as const;
const derived = { status: 'derived', kind: 'example' } as const;
const decibels = (value: number) => si('level', value);

check('room.level-at-distance', {
  ...derived,
  formula: 'room/levelAtDistance',
  source: beranek,
  given: {
    distance: { value: [1, 2, 4, 10, 0.5], unit: 'm' },
    solidAngle: { value: [1, 1, 2, 0.5, 2].map((halves) => halves * 2 * Math.PI), unit: 'sr' },
  },
  got: ({ distance, solidAngle }) => levelAtDistance({ level: decibels(90), distance: metres(distance), solidAngle }),
  expected: [90, 83.979400087, 71.938200261, 76.020599913, 90],
  unit: 'dB',
  tolerance: { absolute: 1e-8, why: 'logarithms of two and ten to eleven digits' },
});
/** ρ, c, and the level of one watt in half space and in free air. */
const media = [
  [1.18, 345, 112.0946124, 109.0843125],
  [1.2041, 343.2, 112.1596998, 109.1493998],
  [1.2, 343, 112.1423551, 109.1320551],
  [1.21, 343, 112.1783963, 109.1680964],
  [1.184, 346.1, 112.1231344, 109.1128345],
] as const;
for (const [i, angle] of [solidAngles.halfSpace, solidAngles.fullSpace].entries())
  check(`room.level-of-power.${i}`, {
    ...derived,
    formula: 'room/levelOfPower',
    source: { ...beranek, locator: 'power and intensity of a point source, p² = Wρc/(Ωr²)' },
    given: {
      density: { value: media.map(([density]) => density), unit: 'kg/m³' },
      speedOfSound: { value: media.map(([, speed]) => speed), unit: 'm/s' },
      solidAngle: { value: angle, unit: 'sr' },
    },
    got: ({ density, speedOfSound, solidAngle }) =>
      levelOfPower(
        { power: '1 W', distance: '1 m', solidAngle },
        { ...roundAir, density: si('density', density), speedOfSound: si('speed', speedOfSound) },
      ),
    expected: media.map((row) => row[2 + i] as number),
    unit: 'dB',
    tolerance: { absolute: 1e-7, why: 'told to ten digits' },
  });
check('room.level-of-power.distance', {
  ...derived,
  formula: 'room/levelOfPower',
  source: { ...beranek, locator: 'power of a source in half space from its displaced volume, and its level at 2 m' },
  given: { power: { value: 0.3524600557, unit: 'W' }, distance: { value: 2, unit: 'm' } },
  got: ({ power, distance }) => levelOfPower({ power: si('power', power), distance: metres(distance) }, roundAir),
  expected: 101.6101989,
  unit: 'dB',
  tolerance: { absolute: 1e-7, why: 'told to ten digits' },
});

for (const [i, { distance, delay, sign, level, solidAngle, frequencies, ...expected }] of fixtures.paths.entries()) {
  const path = {
    distance: metres(distance),
    delay: si('time', delay),
    polarity: sign > 0 ? ('normal' as const) : ('inverted' as const),
    level: decibels(level),
    solidAngle,
  };
  for (const part of ['re', 'im'] as const)
    check(`room.path.${i}.${part}`, {
      ...byProgram,
      formula: 'room/compilePath',
      source: numpy,
      given: { distance: { value: distance, unit: 'm' }, delay: { value: delay, unit: 's' } },
      got: () => multiplied(compilePath(path, roundAir), frequencies)[part],
      expected: expected[part],
      unit: '1',
      tolerance: { absolute: 1e-13, why: 'rounding of an angle' },
    });
  check(`room.gain-level.${i}`, {
    ...byProgram,
    formula: 'room/gainLevel',
    source: numpy,
    given: { distance: { value: distance, unit: 'm' } },
    got: () => gainLevel(compilePath(path, roundAir), frequencies),
    expected: expected.re.map((re, k) => 10 * Math.log10(re ** 2 + expected.im[k]! ** 2)),
    unit: 'dB',
    tolerance: { absolute: 1e-11, why: 'rounding' },
  });
}

const iso = { key: 'iso1683', locator: 'reference of sound pressure in air, 20 µPa' } as const;
check('room.pressure-level', {
  ...derived,
  formula: 'room/pressureLevel',
  source: iso,
  given: { pressure: { value: [20e-6, 1, 20], unit: 'Pa' } },
  got: ({ pressure }) =>
    pressureLevel({ re: Float64Array.of(0.6 * pressure), im: Float64Array.of(-0.8 * pressure) })[0]!,
  expected: [0, 93.9794000867, 120],
  unit: 'dB',
  tolerance: { absolute: 1e-9, why: 'twelve digits of 20 lg 50000' },
});
for (const part of ['re', 'im'] as const)
  check(`room.sound-pressure.${part}`, {
    ...derived,
    formula: 'room/soundPressure',
    source: iso,
    given: { level: { value: [0, 93.9794000867, 120], unit: 'dB' } },
    got: ({ level }) =>
      soundPressure({ levelHalfSpace: Float64Array.of(level), phase: Float64Array.of(Math.atan2(-0.8, 0.6)) })[
        part
      ][0]!,
    expected: [20e-6, 1, 20].map((size) => size * (part === 're' ? 0.6 : -0.8)),
    unit: 'Pa',
    tolerance: { relative: 1e-11, why: 'twelve digits of the level of one pascal' },
  });

for (const [i, { order, corner, level, frequencies, ...expected }] of fixtures.mains.entries())
  for (const part of ['re', 'im'] as const)
    check(`room.main-pressure.${i}.${part}`, {
      ...byProgram,
      formula: 'room/mainPressure',
      source: scipy,
      given: { order: { value: order, unit: '1' }, corner: { value: corner, unit: 'Hz' } },
      got: () =>
        mainPressure(
          { level: decibels(level), highPass: highPass(butterworthShape(order), hertz(corner)) },
          frequencies,
        )[part],
      expected: expected[part],
      unit: 'Pa',
      tolerance: { absolute: 1e-14, why: 'rounding of one pascal and less' },
    });

for (const [i, { frequencies, ...expected }] of fixtures.sums.entries())
  for (const part of ['re', 'im'] as const)
    check(`room.sum-at-listener.${i}.${part}`, {
      ...byProgram,
      formula: 'room/sumAtListener',
      source: scipy,
      given: {},
      got: () => {
        const grid = frequencyGrid(frequencies);
        const filtered = (order: number, corner: number) => {
          const column = { re: new Float64Array(grid.length).fill(1), im: new Float64Array(grid.length) };
          compileFilter(highPass(butterworthShape(order), hertz(corner)))(grid, column);
          return column;
        };
        const sources = [
          { pressure: filtered(2, 40), distance: metres(2) },
          {
            pressure: filtered(4, 30),
            distance: metres(3.2),
            delay: si('time', 0.0015),
            polarity: 'inverted',
            level: decibels(2),
          },
        ] as const;
        return sumAtListener(sources, grid, roundAir)[part];
      },
      expected: expected[part],
      unit: 'Pa',
      tolerance: { absolute: 1e-13, why: 'rounding' },
    });
