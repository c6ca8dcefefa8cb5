import { completeDriver } from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';

// Invented readings, as a measurement in free air would give them.
const Re = 5.6; // ohms, by a meter at direct current
const fs = 27.2; // hertz, where the impedance is greatest
const greatest = 55; // ohms, there
const [below, above] = [19.4, 38.1]; // hertz, where it is √(Re · greatest)
// Kilograms on the cone; hertz, its new peak.
const [added, lowered] = [0.04, 22.4];

const ratio = greatest / Re;
const Qms = (fs * Math.sqrt(ratio)) / (above - below);
const Qes = Qms / (ratio - 1);
const Mms = added / ((fs / lowered) ** 2 - 1);
console.log('asked twice:', Math.sqrt(below * above), 'Hz should be', fs);

const found = completeDriver({
  Re: si('resistance', Re),
  fs: si('frequency', fs),
  Qms,
  Qes,
  Mms: si('mass', Mms),
  coneDiameter: '205 mm',
  Xmax: '8 mm',
});
if (found.ok) console.log(found.driver, found.parameters);
else console.log(found.because);
