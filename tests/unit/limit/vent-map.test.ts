import { standardAir } from '@airspring/core/air';
import { closedBox, parallelBandPass, ventedBox } from '@airspring/core/enclosure';
import { isInputError } from '@airspring/core/fault';
import { type VentMapInput, ventMap, ventOnsets } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { longestVent } from '@airspring/core/space';
import { noiseOnsets, tuning } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { physical } from '../../literature/enclosure/textbook.js';

const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, standardAir);
const space = {
  outer: { width: '480 mm', height: '420 mm', depth: '400 mm' },
  thickness: '18 mm',
  driver: { outerDiameter: '270 mm', cutoutDiameter: '240 mm', depth: '130 mm' },
} as const;
const input: VentMapInput = {
  box: (netVolume, fb) => ventedBox({ drivers, netVolume, fb, QL: 7, ventArea: '1 m²' }),
  netVolumes: Array.from({ length: 12 }, (_, i) => si('volume', 0.01 + 0.005 * i)),
  tunings: Array.from({ length: 12 }, (_, i) => si('frequency', 16 + 5 * i)),
  level: '96 dB',
  from: '30 Hz',
  to: '100 Hz',
  airSpeedPeak: '17 m/s',
  space,
  displaced: '2 L',
  wall: '3 mm',
};
const cells = ventMap(input);

test('every verdict occurs, and a vent that fits tunes the box and has room in it', () => {
  const verdicts = new Set(cells.map(({ verdict }) => verdict));
  for (const verdict of ['straight', 'bent', 'too long', 'box too large'] as const) expect(verdicts).toContain(verdict);
  for (const { netVolume, fb, diameter, length, verdict } of cells) {
    if (verdict !== 'straight' && verdict !== 'bent') continue;
    const got = tuning({ vent: { diameter, length: length! }, netVolume });
    expect(got.ok && got.fb).toBeCloseTo(fb, 6);
    // The greatest box of the space has at least as much room as the box of the cell.
    const room = longestVent({ ...space, vent: { diameter, wall: '3 mm' } });
    expect(length!).toBeLessThanOrEqual(Math.max(room.straight, room.bent));
  }
});

test('a box that does not take the tuning is refused', () => {
  const box: VentMapInput['box'] = (netVolume) => ventedBox({ drivers, netVolume, fb: '30 Hz', ventArea: '1 m²' });
  expect(() => ventMap({ ...input, box })).toThrow(
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'inconsistent', path: 'map.box' })] }),
  );
});

test('what is no system with a spec is refused, and not taken for a box', () => {
  const box: VentMapInput['box'] = (netVolume, fb) => {
    const { spec: _, ...bare } = ventedBox({ drivers, netVolume, fb, ventArea: '1 m²' });
    return bare as never;
  };
  const expected = expect.stringMatching(/with its spec/);
  expect(() => ventMap({ ...input, box })).toThrow(
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'inconsistent', path: 'map.box', expected })] }),
  );
});

test('of a box with several vents one is named', () => {
  const box: VentMapInput['box'] = (frontVolume, frontTuning) =>
    parallelBandPass({
      ...{ drivers, frontVolume, frontTuning, frontVentArea: '1 m²' },
      ...{ rearVolume: '40 L', rearTuning: '24 Hz', rearVentArea: '1 m²' },
    });
  const refused = (vent?: string, made = box) => {
    const fault = expect.objectContaining({ path: expect.any(String), expected: expect.any(String) });
    try {
      ventMap({ ...input, box: made, vent });
    } catch (error) {
      if (!isInputError(error)) throw error;
      expect(error.faults).toEqual([fault]);
      return `${error.faults[0]!.path}: ${error.faults[0]!.expected}`;
    }
    return undefined;
  };
  expect(refused()).toBe('map.vent: one of rear, front');
  expect(refused('side')).toBe('map.vent: one of rear, front');
  expect(refused('front')).toBeUndefined();
  expect(refused('front', input.box)).toBe('box: a system with a vent called front');
});

test('more level, or less air speed, asks for a wider vent', () => {
  const louder = ventMap({ ...input, level: '99 dB' });
  const slower = ventMap({ ...input, airSpeedPeak: '12 m/s' });
  cells.forEach(({ diameter }, i) => {
    expect(louder[i]!.diameter).toBeCloseTo(diameter * 10 ** (3 / 40), 9);
    expect(slower[i]!.diameter).toBeCloseTo(diameter * Math.sqrt(17 / 12), 9);
  });
});

test('a level that no vent could be made for leaves its cells without a length', () => {
  for (const level of ['-100 dB', '300 dB', '1000 dB'] as const) {
    const verdicts = ventMap({ ...input, level }).map(({ length, verdict }) => [length, verdict]);
    expect(new Set(verdicts.map(String))).toEqual(new Set([',no length']));
  }
});

