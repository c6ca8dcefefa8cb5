import { closedBox, infiniteBaffle, type System } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { compiledSystem, cutoff, probeColumns, referenceLevel, respond } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import figures from './closed-figures.json' with { type: 'json' };
import { paperAir, physical, split } from './textbook.js';

const check = checkIn(paperAir);

const column = (name: string) => figures.rows.map((row) => row[figures.columns.indexOf(name)] as number);
const fs = 30;
const sheet = { fs, Vas: 0.06, Sd: 0.033, Re: 5.6 };
const walled = (QT: number) =>
  infiniteBaffle({ drivers: physical({ ...sheet, ...split(QT, 40) }, paperAir) }, paperAir);
const source = { key: 'small1972direct', locator: 'infinite baffle: second-order high-pass of fs and Qts' };

for (const [name, drop] of [
  ['f3', undefined],
  ['f10', 10],
] as const) {
  check(`enclosure.infinite-baffle.${name}`, {
    formula: 'enclosure/infiniteBaffle',
    source,
    status: 'derived',
    kind: 'table',
    given: { QT: { value: column('Qtc'), unit: '1' } },
    got: ({ QT }) => {
      const found = cutoff(walled(QT) as System, drop === undefined ? {} : { drop });
      return found.ok ? found.frequency / fs : Number.NaN;
    },
    expected: column(name),
    unit: `${name}/fs`,
    tolerance: { relative: 5e-9, why: 'values to ten digits; roots magnify their last one' },
  });
}
check('enclosure.infinite-baffle.half-power', {
  formula: 'enclosure/infiniteBaffle',
  source: { ...source, locator: '(f3/fs)² = b + √(b² + 1), b = 1/(2 QT²) − 1' },
  status: 'derived',
  kind: 'standard',
  given: { QT: { value: [0.3, 0.5, Math.SQRT1_2, 1, 2], unit: '1' } },
  got: ({ QT }) => {
    const found = cutoff(walled(QT) as System);
    return found.ok ? found.frequency / fs : Number.NaN;
  },
  expected: [0.3, 0.5, Math.SQRT1_2, 1, 2].map((QT) => {
    const b = 1 / (2 * QT ** 2) - 1;
    return Math.sqrt(b + Math.hypot(b, 1));
  }),
  unit: 'f3/fs',
  tolerance: { relative: 2e-12, why: 'roots in double precision' },
});
check('enclosure.infinite-baffle.response', {
  formula: 'enclosure/infiniteBaffle',
  source,
  status: 'derived',
  kind: 'standard',
  given: { f: { value: [0.2, 0.7, 1, 1.5, 4], unit: 'f/fs' }, QT: { value: 0.45, unit: '1' } },
  got: ({ f, QT }) => {
    const system = walled(QT);
    return respond(system, [f * fs]).levelHalfSpace[0]! - referenceLevel(system);
  },
  expected: [0.2, 0.7, 1, 1.5, 4].map((u) => 20 * Math.log10(u ** 2 / Math.hypot(1 - u ** 2, u / 0.45))),
  unit: 'dB',
  tolerance: { absolute: 5e-14, why: 'double precision of levels up to 30' },
});

/** Velocity of the cone per volt, of the circuit worked out by hand: F = Bl i, one mass, one spring, one damper. */
const [Bl, Re, Rg, Mms, Cms, Rms, Sd] = [14.3, 5.6, 0.4, 0.086, 4e-4, 3.6, 0.033];
const drivers = {
  Bl: si('forceFactor', Bl),
  Re: si('resistance', Re),
  Mms: si('mass', Mms),
  Cms: si('compliance', Cms),
  Rms: si('mechanicalResistance', Rms),
  Sd: si('coneArea', Sd),
};
const velocity = (f: number) => {
  const w = 2 * Math.PI * f;
  const [a, b] = [Rms + Bl ** 2 / (Re + Rg), w * Mms - 1 / (w * Cms)];
  const force = Bl / (Re + Rg) / (a * a + b * b);
  return [force * a, -force * b];
};
const frequencies = [8, 27.1359, 60, 400];
for (const [probe, factor, unit] of [
  ['coneVelocity', 1, 'm/s per V'],
  ['radiatedFlow', Sd, 'm³/s per V'],
] as const) {
  check(`enclosure.infinite-baffle.${probe}`, {
    formula: 'enclosure/infiniteBaffle',
    source: { key: 'small1972direct', locator: 'electro-mechano-acoustical circuit without the air of a box' },
    status: 'derived',
    kind: 'standard',
    given: { probe: { value: probe, unit: '' }, Rg: { value: Rg, unit: 'Ω' } },
    got: () => {
      const system = infiniteBaffle({ drivers, sourceResistance: si('resistance', Rg) }, paperAir);
      const { re, im } = probeColumns(compiledSystem(system), Float64Array.from(frequencies))[probe]!;
      return frequencies.flatMap((_, i) => [re[i]!, im[i]!]);
    },
    expected: frequencies.flatMap((f) => velocity(f).map((v) => factor * v)),
    unit,
    tolerance: { absolute: 5e-16 * factor, why: 'double precision of values up to 0.1' },
  });
}
check('enclosure.infinite-baffle.large-box', {
  formula: 'enclosure/infiniteBaffle',
  source: { key: 'small1972closed1', locator: 'a box much larger than Vas: fc → fs, Qtc → Qts' },
  status: 'derived',
  kind: 'standard',
  given: { f: { value: [10, 30, 100], unit: 'Hz' } },
  got: ({ f }) => respond(walled(0.4), [f]).levelHalfSpace[0]!,
  expected: [10, 30, 100].map((f) => {
    const huge = { drivers: physical({ ...sheet, ...split(0.4, 40) }, paperAir), netVolume: si('volume', 1000) };
    return respond(closedBox(huge, paperAir), [f]).levelHalfSpace[0]!;
  }),
  unit: 'dB',
  tolerance: { absolute: 1e-3, why: '1000 m³ against 60 L: alpha is 6·10⁻⁵, which moves fs by 3·10⁻⁵' },
});
