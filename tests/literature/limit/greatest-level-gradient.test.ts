import { type Air, standardAir } from '@airspring/core/air';
import type { Driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import {
  type GreatestLevelGradient,
  greatestLevelGradient,
  heatLimit,
  leastGreatestLevelGradient,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import fixture from '../response/gradient.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
const drivers = { ...fixture.driver, Xmax: 0.004, Pe: 60 } as unknown as Driver;
const systems: Record<'closed' | 'vented', System> = {
  closed: closedBox({ drivers, netVolume: '40 L' }, air),
  vented: ventedBox({ drivers, netVolume: '60 L', fb: '28 Hz', QL: 7, QP: 60 }, air),
};
const limits = [...travelLimit(drivers), ...heatLimit(drivers), voltageLimit('25 V')];

for (const [family, { playable, leastPlayable }] of Object.entries(fixture.boxes)) {
  const system = systems[family as keyof typeof systems];
  const names = Object.keys(playable[0]!.byElement);
  const listed = (found: GreatestLevelGradient) =>
    found.ok ? [found.value, ...[...names, 'air.density'].map((name) => found.byElement[name] ?? Number.NaN)] : [];
  /** 20 log10 ρ has the slope 20/ln 10, and no limit depends on it. */
  const all = ({ value, byElement }: { readonly value: number; readonly byElement: object }) => [
    value,
    ...(Object.values(byElement) as number[]),
    20 / Math.LN10,
  ];
  const shared = {
    source: { key: 'mpmath', locator: 'circuit solved by hand, differences at 50 digits; script gradient.py' },
    status: 'derived',
    kind: 'program',
    unit: 'dB, dB per relative change',
    tolerance: { absolute: 1e-12, why: 'double precision of values up to 110' },
  } as const;
  check(`limit.greatest-level-gradient.${family}`, {
    ...shared,
    formula: 'limit/greatestLevelGradient',
    given: {
      family: { value: family, unit: '' },
      of: { value: `value; by ${names.join(', ')}, density of the air; over frequency`, unit: '' },
      binding: {
        value: playable.map(({ frequency, binding }) => `${binding} at ${frequency} Hz`).join(', '),
        unit: '',
      },
    },
    got: () =>
      playable.flatMap(({ frequency, binding }) => {
        const found = greatestLevelGradient(system, limits, si('frequency', frequency));
        return found.ok && found.binding === binding ? [...listed(found), found.byFrequency] : [];
      }),
    expected: playable.flatMap((one) => [...all(one), one.byFrequency]),
  });
  check(`limit.least-greatest-level-gradient.${family}`, {
    ...shared,
    formula: 'limit/leastGreatestLevelGradient',
    given: {
      family: { value: family, unit: '' },
      of: { value: `value; by ${names.join(', ')}, density of the air; frequency in Hz`, unit: '' },
      binding: {
        value: leastPlayable.map(({ from, to, binding }) => `${binding} from ${from} to ${to} Hz`).join(', '),
        unit: '',
      },
    },
    got: () =>
      leastPlayable.flatMap(({ from, to, binding }) => {
        const band = { from: si('frequency', from), to: si('frequency', to) };
        const found = leastGreatestLevelGradient(system, limits, band);
        return found.ok && found.binding === binding ? [...listed(found), found.frequency] : [];
      }),
    expected: leastPlayable.flatMap((one) => [...all(one), one.frequency]),
  });
  const heated = playable.find(({ binding }) => binding === 'heat')!;
  check(`limit.heat-limit.gradient.${family}`, {
    ...shared,
    formula: 'limit/heatLimit',
    given: {
      family: { value: family, unit: '' },
      of: { value: `slope by Re, ${heated.frequency} Hz`, unit: '' },
    },
    got: () => {
      const found = greatestLevelGradient(system, heatLimit(drivers), si('frequency', heated.frequency));
      return found.ok ? found.byElement.Re! : Number.NaN;
    },
    expected: heated.byElement.Re,
    unit: 'dB per relative change',
  });
}
