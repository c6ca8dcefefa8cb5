/** Rooms below and about their first mode: the spring of a cavity, modes of a box of air, and a trend between. */
import { si } from '@airspring/core/quantity';
import { compilePressureZone, compileRoomGain, pressureZoneCorner, roomModes } from '@airspring/core/room';
import { checkIn } from '../../ledger/check.js';
import { byProgram, fixtures, hertz, metres, multiplied, numpy, roundAir, scipy } from './fixtures.js';

const check = checkIn(roundAir);

const beranek = { key: 'beranek2012', locator: 'compliance of a cavity, V/(ρc²)' } as const;
const cubic = (value: number) => si('volume', value);

check('room.pressure-zone.displaced', {
  formula: 'room/compilePressureZone',
  source: beranek,
  status: 'derived',
  kind: 'example',
  given: {
    volume: { value: [50, 3, 0.05], unit: 'm³' },
    displacedPeak: { value: [0.0005, 0.0001, 1e-5], unit: 'm³' },
  },
  got: ({ volume, displacedPeak }) => {
    const f = 7;
    const { re, im } = multiplied(compilePressureZone({ volume: cubic(volume) }, roundAir), [f]);
    // At 1 m in half space a displaced volume gives ρω²V/(2π).
    const free = (roundAir.density * (2 * Math.PI * f) ** 2 * (displacedPeak / Math.SQRT2)) / (2 * Math.PI);
    return free * Math.hypot(re[0]!, im[0]!);
  },
  expected: [1.002864174, 3.342880579, 20.05728348],
  unit: 'Pa',
  tolerance: { relative: 1e-9, why: 'closed form, told to ten digits' },
});
for (const [i, { volume, leakCorner, frequencies, ...expected }] of fixtures.zones.entries())
  for (const part of ['re', 'im'] as const)
    check(`room.pressure-zone.${i}.${part}`, {
      ...byProgram,
      formula: 'room/compilePressureZone',
      source: { ...numpy, locator: 'room.py: pressure of a leaking cavity over that of a source in half space' },
      given: { volume: { value: volume, unit: 'm³' }, leakCorner: { value: leakCorner, unit: 'Hz' } },
      got: () => {
        const leak = leakCorner === 0 ? {} : { leakCorner: hertz(leakCorner) };
        return multiplied(compilePressureZone({ volume: cubic(volume), ...leak }, roundAir), frequencies)[part];
      },
      expected: expected[part],
      unit: '1',
      tolerance: { absolute: 1e-11, why: 'rounding of values up to 300' },
    });

check('room.pressure-zone-corner', {
  formula: 'room/pressureZoneCorner',
  source: { ...beranek, locator: 'compliance of a cavity, and simple source in half space, equated' },
  status: 'derived',
  kind: 'example',
  given: { volume: { value: [30, 50, 3], unit: 'm³' }, distance: { value: 1, unit: 'm' } },
  got: ({ volume, distance }) => pressureZoneCorner({ volume: cubic(volume), distance: metres(distance) }, roundAir),
  expected: [24.99750809, 19.36298651, 79.0490614],
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'closed form, told to ten digits' },
});

for (const [i, row] of fixtures.gains.entries())
  for (const part of ['re', 'im'] as const)
    check(`room.gain.${i}.${part}`, {
      ...byProgram,
      formula: 'room/compileRoomGain',
      source: { ...scipy, locator: 'room.py: numpy.roots of the sum of both powers' },
      given: {
        volume: { value: row.volume, unit: 'm³' },
        distance: { value: row.distance, unit: 'm' },
        leakCorner: { value: row.leakCorner, unit: 'Hz' },
        solidAngle: { value: row.solidAngle, unit: 'sr' },
      },
      got: ({ volume, distance, leakCorner, solidAngle }) => {
        const leak = leakCorner === 0 ? {} : { leakCorner: hertz(leakCorner) };
        const room = { volume: cubic(volume), distance: metres(distance), solidAngle, ...leak };
        return multiplied(compileRoomGain(room, roundAir), row.frequencies)[part];
      },
      expected: row[part],
      unit: '1',
      tolerance: { absolute: 1e-12, why: 'rounding of values up to 600' },
    });

const [room] = fixtures.rooms;
const [length, width, height] = room!.edges.map(metres) as [never, never, never];
const modes = () => roomModes({ length, width, height, upTo: hertz(room!.upTo) }, roundAir);
check('room.modes.frequencies', {
  ...byProgram,
  formula: 'room/roomModes',
  source: { key: 'scipy', locator: 'room.py: linalg.eigh of Legendre polynomials in three dimensions' },
  given: { edges: { value: '5.1 × 3.7 × 2.45', unit: 'm' } },
  got: () => modes().map(({ frequency }) => frequency),
  expected: room!.frequencies,
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'nine to sixteen polynomials for each edge' },
});
for (const [along, edge] of ['length', 'width', 'height'].entries())
  check(`room.modes.order.${edge}`, {
    ...byProgram,
    formula: 'room/roomModes',
    source: { ...numpy, locator: 'room.py: all orders of a cube, sorted' },
    given: { edges: { value: '5.1 × 3.7 × 2.45', unit: 'm' } },
    got: () => modes().map(({ order }) => order[along]!),
    expected: room!.orders.map((order) => order[along]!),
    unit: '1',
    tolerance: { absolute: 0, why: 'whole numbers' },
  });
check('room.modes.axial', {
  formula: 'room/roomModes',
  source: { key: 'beranek2012', locator: 'normal modes of a rectangular room' },
  status: 'derived',
  kind: 'example',
  given: { length: { value: [3, 4, 5, 6], unit: 'm' } },
  got: ({ length: longest }) =>
    roomModes({ length: metres(longest), width: metres(2.2), height: metres(2.1), upTo: hertz(60) }, roundAir)[0]!
      .frequency,
  expected: [57.2, 42.9, 34.32, 28.6],
  unit: 'Hz',
  tolerance: { relative: 1e-12, why: 'closed form' },
});

/** Half waves along length, width and height. */
const axial = [
  [1, 0, 0],
  [2, 0, 0],
  [3, 0, 0],
  [0, 1, 0],
  [0, 2, 0],
  [0, 3, 0],
  [0, 0, 1],
  [0, 0, 2],
] as const;
const ofTable = { ...roundAir, speedOfSound: si('speed', 1130 * 0.3048) };
check('room.modes.read', {
  formula: 'room/roomModes',
  air: ofTable,
  source: { key: 'ballou2008', locator: 'table 6-4, page 130: axial modes of a room of 16 × 12 × 8 ft, 1130 ft/s' },
  status: 'seen',
  kind: 'table',
  given: { edges: { value: '16 × 12 × 8', unit: 'ft' }, speed: { value: 1130, unit: 'ft/s' } },
  got: () => {
    const found = roomModes({ length: '16 ft', width: '12 ft', height: '8 ft', upTo: '150 Hz' }, ofTable);
    return axial.map((order) => found.find((mode) => String(mode.order) === String(order))!.frequency);
  },
  printed: ['35.31', '70.63', '105.94', '47.08', '94.17', '141.25', '70.63', '141.25'],
  unit: 'Hz',
});
