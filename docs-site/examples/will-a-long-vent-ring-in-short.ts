import { driver } from '@airspring/core/driver';
import { lineVentedBox, ventedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { compileVentWithWaves } from '@airspring/core/vent';

// Invented.
const motor = { Re: '5.4 Ω', Bl: '10.5 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '36 g', Cms: '0.7 mm/N' } as const;
const box = {
  drivers: driver({ ...motor, ...cone }),
  netVolume: '30 L',
  QL: 7,
} as const;
const fb = 32; // Hz

const waves = compileVentWithWaves({ diameter: '80 mm' });
const tube = waves.tube(waves.length(0.03, fb)); // for 0.03 m³
console.log(format('length', tube.length, 'mm', 3), 'long');

const vent = { ...tube, solidAngle: 2 * Math.PI };
const pipe = lineVentedBox({ ...box, vent });
const smooth = lineVentedBox({ ...box, vent: { ...vent, wallLoss: 0 } });
const mass = ventedBox({ ...box, fb: si('frequency', fb) });
const acting = tube.length + tube.innerCorrection + tube.outerCorrection;
const half = 343.987 / (2 * acting); // the speed of sound, m/s
const near = Array.from({ length: 61 }, (_, i) => half * (0.88 + 0.004 * i));
const levels = respond(mass, near).levelHalfSpace;
const out = respond(pipe, near).levelHalfSpace.map((x, i) => x - levels[i]!);
const most = Math.max(...out);
const ring = si('frequency', near[out.indexOf(most)]!);
console.log(format('frequency', ring, 'Hz', 3), 'stands out');
console.log('by', most.toFixed(1), 'dB');
const [lossy, lossless] = [pipe, smooth].map(
  (system) => respond(system, [fb]).levelHalfSpace[0]!,
) as [number, number];
console.log('friction takes', (lossless - lossy).toFixed(2), 'dB');
