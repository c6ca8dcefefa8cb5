import { type Brief, unitsOf } from 'airspring';
import { describe, expect, test } from 'vitest';
import puppetThunder from '../../../packages/airspring/briefs/puppet-thunder.json' with { type: 'json' };
import { demoStanding } from '../../arbitrary/standing.js';

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
