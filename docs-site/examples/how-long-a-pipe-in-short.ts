import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { flanged } from '@airspring/core/duct';
import { lineBox } from '@airspring/core/enclosure';
import { format, logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '9 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '36 g', Cms: '0.8 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

const area = si('area', 0.025);
const radius = Math.sqrt(area / Math.PI);
const endCorrection = si('length', flanged({ radius }, 0));
const quarter = standardAir.speedOfSound / (4 * 30);
const length = si('length', quarter - endCorrection);
console.log(`${format('length', length, 'm', 3)} long`);

const grid = logarithmicGrid(15, 400, 101);
for (const fill of [{}, { flowResistivity: '600 Pa·s/m²' }] as const) {
  const parts = [{ length, area, ...fill }];
  const box = lineBox({ drivers, parts, opening: { endCorrection } });
  const { levelHalfSpace: levels } = respond(box, grid);
  // In bands a third of an octave wide, above the lowest tone.
  const heard = levels.map((_, i) => {
    const near = levels.slice(Math.max(0, i - 4), i + 5);
    const power = near.reduce((sum, one) => sum + 10 ** (one / 10), 0);
    return 10 * Math.log10(power / near.length);
  });
  const above = heard.filter((_, i) => grid[i]! > 39 && grid[i]! < 240);
  const swing = Math.max(...above) - Math.min(...above);
  console.log(`the level swings by ${swing.toFixed(1)} dB`);
}
