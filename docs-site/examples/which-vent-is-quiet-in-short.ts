import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { ventOnsets } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';

const sheet = completeDriver({
  ...{ fs: '28 Hz', Qts: 0.35, Qes: 0.39, Vas: '95 L' },
  ...{ Sd: '340 cm²', Re: '5.6 Ω' },
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);

const box = ventedBox({
  drivers: sheet.driver,
  ...{ netVolume: '60 L', fb: '35 Hz', QL: 7 },
  ventArea: si('area', (Math.PI / 4) * 0.05 ** 2),
});
const tones = logarithmicGrid(35, 120, 25);
const { quiet, noisy } = ventOnsets(box, { diameter: '50 mm' }, tones);
for (const { levelHalfSpace, onset } of [quiet, noisy]) {
  const level = Math.min(...levelHalfSpace);
  console.log(level.toFixed(1), 'dB:', onset[levelHalfSpace.indexOf(level)]);
}
