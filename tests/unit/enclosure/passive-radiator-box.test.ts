import { driver, group } from '@airspring/core/driver';
import {
  addedMassForTuning,
  passiveRadiatorBox,
  passiveRadiatorFamily,
  passiveRadiatorTuning,
  ventedBox,
} from '@airspring/core/enclosure';
import { familyLaws } from '@airspring/core/laws';
import { greatestLevel, radiatorTravelLimit, travelLimit } from '@airspring/core/limit';
import { features } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';

/** Invented. */
const ten = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Xmax: '9 mm',
});
const radiator = { Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6, Xmax: '14 mm' } as const;
const box = { drivers: ten, netVolume: '45 L', radiator } as const;
const faulty = (...faults: object[]) =>
  expect.objectContaining({ code: 'airspring-input', faults: faults.map((one) => expect.objectContaining(one)) });

test('the examples of the docstrings', () => {
  expect(passiveRadiatorTuning({ netVolume: '45 L', radiator }).fb).toBeCloseTo(31.6, 0);
  const found = addedMassForTuning({ netVolume: '45 L', radiator, fb: '27 Hz' });
  expect(found.ok && found.addedMass).toBeCloseTo(0.045, 3);
  expect(passiveRadiatorBox({ ...box, addedMass: '40 g', QL: 10 }).spec).toMatchObject({ count: 1, addedMass: 0.04 });
});

test('it has the probes of every family, and the velocity of a radiator', () => {
  const { topology, values } = passiveRadiatorBox({ ...box, QL: 10, count: 2, addedMass: '30 g' }).network;
  expect(Object.keys(topology.probes)).toEqual(['coneVelocity', 'current', 'terminalVoltage', 'radiatorVelocity']);
  expect(topology.outlets.map(({ name }) => name)).toEqual(['cone', 'leak', 'radiators']);
  expect(values.radiators).toBeCloseTo(2 * 0.033, 12);
});

test('two maxima of the impedance stand around the tuning, as of a vented box', () => {
  const { impedanceMaxima, impedanceMinima, f3 } = features(passiveRadiatorBox(box));
  const { fb } = passiveRadiatorTuning({ netVolume: '45 L', radiator });
  const [low, high] = impedanceMaxima.map(({ frequency }) => Number(frequency)) as [number, number];
  expect(impedanceMaxima).toHaveLength(2);
  expect(low).toBeLessThan(fb);
  expect(high).toBeGreaterThan(fb);
  expect(Math.abs((impedanceMinima[0]?.frequency ?? 0) - fb)).toBeLessThan(0.05 * fb);
  // The slope above the notch is steeper than that of the same box with a vent: it reaches less deep.
  expect(f3).toBeGreaterThan(features(ventedBox({ drivers: ten, netVolume: '45 L', fb })).f3 ?? Infinity);
});

test('the laws of every system', () => {
  for (const spec of [
    box,
    { ...box, count: 4, addedMass: '300 g', QL: 7, QA: 40, sourceResistance: '0.2 ohm' } as const,
  ]) {
    const { fb, notch } = passiveRadiatorTuning({ netVolume: '45 L', radiator });
    const results = familyLaws({
      family: passiveRadiatorFamily,
      spec,
      frequencies: [fb, notch],
    });
    expect(results.filter(({ holds }) => !holds)).toEqual([]);
  }
});

describe('travel of the radiator', () => {
  test('it is the limit where the radiator is the smaller one, and none where Xmax is unknown', () => {
    const { Xmax: _, ...bare } = radiator;
    expect(radiatorTravelLimit(bare)).toEqual([]);
    const [limit] = radiatorTravelLimit(radiator);
    expect(limit).toEqual({
      name: 'radiator travel',
      probe: 'radiatorVelocity',
      integrated: true,
      greatestRms: 0.014 / Math.SQRT2,
      basis: 'Xmax of the passive radiator, one way, peak',
    });
    const { binding } = greatestLevel(
      passiveRadiatorBox(box),
      [...travelLimit(ten), ...radiatorTravelLimit(radiator)],
      [31.5, 100],
    );
    expect(binding).toEqual(['radiator travel', 'travel']);
  });
});

describe('the mass for a tuning', () => {
  test('none where the tuning is lower already; the volume told is one that would do', () => {
    const none = addedMassForTuning({ netVolume: '45 L', radiator, fb: '40 Hz' });
    expect(none).toEqual({
      ok: false,
      because: [
        { code: 'tuning-too-high', text: expect.stringMatching(/tuning is 31\.5\d* Hz, below the wanted 40 Hz/) },
      ],
    });
    const litres = /box of ([\d.]+) L/.exec(none.ok ? '' : (none.because[0]?.text ?? ''))?.[1] as string;
    expect(passiveRadiatorTuning({ netVolume: `${Number(litres)} L`, radiator }).fb).toBeCloseTo(40, 0);
  });
  test('none beyond what is accepted', () => {
    expect(addedMassForTuning({ netVolume: '45 L', radiator, fb: '0.001 Hz' })).toMatchObject({
      ok: false,
      because: [{ code: 'mass-too-great' }],
    });
  });
  test('of the tuning without it there is none to add', () => {
    const { fb } = passiveRadiatorTuning({ netVolume: '45 L', radiator });
    expect(addedMassForTuning({ netVolume: '45 L', radiator, fb })).toMatchObject({ ok: true, addedMass: 0 });
  });
  test('a box that is not small against the wavelength is told', () => {
    const stiff = { Sd: '2000 cm²', Mms: '50 g', Cms: '0.1 mm/N', Rms: '2 kg/s' } as const;
    expect(passiveRadiatorTuning({ netVolume: '100 L', radiator: stiff }).warnings).toEqual([
      expect.objectContaining({ code: 'outside-validity', path: 'k·volume^(1/3)' }),
    ]);
    expect(passiveRadiatorTuning({ netVolume: '45 L', radiator }).warnings).toEqual([]);
  });
});

test('refuses with every fault at its path', () => {
  expect(() =>
    passiveRadiatorBox({
      ...box,
      netVolume: '45 litres' as never,
      count: 5,
      addedMass: '-1 g',
      radiator: { ...radiator, Mms: '1 kg', fs: '0 Hz' },
      fb: '30 Hz',
    } as never),
  ).toThrow(
    faulty(
      { code: 'unknown-field', path: 'box.fb' },
      { code: 'unit', path: 'box.netVolume' },
      { code: 'out-of-range', path: 'box.count' },
      { code: 'not-positive', path: 'box.addedMass' },
      { code: 'not-positive', path: 'box.radiator.fs' },
    ),
  );
  expect(() => passiveRadiatorBox({ ...box, radiator: { ...radiator, Mms: '1 kg' } })).toThrow(
    faulty({ code: 'inconsistent', path: 'box.radiator.Mms', got: '1 kg' }),
  );
  expect(() => passiveRadiatorBox({ drivers: group(ten), netVolume: '45 L' } as never)).toThrow(
    faulty({ code: 'empty', path: 'box.radiator' }),
  );
  expect(() => passiveRadiatorTuning({ netVolume: '45 L', radiator, fb: '3 Hz' } as never)).toThrow(
    faulty({ code: 'unknown-field', path: 'box.fb' }),
  );
  expect(() => addedMassForTuning({ netVolume: '45 L', radiator, addedMass: '3 g' } as never)).toThrow(
    faulty({ code: 'unknown-field', path: 'box.addedMass' }, { code: 'empty', path: 'box.fb' }),
  );
});
