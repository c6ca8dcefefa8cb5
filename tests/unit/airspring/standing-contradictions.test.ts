import { type Retrofit, retrofit } from 'airspring';
import { describe, expect, test } from 'vitest';
import unknownDrivers from '../../../packages/airspring/briefs/unknown-drivers.json' with { type: 'json' };
import { demoStanding } from '../../arbitrary/standing.js';
import { faultsOf as refusal } from '../../refusal/faults.js';

const drivers = [
  { face: 'front', across: '120 mm', up: '390 mm' },
  { face: 'front', across: '120 mm', up: '210 mm' },
];
const vent = { diameter: '44 mm', length: '150 mm', hole: '50 mm' };
const at = (face: string, across: string, up: string) => ({ ...vent, place: { face, across, up } });
const outer = { width: '240 mm', height: '500 mm', depth: '300 mm' };
const placed = (standing: object) => ({
  ...demoStanding,
  standing: {
    outer,
    panelThickness: '15 mm',
    drivers,
    vents: [at('front', '120 mm', '60 mm')],
    keep: ['box'],
    ...standing,
  },
});
const told = (more: object) => ({ ...demoStanding, standing: { ...demoStanding.standing, ...more } });
/** Nothing may be changed, which is soon worked out. */
const kept = { keep: ['box', 'drivers', 'wiring', 'holes', 'tuning'] };
const answer = (brief: object): Retrofit => retrofit(JSON.parse(JSON.stringify(brief)));
const faults = (brief: object) => refusal(() => answer(brief));

describe('a contradiction is told at its place, with what would do', () => {
  test.each<[string, object, { readonly path: string; readonly got: unknown; readonly expected: string }]>([
    [
      'a cutout that cuts into the panel beside it',
      placed({ drivers: [drivers[0], { ...drivers[1], across: '20 mm' }] }),
      {
        path: 'standing.drivers[1].across',
        got: '20 mm',
        expected: 'from 88 mm to 152 mm, so that the cutout of 146 mm does not cut into the panels beside it',
      },
    ],
    [
      'a cutout wider than its panel',
      placed({
        drivers: [{ face: 'top', across: '120 mm', up: '150 mm' }, drivers[1]],
        outer: { ...outer, depth: '170 mm' },
      }),
      {
        path: 'standing.drivers[0].up',
        got: '150 mm',
        expected: 'room for the cutout of 146 mm: the top panel is 140 mm wide inside in this direction',
      },
    ],
    [
      'a vent in the corner',
      placed({ vents: [at('front', '120 mm', '10 mm')] }),
      {
        path: 'standing.vents[0].place.up',
        got: '10 mm',
        expected: 'from 40 mm to 460 mm, so that the hole of 50 mm does not cut into the panels beside it',
      },
    ],
    [
      'a vent wider than its panel, whose hole was not measured',
      placed({ vents: [{ diameter: '250 mm', length: '150 mm' }] }),
      {
        path: 'standing.vents[0].diameter',
        got: '250 mm',
        expected: 'less than the inside of the front panel, 210 mm',
      },
    ],
    [
      'places of more drivers than there are',
      placed({ drivers: [...drivers, { face: 'back', across: '120 mm', up: '210 mm' }] }),
      { path: 'standing.drivers', got: '3 places', expected: 'one for each driver that shows on the outside, 2' },
    ],
    [
      'a cutout wider than every panel',
      told({ air: undefined, inner: { width: '130 mm', height: '600 mm', depth: '140 mm' } }),
      {
        path: 'drivers[0].cutoutDiameter',
        got: '146 mm',
        expected: 'a cutout that a panel of the box holds: the largest is 140 mm wide inside',
      },
    ],
    [
      'places where the sizes are not known',
      told({ vents: [at('front', '120 mm', '60 mm')] }),
      { path: 'standing.vents[0].place', got: 'a place', expected: 'the sizes of the box as well (outer or inner)' },
    ],
    [
      'equal peaks',
      told({ measured: { peaks: ['40 Hz', '40 Hz'] } }),
      { path: 'standing.measured.peaks', got: '40 Hz, 40 Hz', expected: 'the lower peak first' },
    ],
  ])('%s', (_, brief, fault) => {
    expect(faults(brief)).toEqual([expect.objectContaining({ ...fault, code: 'inconsistent' })]);
  });

  test('the remedy fits the fault', () => {
    const remedy = (brief: object) => faults(brief)[0]?.remedy;
    expect(remedy(placed({ drivers: [] }))).toBe('List each place once, or leave the list out.');
    expect(remedy(told({ measured: { peaks: ['40 Hz', '40 Hz'] } }))).toBe('Measure the two peaks again.');
    expect(remedy(told({ measured: { peaks: ['70 Hz', '20 Hz'] } }))).toBe('Swap the two.');
  });
});

