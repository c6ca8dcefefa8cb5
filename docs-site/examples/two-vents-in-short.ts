import { driver } from '@airspring/core/driver';
import {
  fourthOrderBandPass,
  parallelBandPass,
  type System,
  seriesBandPass,
} from '@airspring/core/enclosure';
import { format } from '@airspring/core/quantity';
import { passband } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.4 Ω', Bl: '11.3 T·m', Rms: '2.7 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '46 g', Cms: '0.54 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

const front = {
  frontVolume: '12 L',
  frontTuning: '75 Hz',
  frontQL: 7,
} as const;
const one = { drivers, ...front, rearVolume: '30 L' } as const;
const two = { ...one, rearTuning: '32 Hz', rearQL: 7 } as const;

const boxes: System[] = [
  fourthOrderBandPass(one),
  parallelBandPass(two),
  seriesBandPass(two),
];
for (const box of boxes) {
  const band = passband(box, { from: '15 Hz', to: '400 Hz' });
  if (!band.ok || !band.lower || !band.upper) continue;
  const [low, high] = [band.lower, band.upper].map((f) =>
    format('frequency', f, 'Hz'),
  );
  console.log(`from ${low} to ${high}`);
}
