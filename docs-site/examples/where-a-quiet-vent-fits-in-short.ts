import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { ventMap } from '@airspring/core/limit';
import { format } from '@airspring/core/quantity';
import { noiseOnsets } from '@airspring/core/vent';

const sheet = completeDriver({
  ...{ fs: '24 Hz', Qts: 0.36, Qes: 0.4, Vas: '70 L' },
  ...{ Sd: '330 cm²', Re: '5.6 Ω', Le: '0.9 mH' },
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;
const QL = 7;
const ventArea = '1 m²'; // any will do: the map finds its own
const sourceResistance = '0.1 Ω';
const size = {
  outerDiameter: '262 mm',
  cutoutDiameter: '232 mm',
  depth: '118 mm',
} as const;

const [cell] = ventMap({
  box: (netVolume, fb) =>
    ventedBox({ drivers, netVolume, fb, QL, ventArea, sourceResistance }),
  ...{ netVolumes: ['35.9 L'], tunings: ['24.1 Hz'] },
  ...{ level: '88 dB', from: '30 Hz', to: '120 Hz' },
  ...{ onsets: noiseOnsets, displaced: '2.1 L', wall: '3 mm' },
  space: {
    outer: { width: '480 mm', height: '340 mm', depth: '420 mm' },
    thickness: '18 mm',
    driver: size,
  },
});
if (!cell?.length) throw new Error('No vent tunes this box.');
console.log(format('volume', cell.netVolume, 'L'), 'of air');
console.log('tuned to', format('frequency', cell.fb, 'Hz'));
console.log(format('length', cell.diameter, 'mm'), 'wide');
console.log(format('length', cell.length, 'mm'), 'long');
console.log('fits:', cell.verdict);
