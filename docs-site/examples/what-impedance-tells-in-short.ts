import { completeDriver, driverParameters } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { features } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω', Le: '0.9 mH' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;
const { fs, Vas } = driverParameters(drivers);

const open = ventedBox({ drivers, netVolume: '50 L', fb: '30 Hz', QL: 7 });
const QL = ((7 * fs) / 30) * Math.sqrt(1 + Vas / 0.05); // the same leak
const shut = closedBox({ drivers, netVolume: '50 L', QL });
const [low = 0, high = 0, only = 0] = [open, shut].flatMap((box) =>
  features(box).impedanceMaxima.map(({ frequency }) => frequency),
);
const fb = Math.sqrt(low ** 2 + high ** 2 - only ** 2);
const air =
  (Vas * (high * low) ** 2) / ((high ** 2 - fb ** 2) * (fb ** 2 - low ** 2));
const hertz = (frequency: number) => format('frequency', frequency, 'Hz');
console.log('peaks at', hertz(low), 'and', hertz(high));
console.log('with the vent shut at', hertz(only));
console.log(
  'tuned to',
  hertz(fb),
  'with',
  format('volume', si('volume', air), 'L'),
);
