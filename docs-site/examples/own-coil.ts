import {
  type CoilModel,
  coilOverFrequency,
  completeDriver,
} from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { coilLaws } from '@airspring/core/laws';
import { respond } from '@airspring/core/response';

// A reactance K ωⁿ, and a resistance r that sets in at the corner w1. SI.
const risingLoss = (K: number, n: number, r: number, w1: number): CoilModel =>
  coilOverFrequency({
    name: 'rising loss',
    parameters: { K, n, r, w1 },
    sources: ['invented'],
    impedance: (values, w, out) => {
      out[0] = (values[2]! * w ** 2) / (w ** 2 + values[3]! ** 2);
      out[1] = values[0]! * w ** values[1]!;
    },
    scaled: (impedance, time) =>
      risingLoss(impedance * K * time ** n, n, impedance * r, w1 / time),
  });
const mine = risingLoss(0.006, 0.9, 1.5, 400);
// A slip: scaled() forgets the time.
const slip: CoilModel = {
  ...mine,
  scaled: (impedance) =>
    risingLoss(impedance * 0.006, 0.9, impedance * 1.5, 400),
};
for (const [name, coil] of Object.entries({ mine, slip })) {
  const wrong = coilLaws(coil).filter(({ holds }) => !holds);
  console.log(`${name}: ${wrong.length} of its laws broken`);
  for (const { law, detail } of wrong) console.log(`${law}: ${detail}`);
}

const sheet = completeDriver({
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 Ω',
});
if (!sheet.ok) throw new Error(sheet.because[0]?.text);
const { driver } = sheet;
const levels = [driver, { ...driver, coil: mine }].map((drivers) => {
  const box = ventedBox({ drivers, netVolume: '45 L', fb: '28 Hz', QL: 7 });
  return respond(box, [28, 60, 150]).levelHalfSpace;
});
for (const [i, tone] of [28, 60, 150].entries())
  console.log(tone, 'Hz', (levels[1]![i]! - levels[0]![i]!).toFixed(2), 'dB');
