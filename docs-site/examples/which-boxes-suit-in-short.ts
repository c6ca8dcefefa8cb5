import {
  boxesThatSuit,
  candidate,
  chebyshev,
  quasiThirdOrder,
} from '@airspring/core/alignment';
import { completeDriver } from '@airspring/core/driver';
import { closedFamily, ventedFamily } from '@airspring/core/enclosure';
import { format, type Volume } from '@airspring/core/quantity';

// Invented.
const motor = { Qts: 0.36, Qms: 5, Re: '5.6 Ω' } as const;
const cone = { fs: '28 Hz', Vas: '75 L', Sd: '330 cm²' } as const;
const sheet = completeDriver({ ...motor, ...cone });
if (!sheet.ok) throw new Error(sheet.because[0]?.text);

const rows = boxesThatSuit(sheet.driver, [
  candidate(chebyshev(2, { ripple: 1 }), closedFamily),
  candidate(quasiThirdOrder, ventedFamily, { QL: 7 }),
  candidate(chebyshev(4), ventedFamily, { QL: 7 }),
]);
for (const { alignment, result } of rows) {
  if (!result.ok) {
    console.log(alignment.name, result.because[0]?.text);
    continue;
  }
  const spec = result.system.spec as unknown as { netVolume: Volume };
  const air = format('volume', spec.netVolume, 'L');
  const { f3 } = result;
  const reach = f3.ok ? format('frequency', f3.frequency, 'Hz') : 'nowhere';
  console.log(alignment.name, air, reach);
}
