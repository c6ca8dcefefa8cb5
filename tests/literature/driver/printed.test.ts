/** Values that were read in print: coils, losses and levels of textbooks. */
import { coilImpedance, compileCoilImpedance, driver, driverParameters, levelHalfSpace } from '@airspring/core/driver';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { printedChecks } from '../printed.js';
import print from './printed.json' with { type: 'json' };

const read = printedChecks('driver', print);
const compiled = ({ Re, Le, f }: { Re: number; Le: number; f: number }) => {
  const out = { re: new Float64Array(1), im: new Float64Array(1) };
  compileCoilImpedance({ Re: si('resistance', Re), Le: si('inductance', Le) })(frequencyGrid([f]), out);
  return Math.hypot(out.re[0]!, out.im[0]!);
};
read('compileCoilImpedance', 'coil 2', compiled);
const moving = { Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Bl: '14.3 T·m' } as const;
read('coilImpedance', 'coil', ({ Re, Le, f }) => {
  const { re, im } = coilImpedance({ ...moving, Re: si('resistance', Re), Le: si('inductance', Le) }, [f]);
  return Math.hypot(re[0]!, im[0]!);
});

/** Mass 0.1 kg, resonance 100 rad/s and 1 Ω, with the damper and the motor that give the two Q. */
read('driverParameters', 'total Q', ({ Qes, Qms }) => {
  const of = driver({
    Sd: '330 cm²',
    Re: '1 ohm',
    Mms: si('mass', 0.1),
    Cms: si('compliance', 1e-3),
    Rms: si('mechanicalResistance', 10 / Qms),
    Bl: si('forceFactor', Math.sqrt(10 / Qes)),
  });
  return driverParameters(of).Qts;
});

const levelOf = (power: number) => levelHalfSpace(si('power', power));
read(
  'levelHalfSpace',
  'level',
  ({ power, distance }) => levelOf(power) - 10 * Math.log10(2) - 20 * Math.log10(distance),
);
/** p²/(ρc), in air as by default. */
read('levelHalfSpace', 'intensity', ({ power }) => (20e-6 * 10 ** (levelOf(power) / 20)) ** 2 / 413 / 2);
