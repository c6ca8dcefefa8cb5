import { driver } from '@airspring/core/driver';
import { closedBox, fourthOrderBandPass } from '@airspring/core/enclosure';
import { format } from '@airspring/core/quantity';
import { passband, respond } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.4 Ω', Bl: '11.3 T·m', Rms: '2.7 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '46 g', Cms: '0.54 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

const box = fourthOrderBandPass({
  drivers,
  rearVolume: '6.5 L',
  frontVolume: '14 L',
  frontTuning: '76 Hz',
  frontQL: 7,
});
const closed = closedBox({ drivers, netVolume: '20.5 L' });

const band = passband(box, { from: '15 Hz', to: '500 Hz' });
if (band.ok && band.lower && band.upper) {
  const [low, high] = [band.lower, band.upper].map((f) =>
    format('frequency', f, 'Hz'),
  );
  console.log(`from ${low} to ${high}`);
}
const [own] = respond(box, [76]).levelHalfSpace;
const [other] = respond(closed, [76]).levelHalfSpace;
console.log(
  `${((own ?? 0) - (other ?? 0)).toFixed(1)} dB louder than closed`,
);
