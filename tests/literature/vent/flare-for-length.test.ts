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
const flaresOf = (L: number, V: number, f: number): FlareForLength =>
  flareForLength({ length: si('length', L), netVolume: si('volume', V), fb: si('frequency', f) }, air);

const leaves: Readonly<Record<string, (one: FlaredTube) => number>> = {
  flare: (one) => one.flare,
  diameter: (one) => one.diameter,
  mouth: (one) => one.mouthDiameter,
  effective: (one) => one.effectiveLength,
  loss: (one) => one.lossRatio,
  low: (one) => one.quietFlowPeak.low,
  high: (one) => one.quietFlowPeak.high,
};

// One check a tube: each of them finds all three.
for (const tube of ['straight', 'leastLoss', 'quietest'] as const) {
  const rows = fixtures[tube] as Readonly<Record<string, readonly number[]>>;
  const names = Object.keys(leaves);
  const tubes = fixtures.length.map((length, i) => [length, fixtures.volume[i]!, fixtures.fb[i]!] as const);
  check(`vent.flare-for-length.${tube}`, {
    formula: 'vent/flareForLength',
    source: { key: 'scipy', locator: 'brentq and minimize_scalar; script flare-for-length.py' },
    status: 'derived',
    kind: 'program',
    given: { of: { value: names.join(', '), unit: '' } },
    got: () =>
      tubes.flatMap(([L, V, f]) => {
        const found = flaresOf(L, V, f)[tube];
        return Object.values(leaves).map((of) => of(found));
      }),
    expected: tubes.flatMap((_, i) => names.map((name) => rows[name]![i]!)),
    unit: 'm, 1, m³/s',
    tolerance:
      tube === 'straight'
        ? { absolute: 1e-13, why: 'roots by two programs' }
        : { relative: 1e-6, why: 'an optimum by two programs' },
  });
}
