import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import {
  infiniteBaffle,
  openBaffle,
  type System,
} from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '8 T·m', Rms: '3 kg/s' } as const;
const cone = { Sd: '520 cm²', Mms: '55 g', Cms: '0.46 mm/N' } as const;
const drivers = driver({ ...motor, ...cone });

const tone = 45;
const level = (system: System) => respond(system, [tone]).levelHalfSpace[0]!;

// The shortest way around a baffle of 60 cm is half its width.
const wall = level(infiniteBaffle({ drivers }));
const board = level(openBaffle({ drivers, path: '30 cm' }));
console.log(`${(wall - board).toFixed(1)} dB softer`);

// A loss of 6 dB: 2 sin(πfD/c) is a half.
const { speedOfSound } = standardAir;
const path = (speedOfSound / (Math.PI * tone)) * Math.asin(10 ** -0.3 / 2);
console.log(format('length', si('length', 2 * path), 'm', 3));
