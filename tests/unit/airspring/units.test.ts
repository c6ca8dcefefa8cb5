import { standardShapes } from '@airspring/workshop/shape';
import { type Brief, standard, unitsOf } from 'airspring';
import { describe, expect, test } from 'vitest';
import puppetThunder from '../../../packages/airspring/briefs/puppet-thunder.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../../packages/airspring/src/brief/standard-models.js';
import { readStanding } from '../../../packages/airspring/src/standing/read.js';
import { phrasing } from '../../../packages/airspring/src/words/phrasing.js';
import { demoStanding } from '../../arbitrary/standing.js';
import { faultsOf } from '../../refusal/faults.js';

/** A brief as somebody writes it who has a rule in inches: the sheet of the driver stays metric. */
const inInches = {
  ...demoStanding,
  standing: {
    outer: { width: '9 1/2 in', height: '20"', depth: '1 ft' },
    panelThickness: '5/8 in',
    vents: [{ diameter: '1.75 in', length: '6 in' }],
  },
  workshop: { holeSaws: ['2 1/4 in', '3 in'] },
  printer: { height: '7 in', width: '7 in' },
};

describe('the unit of lengths in a report', () => {
  test.each<[string, object, string]>([
    ['inches, where every length that was measured is in inches or feet', inInches, 'in'],
    ['millimetres, where one length is', { ...inInches, printer: { height: '180 mm' } }, 'mm'],
    ['what the brief names', { ...inInches, units: { length: 'cm' } }, 'cm'],
    ['millimetres for a brief in millimetres', demoStanding, 'mm'],
    [
      'inches for a new box',
      { ...puppetThunder, space: inInches.standing.outer, vent: {}, printer: {}, workshop: {} },
      'in',
    ],
    [
      'not told by a title, a note, a driver or a radiator',
      { title: '12 in', note: '3 ft', radiators: [{ depth: '3 in' }] },
      'mm',
    ],
  ])('%s', (_, brief, unit) => {
    expect(unitsOf(brief as Brief).length).toBe(unit);
  });

  test('volumes stay in litres', () => {
    expect(unitsOf(inInches).volume).toBe('L');
    expect(unitsOf({ ...inInches, units: { volume: 'ft³' } })).toEqual({ length: 'in', volume: 'ft³' });
  });
});

describe('faults of a brief in inches', () => {
  const { space: _, vent: __, workshop: ___, printer: ____, ...plain } = puppetThunder as Record<string, unknown>;
  const space = { width: '16 in', height: '14 in', depth: '15 in', panelThickness: '3/4 in' };
  const told = (more: object, rest: object = {}) =>
    faultsOf(() =>
      readBrief(
        { ...plain, ...rest, space: { ...space, ...more } },
        standard,
        standardModels,
        undefined,
        standardShapes,
      ),
    ).map(({ path, got, expected }) => `${path}: ${got}; ${expected}`);
  const square = (right: string, top: string) => [
    ['0 in', '0 in'],
    [right, '0 in'],
    [right, top],
    ['0 in', top],
  ];
  const bow = [
    ['0 in', '0 in'],
    ['15 in', '14 in'],
    ['15 in', '0 in'],
    ['0 in', '14 in'],
  ];

  test.each<[string, object, string]>([
    ['a wedge', { wedge: { top: '20 in' } }, 'space.shape.wedge.top: 20 in; less than across, 15 in'],
    ['a cylinder', { cylinder: {} }, 'space.shape.cylinder: width 16 in, depth 15 in; '],
    [
      'corners that do not fill the space',
      { outline: { along: 'width', corners: square('15 in', '12 in') } },
      'space.shape.outline.corners: 0 in to 12 in; corners from 0 in to space.height, 14 in',
    ],
    [
      'sides that cross',
      { outline: { along: 'width', corners: bow } },
      'space.shape.outline.corners[2]: 15 in | 0 in; ',
    ],
    [
      'layers that leave nothing',
      {
        stack: {
          along: 'height',
          layers: [{ corners: square('16 in', '15 in'), length: '14 in' }, { corners: square('8 in', '15 in') }],
        },
      },
      'space.shape.stack.layers: 14 in for the layers that have a length; less than space.height, 14 in',
    ],
    [
      'panels that meet',
      {
        outline: {
          along: 'width',
          corners: [
            ['0 in', '0 in'],
            ['15 in', '0 in'],
            ['0.5 in', '1 in'],
            ['0 in', '14 in'],
          ],
        },
      },
      'panels of 0.75 in leave nothing between them',
    ],
  ])('%s', (_, shape, expected) => {
    const faults = told({ shape }).join('\n');
    expect(faults).toContain(expected);
    expect(faults).not.toMatch(/\d mm|\.$/m);
  });

  test('a wall thinner than a line of the usual nozzle', () => {
    const thin = { vent: { wall: '0.01 in' }, printer: { height: '8 in', width: '8 in' } };
    expect(told({}, thin).join()).toContain('vent.wall: 0.01 in; at least 0.01575 in, one line of the usual nozzle');
  });

  test('volumes are told in the unit that the brief names, whatever else is wrong in it', () => {
    const bracing = { bracing: '9 ft³' };
    expect(told(bracing, { units: { volume: 'ft³' } }).join()).toContain(
      'less than the volume of the whole space, 1.944 ft³',
    );
    for (const units of [null, 'in', 5, { length: 'furlong', volume: 'toString' }])
      expect(told(bracing, { units }).join()).toContain('less than the volume of the whole space, 55.06 L');
  });

  test('of a box that stands', () => {
    const places = (drivers: object[]) =>
      faultsOf(() =>
        readStanding({ ...inInches, standing: { ...inInches.standing, drivers } }, standard, standardModels),
      ).map(({ got, expected }) => `${got}; ${expected}`);
    const one = { face: 'front', across: '4 in', up: '5 in' };
    const faults = [
      ...places([one, { ...one, up: '30 in' }]),
      ...places([one, { ...one, up: '6 in' }]),
      ...places([one, { ...one, up: '0.5 in' }]),
    ].join('\n');
    expect(faults).toContain('a centre on the front panel, which is 20 in in this direction');
    expect(faults).toContain('1 in from the centre of standing.drivers[0]');
    expect(faults).toMatch(/from [\d.]+ in to [\d.]+ in, so that the cutout/);
    expect(faults).not.toMatch(/\d mm/);
  });
});

test('the travel of a cone is told in inches to who reads inches, and in millimetres otherwise', () => {
  expect((['in', 'cm', 'mm'] as const).map((length) => phrasing({ length }).travel(0.009))).toEqual([
    '0.354 in',
    '9 mm',
    '9 mm',
  ]);
});