test('below all published onsets the smallest vent is quiet, and one a little narrower is not', () => {
  const { airSpeedPeak: _, ...rest } = input;
  ventMap({ ...rest, onsets: noiseOnsets }).forEach(({ netVolume, fb, diameter }, i) => {
    const quietUpTo = (width: number) => {
      const vent = { diameter: si('length', width) };
      const system = ventedBox({ drivers, netVolume, fb, QL: 7, ventArea: si('area', (Math.PI / 4) * width ** 2) });
      return Math.min(...ventOnsets(system, vent, logarithmicGrid(30, 100, 32)).quiet.levelHalfSpace);
    };
    if (i % 7 === 0) expect(quietUpTo(diameter)).toBeCloseTo(96, 6);
    if (i % 7 === 0) expect(quietUpTo(0.99 * diameter)).toBeLessThan(96);
  });
});

test('with onsets and an air speed, the stricter of them decides', () => {
  const { airSpeedPeak: _, ...rest } = input;
  const quiet = ventMap({ ...rest, onsets: noiseOnsets });
  const both = ventMap({ ...input, airSpeedPeak: '4 m/s', onsets: noiseOnsets });
  const slow = ventMap({ ...rest, airSpeedPeak: '4 m/s' });
  both.forEach(({ diameter }, i) => expect(diameter).toBeCloseTo(Math.max(quiet[i]!.diameter, slow[i]!.diameter), 12));
});

test('an onset that a wider vent reaches sooner is refused', () => {
  const backwards = {
    ...noiseOnsets[0]!,
    at: ({ radius }: { radius: number }) => ({ airSpeedPeak: 1e-4 / radius ** 3 }),
  };
  expect(() => ventMap({ ...input, onsets: [backwards] })).toThrow(/map\.onsets/);
});

test('the area of the vent that the box was made with does not count', () => {
  const box: VentMapInput['box'] = (netVolume, fb) => ventedBox({ drivers, netVolume, fb, QL: 7, ventArea: '50 cm²' });
  ventMap({ ...input, box }).forEach(({ diameter }, i) => expect(diameter).toBeCloseTo(cells[i]!.diameter, 12));
});

test('a driver that no box has room for is not a vent that is too wide', () => {
  const driver = { outerDiameter: '600 mm', cutoutDiameter: '550 mm', depth: '130 mm' } as const;
  const verdicts = new Set(ventMap({ ...input, space: { ...space, driver } }).map(({ verdict }) => verdict));
  expect(verdicts).toContain('drivers too large');
  for (const verdict of ['straight', 'bent', 'too long', 'too wide'] as const) expect(verdicts).not.toContain(verdict);
});

test.each([
  ['map.netVolumes', { netVolumes: [] }],
  ['map.netVolumes', { netVolumes: '30 L' }],
  ['map.netVolumes[1]', { netVolumes: ['30 L', 'thirty'] }],
  ['map.tunings', { tunings: [] }],
  ['map.onsets', { airSpeedPeak: undefined }],
  ['map.onsets', { airSpeedPeak: undefined, onsets: [] }],
  ['map.onsets[1].at', { onsets: [noiseOnsets[0], {}] }],
  ['map.onsets[0].at', { onsets: [{ ...noiseOnsets[0], at: () => ({}) }] }],
  ['map.to', { from: '100 Hz', to: '30 Hz' }],
  ['map.box', { box: 'x' }],
  ['map.box', { box: () => undefined }],
  ['map.box', { box: () => null }],
  ['map.space', { space: null }],
  ['map.space.vent', { space: { ...space, vent: { diameter: '60 mm' } } }],
  ['map.space.outer.depth', { space: { ...space, thickness: '205 mm' } }],
])('a fault is found at %s', (path, wrong) => {
  try {
    ventMap({ ...input, ...wrong } as never);
    expect.unreachable();
  } catch (error) {
    expect(isInputError(error) && error.faults.map((fault) => fault.path)).toEqual([path]);
  }
});

test('volumes and tunings may stand in typed arrays', () => {
  const [netVolumes, tunings] = [Float64Array.of(0.03), Float64Array.of(30)] as never[];
  expect(ventMap({ ...input, netVolumes: netVolumes!, tunings: tunings! })).toHaveLength(1);
});

test('a box without a vent is refused', () => {
  const box = (netVolume: Parameters<VentMapInput['box']>[0]) => closedBox({ drivers, netVolume });
  try {
    ventMap({ ...input, box });
    expect.unreachable();
  } catch (error) {
    expect(isInputError(error) && error.faults[0]!.remedy).toBe('Give the box a ventArea; any will do.');
  }
});
