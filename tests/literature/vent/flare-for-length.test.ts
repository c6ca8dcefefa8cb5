import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { type FlareForLength, flareForLength } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import fixtures from './flare-for-length.json' with { type: 'json' };

const air = {
  ...standardAir,
  density: si('density', 1.2),
  speedOfSound: si('speed', 343.2),
  viscosity: si('viscosity', 1.8e-5),
};
const check = checkIn(air);
const given = {
  L: { value: fixtures.length, unit: 'm' },
  V: { value: fixtures.volume, unit: 'm³' },
  f: { value: fixtures.fb, unit: 'Hz' },
} as const;
const flaresOf = (L: number, V: number, f: number): FlareForLength =>
  flareForLength({ length: si('length', L), netVolume: si('volume', V), fb: si('frequency', f) }, air);

/** A minimum is as flat as the square root of its precision. */
for (const [id, of, expected, unit, relative] of [
  ['straight.diameter', (one: FlareForLength) => one.straight.diameter, fixtures.straight, 'm', 1e-13],
  [
    'straight.flow',
    ({ straight }: FlareForLength) => straight.quietFlowPeak.high,
    fixtures.straightFlow,
    'm³/s',
    1e-12,
  ],
  ['least-loss.flare', (one: FlareForLength) => one.leastLoss.flare, fixtures.leastFlare, 'm', 1e-6],
  ['least-loss.diameter', (one: FlareForLength) => one.leastLoss.diameter, fixtures.leastDiameter, 'm', 1e-8],
  ['least-loss.ratio', (one: FlareForLength) => one.leastLoss.lossRatio, fixtures.leastLoss, '1', 1e-9],
  ['quietest.flare', (one: FlareForLength) => one.quietest.flare, fixtures.quietFlare, 'm', 1e-6],
  ['quietest.diameter', (one: FlareForLength) => one.quietest.diameter, fixtures.quietDiameter, 'm', 1e-8],
  ['quietest.flow', (one: FlareForLength) => one.quietest.quietFlowPeak.high, fixtures.quietFlow, 'm³/s', 1e-8],
  ['quietest.low', (one: FlareForLength) => one.quietest.quietFlowPeak.low, fixtures.quietLow, 'm³/s', 1e-7],
] as const)
  check(`vent.flare-for-length.${id}`, {
    formula: 'vent/flareForLength',
    source: { key: 'scipy', locator: 'brentq and minimize_scalar; script flare-for-length.py' },
    status: 'derived',
    kind: 'program',
    given,
    got: ({ L, V, f }) => of(flaresOf(L, V, f)),
    expected,
    unit,
    tolerance: { relative, why: 'an optimum by two programs' },
  });
