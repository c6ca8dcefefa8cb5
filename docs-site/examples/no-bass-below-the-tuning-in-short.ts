import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { format, read } from '@airspring/core/quantity';
import {
  compiledSystem,
  levelColumn,
  probeColumns,
  probeNamed,
} from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω', Le: '0.9 mH' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;

const ventArea = read('area', '50 cm²');
const sizes = { netVolume: '50 L', fb: '30 Hz', ventArea } as const;
const box = ventedBox({ drivers, ...sizes, QL: 7 });
const tone = Float64Array.of(15);
const columns = probeColumns(compiledSystem(box), tone);
const motion = probeNamed(columns, 'coneVelocity');
const speed = probeNamed(columns, 'ventAirSpeed');
const flow = (of: typeof motion, area: number) => ({
  re: of.re.map((value) => value * area),
  im: of.im.map((value) => value * area),
});
const level = (of: typeof motion) => {
  const out = new Float64Array(1);
  levelColumn(tone, of, box.air.density, 15, out); // 15 V
  return out[0]!;
};
const phase = ({ re, im }: typeof motion) => Math.atan2(im[0]!, re[0]!);
const turn = Math.abs(phase(speed) - phase(motion)) * (180 / Math.PI);
const alone = level(flow(motion, drivers.Sd));
const both = level(probeNamed(columns, 'radiatedFlow'));
const dB = (value: number, digits = 3) =>
  format('level', value, 'dB', digits);
console.log(`${Math.round(Math.min(turn, 360 - turn))}° out of step`);
console.log('the cone alone makes', dB(alone));
console.log('the vent alone', dB(level(flow(speed, ventArea))));
console.log('both', dB(both), 'which is', dB(alone - both, 2), 'softer');
