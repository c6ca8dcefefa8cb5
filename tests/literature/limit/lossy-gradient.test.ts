/** How the greatest level changes with each element where the vent loses by its speed, against differences at 50 digits. */
import { type Air, standardAir } from '@airspring/core/air';
import type { Driver } from '@airspring/core/driver';
import { type FlowLoss, quadraticLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  type GreatestLevelGradient,
  greatestLevelGradient,
  heatLimit,
  leastGreatestLevelGradient,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import fixture from './lossy-gradient.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
const drivers = { ...fixture.driver, Xmax: 0.004, Pe: 60 } as unknown as Driver;
const system = ventedBox({ drivers, netVolume: '60 L', fb: '28 Hz', QL: 7, QP: 60, ventArea: '100 cm²' }, air);
const losses: Readonly<Record<string, FlowLoss>> = {
  quadratic: quadraticLoss({ outward: 1.5 }),
  powers: {
    name: 'powers',
    sources: ['own'],
    resistance: (speed, frequency, { density }) => 0.9 * density * speed ** 0.8 * frequency ** 0.3,
  },
};
const all = [...travelLimit(drivers), ...heatLimit(drivers), voltageLimit('25 V')];
const wishes: Readonly<Record<string, typeof all>> = { all, air: [...all, airSpeedLimit('2.5 m/s')] };

for (const { loss, limits, playable, leastPlayable } of fixture.cases) {
  const names = Object.keys(playable[0]!.byElement);
  const options = { loss: losses[loss]! };
  const listed = (found: GreatestLevelGradient) =>
    found.ok ? [found.value, ...names.map((name) => found.byElement[name] ?? Number.NaN)] : [];
  const wanted = ({ value, byElement }: { readonly value: number; readonly byElement: object }) => [
    value,
    ...(Object.values(byElement) as number[]),
  ];
  const shared = {
    source: { key: 'mpmath', locator: 'circuit solved by hand, differences at 50 digits; script lossy-gradient.py' },
    status: 'derived',
    kind: 'program',
    unit: 'dB, dB per relative change',
    tolerance: { absolute: 1e-12, why: 'slopes of a loss by differences of fourth order; roots within 1e-13' },
  } as const;
  const given = (of: string, binding: readonly string[]) => ({
    loss: { value: loss, unit: '' },
    of: { value: `value; by ${names.join(', ')}; ${of}`, unit: '' },
    binding: { value: binding.join(', '), unit: '' },
  });
  check(`limit.greatest-level-gradient.${loss}.${limits}`, {
    ...shared,
    formula: 'limit/greatestLevelGradient',
    given: given(
      'over frequency',
      playable.map(({ frequency, binding }) => `${binding} at ${frequency} Hz`),
    ),
    got: () =>
      playable.flatMap(({ frequency, binding }) => {
        const found = greatestLevelGradient(system, wishes[limits]!, si('frequency', frequency), options);
        return found.ok && found.binding === binding ? [...listed(found), found.byFrequency] : [];
      }),
    expected: playable.flatMap((one) => [...wanted(one), one.byFrequency]),
  });
  check(`limit.least-greatest-level-gradient.${loss}.${limits}`, {
    ...shared,
    formula: 'limit/leastGreatestLevelGradient',
    given: given(
      'frequency in Hz',
      leastPlayable.map(({ from, to, binding }) => `${binding} from ${from} to ${to} Hz`),
    ),
    got: () =>
      leastPlayable.flatMap(({ from, to, binding }) => {
        const band = { from: si('frequency', from), to: si('frequency', to) };
        const found = leastGreatestLevelGradient(system, wishes[limits]!, band, options);
        return found.ok && found.binding === binding ? [...listed(found), found.frequency] : [];
      }),
    expected: leastPlayable.flatMap((one) => [...wanted(one), one.frequency]),
  });
}
