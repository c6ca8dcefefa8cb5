import type { Driver } from '@airspring/core/driver';
import { type DriverNet, type MixedBoxInput, mixedBox, type System } from '@airspring/core/enclosure';
import * as fc from 'fast-check';
import { closedBoxArbitrary, ventedBoxArbitrary } from './box.js';
import { absurdDriverArbitrary, accepted, driverArbitrary } from './driver.js';

/** Nets of two to five drivers, wired anyhow, all in the chambers named. */
const netArbitrary = (driver: fc.Arbitrary<Driver>, chambers: readonly string[]): fc.Arbitrary<DriverNet> =>
  fc
    .array(
      fc.record({ driver, chamber: fc.constantFrom(...chambers), wiring: fc.constantFrom('series', 'parallel') }),
      {
        minLength: 2,
        maxLength: 5,
      },
    )
    .map((parts) =>
      parts
        .map(({ driver, chamber }, i): DriverNet => ({ name: `d${i}`, driver, chamber: chambers[i] ?? chamber }))
        .reduce((net, one, i) => {
          return parts[i]?.wiring === 'series' ? { series: [net, one] } : { parallel: [one, net] };
        }),
    );

const noDrivers = ({ drivers: _1, sourceResistance: _2, ...chamber }: Record<string, unknown>) => chamber;
const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

/** Mixed boxes of one or two chambers, closed or vented, of sizes that are built. */
export const mixedBoxArbitrary: fc.Arbitrary<MixedBoxInput> = fc
  .array(fc.oneof(closedBoxArbitrary, ventedBoxArbitrary), { minLength: 1, maxLength: 2 })
  .chain((boxes) => {
    const chambers = Object.fromEntries(boxes.map((box, i) => [`c${i}`, noDrivers({ ...box })]));
    return netArbitrary(driverArbitrary, Object.keys(chambers)).map(
      (drivers) => ({ drivers, chambers }) as unknown as MixedBoxInput,
    );
  });

/** The same of any accepted magnitudes, to look for what breaks. */
export const absurdMixedBoxArbitrary: fc.Arbitrary<System<ReturnType<typeof mixedBox>['spec']>> = fc
  .array(
    fc.record({
      netVolume: accepted('volume'),
      fb: some(accepted('frequency')),
      ventArea: accepted('area'),
      QL: some(accepted('ratio')),
      QA: some(accepted('ratio')),
    }),
    { minLength: 1, maxLength: 2 },
  )
  .chain((parts) => {
    const chambers = Object.fromEntries(
      parts.map(({ fb, ventArea, ...rest }, i) => [
        `c${i}`,
        Object.fromEntries(
          Object.entries(fb === undefined ? rest : { ...rest, fb, ventArea }).filter(
            ([, value]) => value !== undefined,
          ),
        ),
      ]),
    );
    return netArbitrary(absurdDriverArbitrary, Object.keys(chambers)).map((drivers) =>
      mixedBox({ drivers, chambers } as unknown as MixedBoxInput),
    );
  });