test('a level that no amplifier can drive is told at the level of the brief', () => {
  const [fault, ...others] = faults({ ...demoStanding, wanted: { ...demoStanding.wanted, level: '190 dB' } });
  expect(others).toEqual([]);
  expect(fault).toMatchObject({ path: 'wanted.level', got: '190 dB', code: 'out-of-range' });
  expect(fault?.expected).toMatch(/^at most 16\d dB, for which these drivers need 10 kV$/);
});

test('a dip outside the peaks is told once', () => {
  const { measured } = unknownDrivers.standing;
  const outside = {
    ...unknownDrivers,
    standing: { ...unknownDrivers.standing, measured: { ...measured, tuning: '80 Hz' } },
  };
  expect(faults(outside).map(({ path }) => path)).toEqual(['standing.measured.tuning']);
});

describe('what counts for a new box alone is not passed over in silence', () => {
  const more = {
    space: { width: '300 mm', height: '300 mm', depth: '300 mm', panelThickness: '15 mm' },
    weights: { deep: 2 },
    slot: { width: 'full' },
    box: { kinds: ['closed'], QL: 9 },
    vent: { airSpeed: '17 m/s', largest: '60 mm' },
    wanted: { ...demoStanding.wanted, rise: '2 dB' },
  };
  test('each field is refused at its path', () => {
    const found = faults({ ...demoStanding, ...more });
    const paths = found.map(({ path }) => path).sort();
    expect(paths).toEqual(['box.kinds', 'slot', 'space', 'vent.largest', 'wanted.rise', 'weights']);
    for (const { code, expected } of found) {
      expect(code).toBe('conflict');
      expect(expected).toContain('a box that stands');
    }
  });

  test('a misspelt one is told once', () => {
    expect(faults({ ...demoStanding, wieghts: {} }).map(({ code }) => code)).toEqual(['unknown-field']);
  });
});

const doubts = (brief: object): string =>
  answer(brief)
    .doubts.flat()
    .map((part) =>
      typeof part === 'string' ? part : part[1] === 'volume' ? (part[0] * 1e3).toFixed(1) : part[0].toFixed(1),
    )
    .join('');

test('air that is far from what the sizes leave is told with both numbers', () => {
  const less = doubts(placed({ ...kept, air: '18 L' }));
  // 210 × 470 × 270 mm, two drivers of 0.5 L, and a tube of 50 mm behind its panel.
  expect(less).toContain('You say that the box holds 18.0 of air, but its sizes leave 25.4.');
  expect(less).toContain('Something solid of 7.4 inside would explain it.');
  expect(doubts(placed({ ...kept, air: '25 L' }))).toBe('');
});

test('two peaks that contradict the dip and the sheet are told', () => {
  const peaks = doubts(told({ ...kept, measured: { tuning: '33 Hz', peaks: ['31 Hz', '90 Hz'] } }));
  expect(peaks).toContain(
    'You measured the dip at 33.0, but the two peaks and fs of the sheet say that it is at 66.4.',
  );
  expect(doubts(told({ ...kept, measured: { tuning: '33 Hz', peaks: ['20 Hz', '69 Hz'] } }))).toBe('');
});

test('a printer too small for any tube is no fault of the brief', () => {
  const tiny = answer({ ...demoStanding, printer: { height: '5 mm', width: '5 mm' }, workshop: {} });
  expect(tiny.rows.length).toBeGreaterThan(5);
  expect(tiny.tubeSets).toEqual([]);
});
