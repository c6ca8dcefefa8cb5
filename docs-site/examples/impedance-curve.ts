import { completeDriver } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { respond } from '@airspring/core/response';

const sheet = completeDriver({
  name: 'invented',
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
  Le: '0.9 mH',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const drivers = sheet.driver;
const tones = [10, 12, 14, 16, 18, 20, 25, 30, 35, 40, 45, 50, 60, 80, 120];
const curves = [
  ventedBox({ drivers, netVolume: '50 L', fb: '30 Hz', QL: 7 }),
  closedBox({ drivers, netVolume: '50 L' }),
].map((box) => respond(box, tones).impedance);
tones.forEach((tone, i) => {
  console.log([tone, ...curves.map((Z) => Z[i]?.toFixed(1))].join('\t'));
});
