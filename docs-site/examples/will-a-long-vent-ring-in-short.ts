import { driver } from '@airspring/core/driver';
import { flanged, unflanged } from '@airspring/core/duct';
import { lineVentedBox, ventedBox } from '@airspring/core/enclosure';
import { format, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';

// Invented.
const motor = { Re: '5.4 Ω', Bl: '10.5 T·m', Rms: '2 kg/s' } as const;
const cone = { Sd: '214 cm²', Mms: '36 g', Cms: '0.7 mm/N' } as const;
const box = {
  drivers: driver({ ...motor, ...cone }),
  netVolume: '30 L',
  QL: 7,
} as const;
const [c, fb, V, a] = [343.987, 32, 0.03, 0.04]; // m/s, Hz, m³, m

const [k, S] = [(2 * Math.PI * fb) / c, Math.PI * a ** 2];
const [inner, outer] = [unflanged, flanged].map((end) =>
  end({ radius: a }, 0),
) as [number, number];
const angle = Math.atan(S / (k * V) - k * inner) - Math.atan(k * outer);
const diameter = si('length', 2 * a);
const length = si('length', angle / k);
console.log(format('length', length, 'mm', 3), 'long');

const vent = { diameter, length, solidAngle: 2 * Math.PI };
const pipe = lineVentedBox({ ...box, vent });
const smooth = lineVentedBox({ ...box, vent: { ...vent, wallLoss: 0 } });
const mass = ventedBox({ ...box, fb: si('frequency', fb) });
const half = c / (2 * (length + inner + outer));
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
