import { standardAir } from '@airspring/core/air';
import { flanged, unflanged } from '@airspring/core/duct';
import {
  type LineVentedBoxInput,
  lineVentedBox,
  lineVentedFamily,
  type System,
  ventedBox,
} from '@airspring/core/enclosure';
import { familyLaws, rescaledAir, rescaledDriver } from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { standingWaves, tuning } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { driver, reasons } from '../laws/boxes.js';

const vent = { diameter: '75 mm', length: '25 cm' } as const;
const box: LineVentedBoxInput = { drivers: driver, netVolume: '45 L', vent };
const faulty = (...faults: object[]) =>
  expect.objectContaining({ code: 'airspring-input', faults: faults.map((one) => expect.objectContaining(one)) });

test('what is left out: one smooth vent, free inside and flush outside', () => {
  const opening = { radius: 0.0375 };
  expect(lineVentedBox(box).spec.vent).toEqual({
    diameter: 0.075,
    length: 0.25,
    count: 1,
    wallLoss: 1,
    innerCorrection: expect.closeTo(unflanged(opening, 0), 12),
    outerCorrection: expect.closeTo(flanged(opening, 0), 12),
  });
});

test('below the waves in its vent it plays as the box with a mass of air for a vent', () => {
  const found = tuning({ vent, netVolume: '45 L' });
  if (!found.ok) throw new Error('no tuning');
  const lumped = ventedBox({ drivers: driver, netVolume: '45 L', fb: found.fb });
  const grid = [15, 25, 45, 60, 90];
  const [one, other] = [lineVentedBox(box), lumped].map((system) => respond(system, grid).levelHalfSpace);
  grid.forEach((_, i) => {
    expect(Math.abs(one![i]! - other![i]!)).toBeLessThan(0.5);
  });
});

test('where half a wave fits into the vent its air moves again', () => {
  const [wave] = standingWaves({ vent });
  const at = [0.7, 1, 1.3].map((ratio) => ratio * wave!.frequency);
  const [below, there, above] = respond(lineVentedBox(box), at).airSpeedPeak!;
  expect(there).toBeGreaterThan(5 * below!);
  expect(there).toBeGreaterThan(5 * above!);
});

test('a vent that radiates rings less, and plays the same bass', () => {
  const radiating = lineVentedBox({ ...box, vent: { ...vent, solidAngle: 2 * Math.PI } });
  const [wave] = standingWaves({ vent });
  const near = Array.from({ length: 101 }, (_, i) => (0.9 + 0.002 * i) * wave!.frequency);
  const rings = (system: System) => Math.max(...respond(system, near).airSpeedPeak!);
  const bass = (system: System) => respond(system, [30]).levelHalfSpace[0]!;
  expect(Math.abs(bass(lineVentedBox(box)) - bass(radiating))).toBeLessThan(0.05);
  expect(rings(radiating)).toBeLessThan(0.5 * rings(lineVentedBox(box)));
});

test('every fault is told at its path', () => {
  const bad = { ...box, netVolume: '0 L' as never, vent: { ...vent, diameter: '-1 mm' as never } };
  expect(() => lineVentedBox({ ...bad, netVolume: '45 L' })).toThrow(
    faulty({ code: 'not-positive', path: 'box.vent.diameter' }),
  );
  expect(() => lineVentedBox({ ...box, vent: { ...vent, solidAngle: 20 } })).toThrow(
    faulty({ code: 'out-of-range', path: 'box.vent.solidAngle', got: 20 }),
  );
  expect(() => lineVentedBox({ ...bad, vent })).toThrow(faulty({ code: 'not-positive', path: 'box.netVolume' }));
});

test('it obeys the laws of a family', () => {
  const sizes = (metre: number) => ({
    diameter: si('length', 0.06 * metre),
    length: si('length', 0.42 * metre),
    innerCorrection: si('length', 0.02 * metre),
    outerCorrection: si('length', 0.025 * metre),
  });
  const spec: LineVentedBoxInput = {
    drivers: driver,
    netVolume: si('volume', 0.045),
    vent: { ...sizes(1), count: 2, wallLoss: 1.2, solidAngle: 2 * Math.PI },
    QL: 7,
    QA: 60,
  };
  const laws = familyLaws({
    family: lineVentedFamily,
    spec,
    rescaled: (by) => ({
      spec: {
        ...spec,
        drivers: rescaledDriver(driver, by),
        netVolume: si('volume', 0.045 * by([3, 0, 0, 0])),
        vent: { ...sizes(by([1, 0, 0, 0])), count: 2, wallLoss: 1.2, solidAngle: 2 * Math.PI },
      },
      air: rescaledAir(standardAir, by),
    }),
  });
  expect(reasons(laws)).toEqual([]);
  expect(laws.length).toBeGreaterThan(25);
});
