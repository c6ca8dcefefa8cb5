import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respondAtLevel, ventThirdHarmonic } from '@airspring/core/response';
import { ventLoss } from '@airspring/core/vent';
import {
  harmonicDistortion,
  quadraticVentLoss,
  steadyState,
} from '@airspring/transient/simulation';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '14.3 T·m', Rms: '3.6 kg/s' } as const;
const cone = { Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N' } as const;
const area = si('area', (Math.PI / 4) * 0.075 ** 2);
const box = ventedBox({
  drivers: driver({ ...motor, ...cone }),
  ...{ netVolume: '60 L', fb: '28 Hz', QL: 10, ventArea: area },
});
const vent = { diameter: '75 mm', length: '38 cm' } as const;
const { nominal: loss, quadratic } = ventLoss({ vent });
const { outward, inward } = quadratic;

for (const voltage of [2, 4, 8, 16]) {
  const driveVoltageRms = si('voltageRms', voltage);
  const told = { driveVoltageRms, loss };
  const { levelHalfSpace, compression } = respondAtLevel(box, [28], told);
  const [third = 0] = ventThirdHarmonic(box, [28], told);
  const played = steadyState(box, {
    base: '28 Hz',
    tones: [{ multiple: 1, voltageRms: driveVoltageRms }],
    outputs: ['pressure'],
    losses: { vent: quadraticVentLoss({ area, outward, inward }) },
  });
  if (!played.ok) throw new Error(played.because[0]?.text);
  const { byOrder } = harmonicDistortion(played.harmonics.pressure!);
  const share = (ratio = 0) => `${(100 * ratio).toFixed(1)} %`;
  console.log(
    `${levelHalfSpace[0]?.toFixed(1)} dB`,
    `${compression[0]?.toFixed(1)} dB`,
    share(third),
    share(byOrder[3]),
    share(byOrder[2]),
  );
}
