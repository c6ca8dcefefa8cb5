import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { travelLimit, voltageLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { ventLoss } from '@airspring/core/vent';
import { greatestBursts } from '@airspring/transient/burst';
import {
  forceFactorCurve,
  quadraticVentLoss,
  stiffnessCurve,
} from '@airspring/transient/simulation';

// Invented.
const motor = { Re: '5.6 Ω', Bl: '14.3 T·m', Rms: '3.6 kg/s' } as const;
const cone = { Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N' } as const;
const drivers = driver({ ...motor, ...cone, Xmax: '12 mm' });
const area = si('area', (Math.PI / 4) * 0.075 ** 2);
const box = ventedBox({
  drivers,
  ...{ netVolume: '60 L', fb: '28 Hz', QL: 10, ventArea: area },
});
const vent = { diameter: '75 mm', length: '38 cm' } as const;
const { outward, inward } = ventLoss({ vent }).quadratic;
const bursts = greatestBursts(
  box,
  [...travelLimit(drivers), voltageLimit('40 V')],
  [20, 25, 31.5, 40, 50, 63],
  {
    driveVoltageRms: '40 V',
    forceFactor: forceFactorCurve({
      reach: '14 mm',
      coefficients: [0, -0.5],
    }),
    stiffness: stiffnessCurve({ reach: '14 mm', coefficients: [0.1, 0.8] }),
    losses: { vent: quadraticVentLoss({ area, outward, inward }) },
  },
);
for (const burst of bursts) {
  const { frequency } = burst;
  if (!burst.ok) console.log(frequency, 'Hz', burst.because[0]?.text);
  else {
    const { levelHalfSpace, driveVoltageRms, binding } = burst;
    console.log(
      `${frequency} Hz`,
      `${levelHalfSpace.toFixed(1)} dB`,
      `${driveVoltageRms.toFixed(1)} V`,
      binding,
    );
  }
}
