import { completeDriver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { features } from '@airspring/core/response';

// Invented.
const cone = { fs: '24 Hz', Vas: '90 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.44, Qes: 0.5, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;

for (const litres of [80, 40, 20, 10]) {
  const netVolume = si('volume', litres / 1000);
  const { f3, peaks } = features(closedBox({ drivers, netVolume }));
  console.log(
    litres,
    'L reaches',
    f3,
    'Hz, rises',
    peaks[0]?.value ?? 0,
    'dB',
  );
}
