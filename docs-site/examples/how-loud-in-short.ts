import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import {
  greatestLevelWithLosses,
  quietLimits,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '12 T·m', Rms: '2.9 kg/s' } as const;
const cone = { Sd: '340 cm²', Mms: '56 g', Cms: '0.58 mm/N' } as const;
const drivers = driver({ ...motor, ...cone, Xmax: '9 mm' });
const ventArea = si('area', (Math.PI / 4) * 0.075 ** 2);
const air = { netVolume: '60 L', fb: '32 Hz', QL: 7, ventArea } as const;
const box = ventedBox({ drivers, ...air });
const quiet = quietLimits({ diameter: '75 mm' }, { from: '32 Hz' });
const limits = [...quiet, ...travelLimit(drivers), voltageLimit('32 V')];
const most = greatestLevelWithLosses(box, limits, [38]);
console.log(most.binding[0], most.levelHalfSpace[0]?.toFixed(1), 'dB');
