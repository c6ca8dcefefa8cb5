import { butterworth, solveAlignment } from '@airspring/core/alignment';
import { driver } from '@airspring/core/driver';
import { capacitorBoxFamily } from '@airspring/core/enclosure';
import { format } from '@airspring/core/quantity';

// Invented.
const motor = { Re: '5.4 Ω', Bl: '8.6 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '46 g', Cms: '0.9 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

const flat = solveAlignment(butterworth(3), capacitorBoxFamily, { drivers });
if (!flat.ok || !flat.f3.ok) throw new Error('no such box');
const { netVolume, seriesCapacitance } = flat.system.spec;
console.log(format('volume', netVolume, 'L'), 'of air');
console.log(format('capacitance', seriesCapacitance, 'µF', 3), 'in series');
console.log(format('frequency', flat.f3.frequency, 'Hz'), 'at −3 dB');
