import { completeDriver, group } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { format } from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';

// Invented.
const cone = { fs: '27 Hz', Vas: '62 L', Sd: '330 cm²' } as const;
const motor = { Qts: 0.45, Qes: 0.5, Re: '5.6 Ω', Le: '0.9 mH' } as const;
const sheet = completeDriver({ ...cone, ...motor });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const one = sheet.driver;
const two = group(one, { parallel: 2 });

const reach = (
  drivers: typeof one | typeof two,
  netVolume: '35 L' | '70 L',
) => {
  const f3 = cutoff(closedBox({ drivers, netVolume }));
  return f3.ok ? format('frequency', f3.frequency, 'Hz') : 'nowhere';
};
console.log('one reaches', reach(one, '35 L'));
console.log('two in the same air', reach(two, '35 L'));
console.log('two in 70 L', reach(two, '70 L'));
