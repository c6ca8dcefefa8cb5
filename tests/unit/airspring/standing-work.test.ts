import { retrofit, retrofitText } from 'airspring';
import { expect, test } from 'vitest';

const driver = {
  name: 'invented',
  fs: '31 Hz',
  Qts: 0.38,
  Qms: 4.2,
  Vas: '31 L',
  Sd: '214 cm²',
  Re: '6.3 Ω',
  Xmax: '7 mm',
  Pe: '90 W',
  outerDiameter: '208 mm',
  cutoutDiameter: '183 mm',
  depth: '102 mm',
};
const inner = { width: '280 mm', height: '420 mm', depth: '330 mm' };

/** A box of 280 × 420 × 330 mm inside, whose one vent stands at a place that is told. */
const placed = retrofit({
  version: 1,
  title: 'Placed',
  drivers: [driver],
  wanted: { lowest: '36 Hz', highest: '120 Hz', level: '96 dB', fall: '6 dB' },
  amplifier: { power: '80 W', into: '8 Ω' },
  standing: {
    inner,
    panelThickness: '18 mm',
    drivers: [{ face: 'front', across: '158 mm', up: '330 mm' }],
    vents: [{ diameter: '70 mm', length: '120 mm', place: { face: 'front', across: '100 mm', up: '100 mm' } }],
    measured: { tuning: '36 Hz' },
    keep: ['drivers'],
  },
  printer: { height: '200 mm', width: '200 mm' },
});

/** Two drivers in series, two equal vents. */
const two = retrofit({
  version: 1,
  title: 'Two',
  drivers: [
    {
      ...driver,
      fs: '22 Hz',
      Qts: 0.42,
      Qms: 4.83,
      Vas: '150 L',
      Sd: '529 cm²',
      Re: '3.3 Ω',
      Xmax: '14 mm',
      Pe: '350 W',
      outerDiameter: '315 mm',
      cutoutDiameter: '282 mm',
      depth: '150 mm',
      wirings: [{ series: 2 }],
    },
  ],
  wanted: { lowest: '28 Hz', highest: '80 Hz', level: '108 dB', fall: '6 dB' },
  amplifier: { power: '400 W', into: '8 Ω' },
  standing: {
    outer: { width: '762 mm', height: '508 mm', depth: '508 mm' },
    panelThickness: '19 mm',
    vents: [{ diameter: '102 mm', length: '152 mm', count: 2 }],
    keep: ['box'],
  },
});

const partsOf = ({ designs }: typeof placed) => designs.flatMap(({ parts }) => parts);

test('the boards of a slot stand between the sides of the box', () => {
  const boards = partsOf(placed).flatMap(({ what, board }) =>
    board && 'sides' in board && what.endsWith('wide') ? [board.sides[1]] : [],
  );
  expect(boards.length).toBeGreaterThan(0);
  for (const width of boards) expect(width).toBeLessThanOrEqual(0.28 + 1e-9);
});

test('as many holes are closed as the box has, also after a change to its vents', () => {
  const covers = partsOf(placed).filter(({ what }) => what === 'board over the hole of a vent');
  expect(covers.length).toBeGreaterThan(0);
  for (const { count } of covers) expect(count).toBe(1);
});

/** A phrase as its words, with lengths in millimetres. */
const said = (phrase: readonly (string | readonly [number, string])[]): string =>
  phrase.map((part) => (typeof part === 'string' ? part : `${(part[0] * 1e3).toFixed(1)} mm`)).join('');

test('the pieces of a bent tube are its legs and its elbow', () => {
  const bent = placed.rows.flatMap((row) => {
    const text = row.ok ? row.steps.map(said).join(' ') : '';
    return text.includes('an elbow of') ? [text] : [];
  });
  expect(bent.length).toBeGreaterThan(0);
  for (const text of bent) {
    const [, pieces = ''] = /in \d pieces of (.*?)\. Print and glue/.exec(text) ?? [];
    const [, first, arc] = /straight for ([\d.]+) mm.*?an elbow of ([\d.]+) mm/.exec(text) ?? [];
    const told = [...pieces.matchAll(/([\d.]+) mm/g)].map(([, one]) => one);
    expect(told).toContain(arc);
    const before = told.slice(0, told.indexOf(arc)).reduce((sum, one) => sum + Number(one), 0);
    const hole = text.includes('with the panel') ? 18 : 0;
    expect(before).toBeCloseTo(Number(first) - hole, 0);
    for (const one of told) expect(Number(one)).toBeLessThanOrEqual(200);
  }
});

test('a driver is disconnected before its cutout is closed, and the load is checked where it falls', () => {
  const alone = two.rows.find(({ change }) => change === 'one driver');
  expect(alone?.ok && alone.steps.flat().join(' ')).toContain('check that the amplifier takes the new least impedance');
  const both = two.designs.filter(({ changes }) => changes.includes('one driver'));
  expect(both.length).toBeGreaterThan(0);
  for (const { steps, what } of both) {
    const order = steps.map(({ says }) => said(says));
    const off = order.findIndex((one) => one.includes('Switch the amplifier off'));
    expect(off).toBeGreaterThanOrEqual(0);
    expect(off).toBeLessThan(order.findIndex((one) => one.includes('Close the other cutout')));
    expect(what.flat().join(' ')).not.toContain('stays as it is');
  }
});

test('two vents that stand become four, and no second one', () => {
  const changes = two.rows.map(({ change }) => change);
  expect(changes).toContain('twice as many vents');
  expect(changes).toContain('four vents of the same tuning');
  expect(changes.filter((one) => /second|two vents/.test(one))).toEqual([]);
  const bent = two.rows.flatMap((row) => (row.ok && row.box.tubes.some(({ count }) => count > 1) ? row.steps : []));
  expect(bent.map(said).join(' ')).not.toContain('Join the elbow inside');
});

test('a box that does what is wanted is told so', () => {
  const opening = (answer: typeof placed) => retrofitText(answer, {}).replaceAll(/\s+/g, ' ');
  expect(opening(placed)).toContain('The box already reaches as deep and plays as loud as you want.');
  expect(opening(two)).not.toContain('already reaches as deep');
});
