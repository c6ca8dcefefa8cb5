import { completeDriver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { format } from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.36, Qes: 0.4, Re: '5.6 Ω', Le: '0.9 mH' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver: drivers } = sheet;

for (const fb of ['25.6 Hz', '40 Hz'] as const) {
  const box = ventedBox({ drivers, netVolume: '45 L', fb, QL: 7 });
  const reach = cutoff(box, { drop: 6 });
  if (!reach.ok) throw new Error('no such frequency in the band');
  console.log(fb, 'reaches', format('frequency', reach.frequency, 'Hz'));
}
