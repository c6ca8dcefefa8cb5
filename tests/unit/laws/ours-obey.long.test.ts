/** Our families, elements, ends, radiations, sections, profiles, limits and filters obey every law of their seam. */
import {
  alongWalls,
  compileLine,
  conicalProfile,
  exponentialProfile,
  finiteFlange,
  flanged,
  flangedRadiation,
  flared,
  flaredProfile,
  pistonInFlange,
  pistonRadiation,
  rectangularPiston,
  roundSection,
  slitSection,
  smallOpening,
  unflanged,
  unflangedRadiation,
  withNeighbours,
  withoutLoss,
} from '@airspring/core/duct';
import {
  aperiodicFamily,
  capacitorBoxFamily,
  closedFamily,
  fourthOrderBandPassFamily,
  infiniteBaffleFamily,
  mixedFamily,
  openBaffleFamily,
  parallelBandPassFamily,
  seriesBandPassFamily,
  systemOf,
  ventedFamily,
} from '@airspring/core/enclosure';
import {
  besselShape,
  butterworthShape,
  chebyshevShape,
  highPass,
  legendreShape,
  linkwitzRileyShape,
  lowPass,
  poleShift,
  shapeByQ,
  shelf,
} from '@airspring/core/filter';
import {
  endCorrectionLaws,
  familyLaws,
  filterLaws,
  lawElementLaws,
  limitLaws,
  lineSectionLaws,
  profileLaws,
  radiationLaws,
} from '@airspring/core/laws';
import { airSpeedLimit, currentLimit, heatLimit, travelLimit, voltageLimit } from '@airspring/core/limit';
import { type Law, type Line, losslessLine } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import { compileVentAdmittance, compileVentMouth } from '@airspring/core/vent';
import { describe, expect, test } from 'vitest';
import {
  closed,
  driver,
  mixed,
  reasons,
  rescaledClosed,
  rescaledMixed,
  rescaledVented,
  rescaledWalled,
  vented,
  walled,
} from './boxes.js';
import { trials } from './more-boxes.js';

describe('families', () => {
  const frequencies = [29, 0.999999 * 29];
  test('vented', () => {
    const laws = familyLaws({ family: ventedFamily, spec: vented, rescaled: rescaledVented, frequencies });
    expect(reasons(laws)).toEqual([]);
    expect(laws.length).toBeGreaterThan(25);
  });
  test('vented without losses', () => {
    const { QL: _, QA: __, QP: ___, ...spec } = vented;
    expect(reasons(familyLaws({ family: ventedFamily, spec, frequencies }))).toEqual([]);
  });
  test('closed', () => {
    expect(reasons(familyLaws({ family: closedFamily, spec: closed, rescaled: rescaledClosed }))).toEqual([]);
  });
  test('infinite baffle', () => {
    const trial = { family: infiniteBaffleFamily, spec: walled, rescaled: rescaledWalled };
    expect(reasons(familyLaws(trial))).toEqual([]);
  });
  test('mixed', () => {
    expect(reasons(familyLaws({ family: mixedFamily, spec: mixed, rescaled: rescaledMixed, frequencies }))).toEqual([]);
  });
  test('mixed in series, one chamber', () => {
    const drivers = {
      series: [
        { name: 'left', driver },
        { name: 'right', driver: { ...driver, Mms: si('mass', 0.09) } },
      ],
    };
    const spec = { drivers, chambers: { box: { netVolume: si('volume', 0.06), QA: 40 } } };
    expect(reasons(familyLaws({ family: mixedFamily, spec }))).toEqual([]);
  });
  test('band-pass of fourth order', () => {
    expect(reasons(familyLaws({ family: fourthOrderBandPassFamily, ...trials.fourth }))).toEqual([]);
  });
  test.each([parallelBandPassFamily, seriesBandPassFamily])('$name', (family) => {
    expect(reasons(familyLaws({ family, ...trials.sixth }))).toEqual([]);
  });
  test('behind a capacitor', () => {
    expect(reasons(familyLaws({ family: capacitorBoxFamily, ...trials.capacitor }))).toEqual([]);
  });
  test('aperiodic', () => {
    expect(reasons(familyLaws({ family: aperiodicFamily, ...trials.aperiodic }))).toEqual([]);
  });
  test('open baffle', () => {
    expect(reasons(familyLaws({ family: openBaffleFamily, ...trials.openBaffle }))).toEqual([]);
  });
});

