import { driver } from '@airspring/core/driver';
import {
  aperiodicBox,
  closedBox,
  type System,
} from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { features } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '8 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '32 g', Cms: '0.9 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

// Felt, 30 mm thick, in a hole of 100 mm.
const area = (Math.PI / 4) * 0.1 ** 2;
const ventResistance = si('acousticResistance', (10000 * 0.03) / area);

const box = { drivers, netVolume: '12 L' } as const;
const boxes: System[] = [
  closedBox(box),
  aperiodicBox({ ...box, ventResistance }),
];
for (const system of boxes) {
  const { impedanceMaxima, peaks } = features(system, { to: '500 Hz' });
  const { frequency, value } = impedanceMaxima[0]!;
  console.log(format('resistance', si('resistance', value), 'Ω', 3));
  console.log(format('frequency', frequency, 'Hz', 3));
  const rise = Math.max(0, ...peaks.map(({ value }) => value));
  console.log(`rises by ${rise.toFixed(1)} dB`);
}
