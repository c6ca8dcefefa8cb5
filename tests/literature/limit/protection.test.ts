/** The high-pass that just keeps a travel, against brute force on the displacement functions of the papers. */
import type { Driver } from '@airspring/core/driver';
import type { System } from '@airspring/core/enclosure';
import {
  besselShape,
  butterworthShape,
  chebyshevShape,
  type FilterShape,
  filterLevel,
  linkwitzRileyShape,
} from '@airspring/core/filter';
import {
  gentlestHighPass,
  greatestLevel,
  type ProtectiveFilter,
  type ProtectiveFilters,
  travelLimit,
} from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { referenceLevel } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { type AlignmentRow, closedOf, paperAir, ventedOf } from '../enclosure/textbook.js';
import fixtures from './protection.json' with { type: 'json' };

const check = checkIn(paperAir);

const shapes: Record<string, (order: number, ripple?: number) => FilterShape> = {
  butterworth: butterworthShape,
  bessel: besselShape,
  'linkwitz-riley': linkwitzRileyShape,
  chebyshev: (order, ripple) => chebyshevShape(order, { ripple: ripple! }),
};
const XMAX = 0.008;
const limitsOf = (system: System) => {
  const { driver } = (system.spec as { drivers: { driver: Driver } }).drivers;
  return travelLimit({ ...driver, Xmax: si('displacementPeak', XMAX) });
};
/** The drive at which the travel at 0 Hz would be the limit over the share. */
const driveOf = (system: System, share: number) =>
  greatestLevel(system, limitsOf(system), [1e-3]).driveVoltageRms[0]! / share;

for (const [i, { kind, values, share, filters, f3 }] of fixtures.rows.entries()) {
  const system =
    kind === 'closed'
      ? closedOf({ Qtc: (values as { Qtc: number }).Qtc, fc: 50 })
      : ventedOf(values as unknown as AlignmentRow);
  const given = {
    ...Object.fromEntries(Object.entries(values).map(([name, value]) => [name, { value, unit: '1' }])),
    share: { value: share, unit: 'of the travel at 0 Hz' },
  };
  const solve = () =>
    gentlestHighPass(system, limitsOf(system), {
      driveVoltageRms: si('voltageRms', driveOf(system, share)),
      candidates: filters.map(({ shape: [name, order, ripple] }) =>
        shapes[name as string]!(order as number, ripple as number),
      ),
    }) as ProtectiveFilters;
  const row = {
    formula: 'limit/gentlestHighPass',
    source:
      kind === 'closed'
        ? {
            key: 'small1972closed1',
            locator: 'displacement and response functions, by brute force over frequency and corner',
          }
        : {
            key: 'small1973vented1',
            locator: 'displacement and response functions, by brute force over frequency and corner',
          },
    status: 'derived',
    kind: 'program',
    given,
  } as const;
  /** The filters of one solution, in the order of the fixtures. */
  const all = () => {
    const { candidates } = solve();
    return filters.map(({ shape: [name, order] }) => {
      const found = candidates.find(({ shape, filter }) => {
        const title = shape.name.toLowerCase().replace('–', '-');
        return title.startsWith(name as string) && filter.denominator.length === (order as number) + 1;
      });
      if (!found) throw new Error(`no ${name} of order ${order}`);
      return found;
    });
  };
  const columns = {
    corner: [({ corner }: ProtectiveFilter) => corner, 'Hz', 3e-8],
    bindingAt: [({ bindingAt }: ProtectiveFilter) => bindingAt, 'Hz', 1e-4],
    f3: [({ f3 }: ProtectiveFilter) => f3, 'Hz', 3e-8],
    delay: [({ cost }: ProtectiveFilter) => cost.delay, 's', 3e-7],
  } as const;
  for (const [name, [got, unit, relative]] of Object.entries(columns))
    check(`limit.protection.${i}.${name}`, {
      ...row,
      got: () => all().map(got),
      expected: filters.map((filter) => filter[name as 'corner']),
      unit,
      tolerance: { relative, why: 'a thousandth of a hertz stands for 0 Hz; 200,000 frequencies' },
    });
  for (const name of ['depth', 'level'] as const)
    check(`limit.protection.${i}.${name}`, {
      ...row,
      got: () => all().map(({ cost }) => cost[name]),
      expected: filters.map((filter) => filter[name]),
      unit: name === 'depth' ? 'Hz' : 'dB',
      tolerance: { absolute: 3e-6, why: 'a difference of two frequencies, or a level, of such corners' },
    });
  check(`limit.protection.${i}.filter`, {
    ...row,
    got: () => all().map(({ filter }) => -filterLevel(filter, frequencyGrid([f3]))[0]!),
    expected: filters.map(({ level }) => level),
    unit: 'dB',
    tolerance: { absolute: 3e-6, why: 'a level of such corners' },
  });
  check(`limit.protection.${i}.normalised`, {
    ...row,
    got: () => all().map(({ filter: { numerator, denominator } }) => numerator.at(-1)! + 2 * denominator.at(-1)!),
    expected: filters.map(() => 3),
    unit: '1',
    tolerance: { absolute: 1e-12, why: 'far above, a high-pass passes 1' },
  });
  check(`limit.protection.${i}.bare`, {
    ...row,
    got: () => [solve().f3, solve().at],
    expected: [f3, f3],
    unit: 'Hz',
    tolerance: { relative: 1e-9, why: 'roots on both sides' },
  });
  check(`limit.protection.${i}.gentlest`, {
    ...row,
    got: () => solve().candidates[0].cost.depth,
    expected: Math.min(...filters.map(({ depth }) => depth)),
    unit: 'Hz',
    tolerance: { absolute: 0.05, why: 'depth is compared in tenths of a hertz' },
  });
}

check('limit.protection.drive', {
  formula: 'limit/gentlestHighPass',
  source: { key: 'small1972direct', locator: 'level far above: that of one volt and 20 lg of the drive' },
  status: 'derived',
  kind: 'example',
  given: { share: { value: [0.5, 0.9], unit: 'of the travel at 0 Hz' } },
  got: ({ share }) => {
    const system = closedOf({ Qtc: 0.7071067811865476, fc: 50 });
    const drive = driveOf(system, share);
    const level = referenceLevel(system) + 20 * Math.log10(drive);
    return (gentlestHighPass(system, limitsOf(system), { level }) as ProtectiveFilters).driveVoltageRms / drive;
  },
  expected: [1, 1],
  unit: 'of the drive',
  tolerance: { relative: 1e-13, why: 'double precision' },
});
