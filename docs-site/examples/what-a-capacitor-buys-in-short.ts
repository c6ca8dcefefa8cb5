import { driver } from '@airspring/core/driver';
import { capacitorBox, closedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.4 Ω', Bl: '8.6 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '46 g', Cms: '0.9 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });
const box = { drivers, netVolume: '12 L' } as const;

const shut = cutoff(closedBox(box));
const behind = cutoff(capacitorBox({ ...box, seriesCapacitance: '680 µF' }));
if (!shut.ok || !behind.ok) throw new Error('no f3');

let [small, large] = [0.012, 0.1]; // m³: halve the range until it closes
while (large / small > 1.0001) {
  const netVolume = si('volume', Math.sqrt(small * large));
  const larger = cutoff(closedBox({ drivers, netVolume }));
  if (larger.ok && larger.frequency <= behind.frequency) large = netVolume;
  else small = netVolume;
}
const hertz = (f: number) => format('frequency', si('frequency', f), 'Hz', 3);
console.log('closed box:', hertz(shut.frequency));
console.log('behind the capacitor:', hertz(behind.frequency));
console.log(
  'as a closed box with',
  format('volume', si('volume', large), 'L', 3),
);
