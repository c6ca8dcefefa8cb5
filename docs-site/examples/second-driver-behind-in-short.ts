import { driver, group } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { cutoff, features } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '12 T·m', Rms: '4 kg/s' } as const;
const cone = { Sd: '330 cm²', Mms: '85 g', Cms: '0.41 mm/N' } as const;
const one = driver({ ...motor, ...cone });
const pair = group(one, { parallel: 2, isobaric: true });

const volumes = [0.036, 0.018, 0.018] as const;
for (const [i, drivers] of [one, pair, one].entries()) {
  const netVolume = si('volume', volumes[i]!);
  const box = closedBox({ drivers, netVolume });
  const f3 = cutoff(box);
  if (i > 0) console.log(`in ${format('volume', netVolume, 'L')}`);
  if (f3.ok) console.log(format('frequency', f3.frequency, 'Hz'));
  const peaks = features(box).peaks.map(({ value }) => value);
  console.log(`rises by ${Math.max(0, ...peaks).toFixed(1)} dB`);
}
