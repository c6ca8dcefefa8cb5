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
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const drivers = sheet.driver;
const tones = [10, 14, 20, 25, 30, 35, 40, 50, 70, 100, 140, 200];
const levels = [
  ventedBox({ drivers, netVolume: '50 L', fb: '30 Hz', QL: 7 }),
  closedBox({ drivers, netVolume: '50 L', QL: 7 }),
].map((box) => respond(box, tones, { driveVoltageRms: '2.83 V' }));
tones.forEach((tone, i) => {
  const row = levels.map(({ levelHalfSpace: L }) => L[i]?.toFixed(1));
  console.log([tone, ...row].join('\t'));
});
