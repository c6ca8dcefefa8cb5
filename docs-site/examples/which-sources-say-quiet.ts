import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { ventOnsets } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { noiseOnsets } from '@airspring/core/vent';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '12 T·m', Rms: '2.9 kg/s' } as const;
const cone = { Sd: '340 cm²', Mms: '56 g', Cms: '0.58 mm/N' } as const;
const box = ventedBox({
  drivers: driver({ ...motor, ...cone }),
  ...{ netVolume: '60 L', fb: '35 Hz', QL: 7 },
  ventArea: si('area', (Math.PI / 4) * 0.05 ** 2),
});
const tones = logarithmicGrid(35, 120, 25);
for (const onset of noiseOnsets) {
  const { quiet } = ventOnsets(box, { diameter: '50 mm' }, tones, {
    onsets: [onset],
  });
  const level = Math.min(...quiet.levelHalfSpace);
  console.log(level.toFixed(1), 'dB', onset.name, onset.sources.join(', '));
}
