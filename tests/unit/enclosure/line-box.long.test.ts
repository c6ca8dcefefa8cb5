import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { flanged, roundSection, withFill, withWallLoss } from '@airspring/core/duct';
import { type LineBoxInput, lineBox, lineFamily } from '@airspring/core/enclosure';
import { familyLaws, rescaledAir, rescaledDriver } from '@airspring/core/laws';
import { si } from '@airspring/core/quantity';
import { features, referenceLevel, respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { driver as coiled, reasons } from '../laws/boxes.js';

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
const parts = [{ length: '2.4 m', area: '300 cm²' }] as const;
const faulty = (...faults: object[]) =>
  expect.objectContaining({ code: 'airspring-input', faults: faults.map((one) => expect.objectContaining(one)) });

test('what is left out: the driver at the start, smooth walls, no fill, an opening as wide as the line', () => {
  const { spec } = lineBox({ drivers: ten, parts, opening: {} });
  expect(spec.parts).toEqual([{ length: 2.4, area: expect.closeTo(0.03, 12), flowResistivity: 0, wallLoss: 1 }]);
  expect(spec.driverAt).toBe(0);
  const radius = Math.sqrt(0.03 / Math.PI);
  expect(spec.opening).toEqual({
    at: 2.4,
    area: spec.parts[0]!.area,
    endCorrection: expect.closeTo(flanged({ radius }, 0), 12),
  });
  expect(lineBox({ drivers: ten, parts }).spec).not.toHaveProperty('opening');
});

test('an opening in the side or a smaller one moves air on both of its faces', () => {
  const correction = (opening: LineBoxInput['opening']) =>
    lineBox({ drivers: ten, parts, opening: opening! }).spec.opening!.endCorrection / flanged({ radius: 0.05 }, 0);
  const area = si('area', Math.PI * 0.05 ** 2);
  expect(correction({ area })).toBeCloseTo(2, 12);
  expect(correction({ area, at: '1 m' })).toBeCloseTo(2, 12);
});

test('the area of an opening in a part that tapers is that of the line there', () => {
  const wedge = [{ length: '2 m', area: '400 cm²', wedgeTo: '200 cm²' }] as const;
  expect(lineBox({ drivers: ten, parts: wedge, opening: { at: '0.5 m' } }).spec.opening!.area).toBeCloseTo(0.035, 12);
  expect(lineBox({ drivers: ten, parts: wedge, opening: {} }).spec.opening!.area).toBeCloseTo(0.02, 12);
  const halves = [
    { length: '1 m', area: '400 cm²' },
    { length: '1 m', area: '200 cm²' },
  ] as const;
  expect(lineBox({ drivers: ten, parts: halves, opening: { at: '1 m' } }).spec.opening!.area).toBe(0.02);
});

test('the line is cut at driver, opening and joints, and nowhere else', () => {
  const ducts = (input: Omit<LineBoxInput, 'drivers'>) =>
    lineBox({ drivers: ten, ...input }).network.topology.elements.flatMap((one) =>
      one.kind === 'line' ? [one.nodes.join(' to ')] : [],
    );
  expect(ducts({ parts, opening: {} })).toEqual(['box to mouth']);
  expect(ducts({ parts })).toEqual(['box to line 1']);
  expect(ducts({ parts, driverAt: '2.4 m' })).toEqual(['line 0 to box']);
  expect(ducts({ parts, driverAt: '0.5 m', opening: { at: '0.5 m' } })).toEqual(['line 0 to box', 'box to line 2']);
  const two = [
    { length: '1 m', area: '300 cm²' },
    { length: '1 m', area: '200 cm²' },
  ] as const;
  expect(ducts({ parts: two, driverAt: '0.5 m', opening: { at: '1.5 m' } })).toEqual([
    'line 0 to box',
    'box to line 2',
    'line 2 to mouth',
    'mouth to line 4',
  ]);
});

test('where a line is a whole wave long its opening cancels the cone, and a fill takes that away', () => {
  const level = (flowResistivity: number) => {
    const filled = [{ ...parts[0], flowResistivity: si('flowResistivity', flowResistivity) }];
    return respond(lineBox({ drivers: ten, parts: filled, opening: {} }), [105, 140, 175]).levelHalfSpace;
  };
  const swing = (levels: Float64Array) => Math.max(...levels) - Math.min(...levels);
  expect(swing(level(0))).toBeGreaterThan(30);
  expect(swing(level(3000))).toBeLessThan(12);
});

test('its level settles far above, at that of the driver alone, with walls that lose or not', () => {
  const expected = 20 * Math.log10((standardAir.density * ten.Bl * ten.Sd) / (2 * Math.PI * ten.Mms * ten.Re) / 20e-6);
  for (const wallLoss of [0, 1]) {
    const box = lineBox({ drivers: ten, parts: [{ ...parts[0], wallLoss }], opening: {} });
    expect(referenceLevel(box)).toBeCloseTo(expected, 2);
    expect(features(box).f3).toBeDefined();
  }
});

test('every fault is told at its path', () => {
  const bad = {
    drivers: ten,
    parts: [
      { length: '1 m', area: '0 cm²' },
      { length: '1 m', area: '2 cm²', conicalTo: '3 cm²', wedgeTo: '4 cm²' },
    ],
  } as unknown as LineBoxInput;
  expect(() => lineBox(bad)).toThrow(
    faulty({ code: 'not-positive', path: 'box.parts[0].area' }, { code: 'conflict', path: 'box.parts[1].wedgeTo' }),
  );
  expect(() => lineBox({ drivers: ten, parts: [] })).toThrow(faulty({ code: 'empty', path: 'box.parts' }));
  expect(() => lineBox({ drivers: ten, parts, driverAt: '2.5 m', opening: { at: '3 m' } })).toThrow(
    faulty({ code: 'inconsistent', path: 'box.driverAt' }, { code: 'inconsistent', path: 'box.opening.at' }),
  );
  expect(() => withFill(roundSection({ diameter: '10 cm' }), { flowResistivity: '-2 Pa·s/m²' })).toThrow(
    faulty({ code: 'not-positive', path: 'fill.flowResistivity' }),
  );
  expect(() => withWallLoss(roundSection({ diameter: '10 cm' }), -1)).toThrow(
    faulty({ code: 'not-positive', path: 'factor' }),
  );
});

describe('laws', () => {
  const input: LineBoxInput = {
    drivers: coiled,
    parts: [
      { length: si('length', 1.2), area: si('area', 0.03), wedgeTo: si('area', 0.02) },
      { length: si('length', 1.1), area: si('area', 0.02), flowResistivity: si('flowResistivity', 900), wallLoss: 1.3 },
    ],
    driverAt: si('length', 0.4),
    opening: { area: si('area', 0.012), path: si('length', 0.5) },
    sourceResistance: si('resistance', 0.2),
  };
  test('a line of two parts, one filled', () => {
    const laws = familyLaws({
      family: lineFamily,
      spec: input,
      rescaled: (by) => {
        const [metre, square] = [by([1, 0, 0, 0]), by([2, 0, 0, 0])];
        return {
          spec: {
            drivers: rescaledDriver(coiled, by),
            parts: [
              {
                length: si('length', 1.2 * metre),
                area: si('area', 0.03 * square),
                wedgeTo: si('area', 0.02 * square),
              },
              {
                length: si('length', 1.1 * metre),
                area: si('area', 0.02 * square),
                flowResistivity: si('flowResistivity', 900 * by([-3, 1, -1, 0])),
                wallLoss: 1.3,
              },
            ],
            driverAt: si('length', 0.4 * metre),
            opening: { area: si('area', 0.012 * square), path: si('length', 0.5 * metre) },
            sourceResistance: si('resistance', 0.2 * by([2, 1, -3, -2])),
          },
          air: rescaledAir(standardAir, by),
        };
      },
    });
    expect(reasons(laws)).toEqual([]);
    expect(laws.length).toBeGreaterThan(25);
  });
  test.each([0, 1])('a uniform line, wall loss %s', (wallLoss) => {
    const quarter = standardAir.speedOfSound / 9.6;
    const spec = { drivers: coiled, parts: [{ ...parts[0], wallLoss }], opening: {} };
    expect(reasons(familyLaws({ family: lineFamily, spec, frequencies: [quarter, 3 * quarter] }))).toEqual([]);
  });
  test('a closed line', () => {
    expect(reasons(familyLaws({ family: lineFamily, spec: { drivers: coiled, parts, driverAt: '70 cm' } }))).toEqual(
      [],
    );
  });
});
