import { completeDriver, group } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { cutoff, referenceLevel } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.45, Qes: 0.5, Re: '5.6 Ω' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const two = group(sheet.driver, { parallel: 2 });

const one = closedBox({ drivers: sheet.driver, netVolume: '35 L' });
const same = closedBox({ drivers: two, netVolume: '35 L' });
const twice = closedBox({ drivers: two, netVolume: '70 L' });
for (const box of [one, same, twice]) {
  const f3 = cutoff(box);
  if (f3.ok)
    console.log(f3.frequency, 'Hz,', referenceLevel(box), 'dB for 1 V');
}
