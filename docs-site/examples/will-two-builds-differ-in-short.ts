import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { format, logarithmicGrid, si } from '@airspring/core/quantity';
import { normal, scatterOf, within } from '@airspring/core/tolerance';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '14.3 T·m', Rms: '4 kg/s' } as const;
const cone = { Sd: '330 cm²', Mms: '87 g', Cms: '0.4 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });
const box = ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', QL: 7 });

const scatter = {
  Cms: normal(0.08),
  Bl: normal(0.03),
  vent: normal(0.03),
  Cab: normal(0.02),
  leak: within(0.5),
};
const frequencies = logarithmicGrid(15, 120, 40);
const { f3, firstOrder } = scatterOf(box, scatter, {
  frequencies,
  builds: 400,
});
if (!f3.ok || !firstOrder.ok) throw new Error('no f3');
const [low, high, half] = [f3.low, f3.high, f3.middle].map((f) =>
  format('frequency', si('frequency', f), 'Hz', 3),
);
console.log(`nine of ten builds: ${low} to ${high}, half below ${half}`);
for (const [name, share] of Object.entries(firstOrder.shares))
  console.log(`${name}: ${Math.round(100 * share)} % of the variance`);
