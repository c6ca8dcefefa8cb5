import { driver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { features } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '12.7 T·m', Rms: '3 kg/s' } as const;
const cone = { Sd: '330 cm²', Mms: '95 g', Cms: '0.46 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

let [small, large] = [0.003, 0.3]; // m³: halve the range until it closes
while (large / small > 1.0001) {
  const netVolume = si('volume', Math.sqrt(small * large));
  const { f3, peaks } = features(closedBox({ drivers, netVolume }));
  const deep = f3 !== undefined && f3 <= 45;
  if (deep && (peaks[0]?.value ?? 0) <= 1) large = netVolume;
  else small = netVolume;
}
console.log(format('volume', si('volume', large), 'L'), 'of air will do');
