import { type LineVentedBoxInput, lineVentedBox } from '@airspring/core/enclosure';
import { bracketedRoot } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { compiledSystem, probeColumns, respond } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { tubeAir as air } from '../tube-air.js';
import { drivers, largest } from './lines.js';
import lines from './lines.json' with { type: 'json' };

const check = checkIn(air);

const frequencies = Float64Array.from(lines.vented.frequencies);
const columnsOf = (input: LineVentedBoxInput, at = frequencies) =>
  probeColumns(compiledSystem(lineVentedBox(input, air)), at);
const common = { formula: 'enclosure/lineVentedBox', status: 'derived', kind: 'program' } as const;
const source = { key: 'scipy', locator: 'solve_ivp along the vent, special.jve for its walls; script lines.py' };

for (const [name, { coneVelocity, 'vent flow': flow, ...box }] of Object.entries(lines.vented.cases)) {
  const input = { drivers, ...box } as unknown as LineVentedBoxInput;
  const area = (box.vent.count * Math.PI * box.vent.diameter ** 2) / 4;
  for (const [probe, factor, expected, unit] of [
    ['coneVelocity', 1, coneVelocity, 'm/s per V'],
    ['ventAirSpeed', area, flow, 'm³/s per V'],
  ] as const) {
    check(`enclosure.line-vented.${name.replaceAll(' ', '-')}.${probe}`, {
      ...common,
      source,
      given: { vents: { value: name, unit: '' } },
      got: () => {
        const { re, im } = columnsOf(input)[probe]!;
        return Array.from(re, (x, i) => [factor * x, factor * im[i]!]).flat();
      },
      expected,
      unit,
      tolerance: { absolute: 1e-12 * largest(expected), why: 'of the largest value: the integration' },
    });
  }
}

const [first] = Object.entries(lines.vented.cases).map(([, box]) => ({ ...box })) as [
  (typeof lines.vented.cases)['one vent'],
];
check('enclosure.line-vented.level', {
  ...common,
  kind: 'standard',
  source: { key: 'small1972direct', locator: 'sound pressure of a volume flow at 1 m in half space: ωρ|U|/2π' },
  given: { f: { value: [14, 35, 420], unit: 'Hz' } },
  got: ({ f }) => {
    const { netVolume, vent } = first;
    const input = { drivers, netVolume, vent } as unknown as LineVentedBoxInput;
    const system = lineVentedBox(input, air);
    const [{ re, im }, w] = [probeColumns(compiledSystem(system), Float64Array.of(f)).radiatedFlow!, 2 * Math.PI * f];
    const pressure = (w * 1.1769 * Math.hypot(re[0]!, im[0]!)) / (2 * Math.PI);
    return respond(system, [f], { driveVoltageRms: '1 V' }).levelHalfSpace[0]! - 20 * Math.log10(pressure / 20e-6);
  },
  expected: [0, 0, 0],
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'double precision: the density of the air is that of the box' },
});

check('enclosure.line-vented.tuning', {
  ...common,
  kind: 'standard',
  source: { key: 'rayleigh1896', locator: 'sec. 307: tan kL = S/(kV), solved by scipy; script lines.py' },
  given: { V: { value: 0.045, unit: 'm³' }, L: { value: 0.25, unit: 'm' } },
  // Where no air can move the cone: the flow into box and vent has no pressure to drive it, and the cone is held still.
  got: ({ V, L }) => {
    const none = si('length', 0);
    const vent = { diameter: si('length', 0.075), length: si('length', L), wallLoss: 0 };
    const box = {
      drivers,
      netVolume: si('volume', V),
      vent: { ...vent, innerCorrection: none, outerCorrection: none },
    };
    const still = (f: number) => {
      const { coneVelocity, ventAirSpeed } = columnsOf(box, Float64Array.of(f));
      const [a, b, c, d] = [coneVelocity!.re[0]!, coneVelocity!.im[0]!, ventAirSpeed!.re[0]!, ventAirSpeed!.im[0]!];
      return (a * c + b * d) / (c * c + d * d);
    };
    const root = bracketedRoot(still, 20, 60);
    return root.ok ? root.x : Number.NaN;
  },
  expected: lines.vented.tuning,
  unit: 'Hz',
  tolerance: { relative: 1e-12, why: 'roots in double precision' },
});
