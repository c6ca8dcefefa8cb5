/** A box and a main speaker about their crossing, by a numeric library; and the sums that are flat by their polynomials. */
import { butterworthShape, highPass, linkwitzRileyShape, lowPass } from '@airspring/core/filter';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { bestDelay, joinMains, mainPressure } from '@airspring/core/room';
import { checkIn } from '../../ledger/check.js';
import { byProgram, fixtures, hertz, metres, roundAir, scipy } from './fixtures.js';

const check = checkIn(roundAir);

const decibels = (value: number) => si('level', value);

for (const [i, row] of fixtures.joins.entries()) {
  const grid = logarithmicGrid('20 Hz', '400 Hz', 401);
  const shape = () => (row.family === 'butterworth' ? butterworthShape : linkwitzRileyShape)(row.order);
  const part = (level: number, order: number, corner: number) =>
    mainPressure({ level: decibels(level), highPass: highPass(butterworthShape(order), hertz(corner)) }, grid);
  const joined = () =>
    joinMains(
      {
        box: {
          pressure: part(row.boxLevel, 4, row.boxCorner),
          filter: lowPass(shape(), hertz(row.corner)),
          distance: metres(row.boxDistance),
          level: decibels(row.boxChange),
        },
        main: {
          pressure: part(row.mainLevel, row.mainOrder, row.mainCorner),
          filter: highPass(shape(), hertz(row.corner)),
          distance: metres(row.mainDistance),
          delay: si('time', row.mainDelay),
          polarity: row.sign > 0 ? 'normal' : 'inverted',
        },
      },
      grid,
      roundAir,
    );
  const base = {
    ...byProgram,
    given: { order: { value: row.order, unit: '1' }, corner: { value: row.corner, unit: 'Hz' } },
  } as const;
  for (const column of ['sum', 'box', 'main'] as const)
    for (const side of ['re', 'im'] as const)
      check(`room.join.${i}.${column}.${side}`, {
        ...base,
        formula: 'room/joinMains',
        source: scipy,
        got: () => row.probes.map((k) => joined()[column][side][k]!),
        expected: row[column][side],
        unit: 'Pa',
        tolerance: { absolute: 1e-13, why: 'rounding of 0.1 Pa and less' },
      });
  check(`room.join.${i}.frequencies`, {
    ...base,
    formula: 'room/joinMains',
    source: { ...scipy, locator: 'room.py: numpy.geomspace' },
    got: () => row.probes.map((k) => joined().frequencies[k]!),
    expected: row.probed,
    unit: 'Hz',
    tolerance: { relative: 1e-12, why: 'rounding' },
  });
  for (const [field, unit] of [
    ['frequency', 'Hz'],
    ['phaseDifference', 'rad'],
    ['level', 'dB'],
  ] as const)
    check(`room.join.${i}.crossing.${field}`, {
      ...base,
      formula: 'room/joinMains',
      source: scipy,
      got: () => joined().crossing![field],
      expected: row.crossing[field],
      unit,
      tolerance: {
        absolute: row.straight[field],
        why: 'drawn straight between frequencies 0.75 % apart: an eighth of the second difference',
      },
    });

  const [from, to] = row.band.map(hertz) as [never, never];
  const found = () => bestDelay(joined(), { from, to });
  const polarity = row.best.normal.shortfall < row.best.inverted.shortfall ? 'normal' : 'inverted';
  const other = polarity === 'normal' ? 'inverted' : 'normal';
  for (const [name, which, get] of [
    ['best', polarity, () => found()],
    ['other', other, () => found().otherPolarity],
  ] as const) {
    const { delay, shortfall } = row.best[which];
    const scanned = { ...scipy, locator: 'room.py: a scan of all delays in steps of 5 µs, then of 20 ns' };
    check(`room.best-delay.${i}.${name}.delay`, {
      ...base,
      formula: 'room/bestDelay',
      source: scanned,
      got: () => {
        const { polarity: chosen, mainDelay, boxDelay } = get();
        return chosen === which ? mainDelay - boxDelay : Number.NaN;
      },
      expected: delay,
      unit: 's',
      tolerance: { absolute: 2e-8, why: 'one step of the scan' },
    });
    check(`room.best-delay.${i}.${name}.shortfall`, {
      ...base,
      formula: 'room/bestDelay',
      source: scanned,
      got: () => get().shortfall,
      expected: shortfall,
      unit: 'dB',
      tolerance: {
        absolute: 1e-10,
        why: 'a scan lies within 10 ns of the minimum: (ω · 10 ns)² dB at the top of the band',
      },
    });
  }
}

for (const order of [2, 4, 8] as const)
  check(`room.join.linkwitz-riley.${order}`, {
    formula: 'room/joinMains',
    source: { key: 'own', locator: 'B² + s²ⁿB(1/s)² is B(s)B(−s), so that the level of the sum is constant' },
    status: 'derived',
    kind: 'identity',
    given: { order: { value: order, unit: '1' } },
    got: () => {
      const grid = logarithmicGrid('20 Hz', '320 Hz', 9);
      const flat = { re: new Float64Array(9).fill(1), im: new Float64Array(9) };
      const polarity = order === 2 ? 'inverted' : 'normal';
      const { sum } = joinMains(
        {
          box: { pressure: flat, filter: lowPass(linkwitzRileyShape(order), '80 Hz'), distance: '1 m' },
          main: { pressure: flat, filter: highPass(linkwitzRileyShape(order), '80 Hz'), distance: '1 m', polarity },
        },
        grid,
      );
      return sum.re.map((re, k) => Math.hypot(re, sum.im[k]!));
    },
    expected: new Array(9).fill(1),
    unit: '1',
    tolerance: { absolute: 1e-12, why: 'rounding' },
  });
