import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { parallelBandPass } from '@airspring/core/enclosure';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { type AtLevel, compileAtLevel, respondAtLevel } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import fixtures from './two-vents-at-level.json' with { type: 'json' };

const air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
const drivers = driver({
  Sd: '330 cm²',
  Mms: '85 g',
  Cms: '0.62 mm/N',
  Rms: '2.4 kg/s',
  Re: '5.6 Ω',
  Bl: '13.5 T·m',
});
const rear = { rearVolume: '40 L', rearTuning: '30 Hz', rearVentArea: '40 cm²', rearQL: 10 } as const;
const front = { frontVolume: '15 L', frontTuning: '65 Hz', frontVentArea: '60 cm²', frontQL: 10 } as const;
const box = parallelBandPass({ drivers, ...rear, ...front }, air);
const lossOf = (K: number) => quadraticLoss({ outward: si('ratio', K) });

type Case = Readonly<Record<'f' | 'volts' | 'rearK' | 'frontK', number>>;
const easy = ({ f, volts, rearK, frontK }: Case): AtLevel =>
  respondAtLevel(box, [f], {
    driveVoltageRms: si('voltageRms', volts),
    loss: { rear: lossOf(rearK), front: lossOf(frontK) },
  });
const kernel = ({ f, volts, rearK, frontK }: Case): AtLevel =>
  compileAtLevel(box, frequencyGrid([f])).at({ front: lossOf(frontK), rear: lossOf(rearK) }, volts);

const shared = {
  source: { key: 'scipy', locator: 'both speeds balanced in the circuit by fsolve; script two-vents-at-level.py' },
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: fixtures.f, unit: 'Hz' },
    volts: { value: fixtures.volts, unit: 'V' },
    rearK: { value: fixtures.rearK, unit: '1' },
    frontK: { value: fixtures.frontK, unit: '1' },
  },
} as const;

for (const [name, unit, expected, got] of [
  ['airSpeedPeak.rear', 'm/s', fixtures.rearSpeed, (at) => at.vents!.rear!.airSpeedPeak[0]!],
  ['airSpeedPeak.front', 'm/s', fixtures.frontSpeed, (at) => at.vents!.front!.airSpeedPeak[0]!],
  ['resistance.rear', 'Pa·s/m³', fixtures.rearResistance, (at) => at.vents!.rear!.resistance[0]!],
  ['resistance.front', 'Pa·s/m³', fixtures.frontResistance, (at) => at.vents!.front!.resistance[0]!],
  ['currentRms', 'A', fixtures.current, (at) => at.currentRms[0]!],
  ['displacementPeak', 'm', fixtures.travel, (at) => at.displacementPeak[0]!],
  ['compression', 'dB', fixtures.compression, (at) => at.compression[0]!],
] as readonly (readonly [string, string, number[], (at: AtLevel) => number])[]) {
  const why = 'roots by two programs; ours ends where the logarithms of the speeds are within 1e-13';
  const tolerance = unit === 'dB' ? { absolute: 1e-11, why } : { relative: 1e-12, why };
  for (const [formula, ask] of [
    ['respondAtLevel', easy],
    ['compileAtLevel', kernel],
  ] as const) {
    check(`response.two-vents-at-level.${formula}.${name}`, {
      ...shared,
      formula: `response/${formula}`,
      got: (one) => got(ask(one)),
      expected,
      unit,
      tolerance,
    });
  }
}