describe('elements over frequency', () => {
  test('a lossless line', () => {
    expect(reasons(lawElementLaws(losslessLine('duct', ['box', 'ground']), { values: [2e5, 0.001] }))).toEqual([]);
  });
  const section = roundSection({ diameter: '75 mm' });
  test.each([
    ['with friction', section],
    ['without', withoutLoss(section)],
  ] as const)('a line %s', (_, walls) => {
    const chain = compileLine({ section: walls, length: '40 cm' });
    const line: Line = {
      kind: 'line',
      name: 'tube',
      nodes: ['box', 'mouth'],
      parameters: [],
      fill: (_values, _at, frequencies, out) => chain(frequencies, out),
    };
    expect(reasons(lawElementLaws(line, { values: [] }))).toEqual([]);
  });
  test('a vent with standing waves', () => {
    const kernel = compileVentAdmittance({ vent: { diameter: '75 mm', length: '15 cm' } });
    const law: Law = {
      kind: 'law',
      name: 'vent',
      nodes: ['box', 'ground'],
      stands: 'admittance',
      parameters: [],
      fill: (_values, _at, frequencies, { re, im }) => kernel(frequencies, re, im),
    };
    expect(reasons(lawElementLaws(law, { values: [] }))).toEqual([]);
    // What leaves at the mouth is a transfer, no admittance: past the first standing wave it is opposed.
    const mouth = compileVentMouth({ vent: { diameter: '75 mm', length: '15 cm' } });
    const fill: Law['fill'] = (_values, _at, frequencies, { re, im }) => mouth(frequencies, re, im);
    expect(reasons(lawElementLaws({ ...law, fill }, { values: [] })).map((text) => text.split(':')[0])).toEqual([
      'gives out no power',
    ]);
  });
});

describe('end corrections', () => {
  test.each([flanged, unflanged, finiteFlange, pistonInFlange, rectangularPiston])('%o', (correction) => {
    expect(reasons(endCorrectionLaws(correction))).toEqual([]);
  });
  test('along walls: the image doubles the opening', () => {
    const bounds = [0.85, 2] as const;
    for (const walls of ['one', 'two'] as const) {
      expect(reasons(endCorrectionLaws(alongWalls(walls), { bounds }))).toEqual([]);
    }
  });
  test('ends with lengths of their own', () => {
    const neighbours = (factor: number) => withNeighbours(flanged, [si('length', 0.1 * factor)]);
    const flare = (factor: number) => flared({ radius: si('length', 0.02 * factor) });
    const radii = [0.005, 0.03];
    const bounds = [-4, 1.2] as const;
    for (const scaled of [neighbours, flare]) {
      expect(reasons(endCorrectionLaws(scaled(1), { scaled, radii, bounds }))).toEqual([]);
      // Scaled without them they are no length, and that is told.
      const laws = reasons(endCorrectionLaws(scaled(1), { radii, bounds }));
      expect(laws.map((text) => text.split(':')[0])).toEqual(['a length that scales with the size']);
    }
  });
});

describe('radiations', () => {
  const [half, full] = [2 * Math.PI, 4 * Math.PI];
  test.each([
    ['piston', pistonRadiation, { end: pistonInFlange, solidAngles: [half] }],
    ['free', unflangedRadiation, { end: unflanged, solidAngles: [full] }],
    ['flush', flangedRadiation, { end: flanged, solidAngles: [half] }],
    ['small', smallOpening(flanged, half), { end: flanged, solidAngles: [half] }],
    ['inner', smallOpening(unflanged), { end: unflanged, solidAngles: [Number.POSITIVE_INFINITY] }],
  ] as const)('%s', (_, radiation, trial) => {
    expect(reasons(radiationLaws(radiation, trial))).toEqual([]);
  });
});

describe('sections and profiles', () => {
  test.each([
    ['round', roundSection({ diameter: '75 mm' })],
    ['narrow', roundSection({ diameter: '2 mm' })],
    ['slit', slitSection({ width: '300 mm', height: '20 mm' })],
    ['square slit', slitSection({ width: '50 mm', height: '50 mm' })],
    ['lossless', withoutLoss(roundSection({ diameter: '75 mm' }))],
  ] as const)('%s', (_, section) => {
    expect(reasons(lineSectionLaws(section))).toEqual([]);
  });
  const ends = { innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' } as const;
  test.each([
    ['cone', conicalProfile(ends)],
    ['exponential', exponentialProfile(ends)],
    ['flared', flaredProfile({ diameter: '70 mm', length: '20 cm', outerFlare: '20 mm' })],
  ] as const)('%s', (_, profile) => {
    expect(reasons(profileLaws(profile))).toEqual([]);
  });
});

describe('limits and filters', () => {
  const system = systemOf(ventedFamily, vented);
  const bounded = { ...driver, Xmax: si('displacementPeak', 0.008), Pe: si('power', 200) };
  test.each([
    ...travelLimit(bounded),
    ...heatLimit(bounded),
    airSpeedLimit('12 m/s'),
    voltageLimit('20 V'),
    currentLimit('5 A'),
  ])('$name', (limit) => {
    expect(reasons(limitLaws(limit, { system }))).toEqual([]);
  });
  const shapes = [
    ...[butterworthShape(4), butterworthShape(8), besselShape(8), legendreShape(5), linkwitzRileyShape(8)],
    ...[chebyshevShape(4, { ripple: 0.5 }), shapeByQ({ order: 2, Q: 1.5 })],
  ];
  test.each([
    ...shapes.flatMap((shape) => [highPass(shape, '24 Hz'), lowPass(shape, '80 Hz')]),
    shelf({ order: 1, corner: '60 Hz', gain: 6 }),
    poleShift({ f0: '55 Hz', Q0: 1.1, f1: '30 Hz', Q1: 0.6 }),
  ])('$name', (filter) => {
    expect(reasons(filterLaws(filter))).toEqual([]);
  });
});
