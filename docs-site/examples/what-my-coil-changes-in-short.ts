import { driver, inductor, lossyInductor } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '12 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '330 cm²', Mms: '60 g', Cms: '0.6 mm/N' } as const;
const levelAt150 = (coil?: ReturnType<typeof inductor>) => {
  const drivers = driver({ ...motor, ...cone, ...(coil && { coil }) });
  const box = closedBox({ drivers, netVolume: '40 L' });
  return respond(box, [150]).levelHalfSpace[0]!;
};

// Both have the impedance of 1.5 mH at 1 kHz.
const stated = 2 * Math.PI * 1000;
const K = si('ratio', (stated * 1.5e-3) / stated ** 0.7);
for (const coil of [
  inductor({ Le: '1.5 mH' }),
  lossyInductor({ K, exponent: 0.7 }),
]) {
  const by = levelAt150() - levelAt150(coil);
  console.log(
    `${Math.abs(by).toFixed(1)} dB ${by > 0 ? 'softer' : 'louder'}`,
  );
}
