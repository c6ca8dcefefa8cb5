import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { type FlaredTube, type FlareForLength, flareForLength } from '@airspring/core/vent';
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

const leaves: Readonly<Record<string, readonly [of: (one: FlaredTube) => number, unit: string]>> = {
  flare: [(one) => one.flare, 'm'],
  diameter: [(one) => one.diameter, 'm'],
  mouth: [(one) => one.mouthDiameter, 'm'],
  effective: [(one) => one.effectiveLength, 'm'],
  loss: [(one) => one.lossRatio, '1'],
  low: [(one) => one.quietFlowPeak.low, 'm³/s'],
  high: [(one) => one.quietFlowPeak.high, 'm³/s'],
};

for (const tube of ['straight', 'leastLoss', 'quietest'] as const)
  for (const [name, [of, unit]] of Object.entries(leaves)) {
    const expected = (fixtures[tube] as Readonly<Record<string, readonly number[]>>)[name]!;
    const tolerance =
      tube === 'straight'
        ? ({ absolute: 1e-13, why: 'roots by two programs' } as const)
        : ({ relative: name === 'flare' ? 1e-6 : 1e-7, why: 'an optimum by two programs' } as const);
    check(`vent.flare-for-length.${tube}.${name}`, {
      formula: 'vent/flareForLength',
      source: { key: 'scipy', locator: 'brentq and minimize_scalar; script flare-for-length.py' },
      status: 'derived',
      kind: 'program',
      given,
      got: ({ L, V, f }) => of(flaresOf(L, V, f)[tube]),
      expected,
      unit,
      tolerance,
    });
  }
