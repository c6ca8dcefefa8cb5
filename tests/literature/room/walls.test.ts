/** Walls near a small source: closed forms of its images, and the mean over all directions by a numeric library. */
import { absorbing, boundaryPower, compileCorner, rigid, solidAngleGain, solidAngles } from '@airspring/core/room';
import { checkIn } from '../../ledger/check.js';
import { byProgram, fixtures, hertz, metres, multiplied, numpy, roundAir } from './fixtures.js';

const check = checkIn(roundAir);

const allison = { key: 'allison1974', locator: 'power of a small source by the images of its walls' } as const;
const worked = { status: 'derived', kind: 'example' } as const;
const closed = { absolute: 1e-9, why: 'closed form, told to ten digits' } as const;

for (const [i, [name, angle]] of Object.entries(solidAngles).entries())
  for (const [gain, perHalf] of [
    ['pressureOfFlow', 6.020599913],
    ['powerOfFlow', 3.010299957],
    ['pressureOfPower', 3.010299957],
  ] as const)
    check(`room.solid-angle.${name}.${gain}`, {
      ...worked,
      formula: 'room/solidAngleGain',
      source: { ...allison, locator: 'power depends on the resistive load and on the angle of radiation' },
      given: { solidAngle: { value: angle, unit: 'sr' } },
      got: ({ solidAngle }) => solidAngleGain(solidAngle)[gain],
      expected: i * perHalf,
      unit: 'dB',
      tolerance: { absolute: 2e-9, why: 'ten digits for each halving of the angle' },
    });

/** k d, and dB re free air near one, two and three walls at that distance. */
const equalDistances: readonly (readonly [number, number, number, number])[] = [
  [0, 3.010299957, 6.020599913, 9.03089987],
  [0.25, 2.920014198, 5.839269982, 8.757748886],
  [0.5, 2.651648803, 5.290962874, 7.916654641],
  [1, 1.627581272, 3.049679108, 4.148415033],
  [Math.PI / 2, 0, -1.062128879, -6.735200414],
  [2, -0.9108659412, -2.85689975, -6.81292289],
  [Math.PI, 0, 0.2438929119, 0.3422377249],
  [4, 0.5063870142, 0.6572401289, 0.7499667046],
];
for (const [count, name] of [
  [1, 'one'],
  [2, 'two'],
  [3, 'three'],
] as const)
  check(`room.boundary-power.${name}`, {
    ...worked,
    formula: 'room/boundaryPower',
    source: allison,
    given: { kd: { value: equalDistances.map(([kd]) => kd), unit: 'rad' }, walls: { value: count, unit: '1' } },
    got: ({ kd, walls }) => {
      const distance = metres((kd * roundAir.speedOfSound) / (2 * Math.PI * 100));
      return boundaryPower(
        Array.from({ length: walls }, () => ({ distance })),
        [100],
        roundAir,
      )[0]!;
    },
    expected: equalDistances.map((row) => row[count]),
    unit: 'dB',
    tolerance: closed,
  });

/** A reflection factor without a formula of its own, for a wall of the fixtures. */
const wall = (distance: number, factor: number) => ({
  distance: metres(distance),
  reflection: factor === 1 ? undefined : absorbing(1 - factor ** 2),
});
for (const [i, { distances, factors, frequencies, level }] of fixtures.powers.entries())
  check(`room.boundary-power.directions.${i}`, {
    ...byProgram,
    formula: 'room/boundaryPower',
    source: { ...numpy, locator: 'room.py: mean over all directions, by quadrature on the sphere' },
    given: { frequency: { value: frequencies, unit: 'Hz' } },
    got: ({ frequency }) =>
      boundaryPower(
        distances.map((d, w) => wall(d, factors[w]!)),
        [frequency],
        roundAir,
      )[0]!,
    expected: level,
    unit: 'dB',
    tolerance: { absolute: 1e-12, why: 'quadrature of a smooth pattern' },
  });

for (const [i, { distances, factors, listener, frequencies, ...expected }] of fixtures.corners.entries())
  for (const part of ['re', 'im'] as const)
    check(`room.corner.${i}.${part}`, {
      ...byProgram,
      formula: 'room/compileCorner',
      source: numpy,
      given: {},
      got: () => {
        const [x, y, z] = listener.map(metres) as [never, never, never];
        // Along a direction without a wall the source stands at 0.
        const walls = distances.map((d, w) => wall(d, factors[w]!));
        return multiplied(compileCorner({ walls, listener: [x, y, z] }, roundAir), frequencies)[part];
      },
      expected: expected[part],
      unit: '1',
      tolerance: { absolute: 1e-12, why: 'the same sum in another order' },
    });

check('room.absorbing', {
  ...worked,
  formula: 'room/absorbing',
  source: { key: 'morse1968', locator: 'power that a wall reflects: |R|² = 1 − α' },
  given: { coefficient: { value: [0, 0.19, 0.51, 1], unit: '1' } },
  got: ({ coefficient }) => absorbing(coefficient)(hertz(50)),
  expected: [1, 0.9, 0.7, 0],
  unit: '1',
  tolerance: { absolute: 1e-12, why: 'squares of round numbers' },
});
check('room.rigid', {
  ...worked,
  formula: 'room/rigid',
  source: { ...allison, locator: 'the image in a rigid wall is as strong as the source' },
  given: { frequency: { value: [20, 200], unit: 'Hz' } },
  got: ({ frequency }) => rigid(frequency),
  expected: [1, 1],
  unit: '1',
  tolerance: { absolute: 0, why: 'by definition' },
});
