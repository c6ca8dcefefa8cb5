/**
 * The air speed of a vent that loses by the square, twice: in steady state over time, and by the resistance that has the same
 * fundamental at that speed, 8/3π times the slope of the chord. The second neglects harmonics of the flow.
 */
import { type VentedBoxInput, ventedBox } from '@airspring/core/enclosure';
import { bracketedRoot } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { quadraticVentLoss, steadyState } from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { tenInch } from './boxes.js';

const area = 0.004;
const K = 1.5;
const input: VentedBoxInput = {
  drivers: tenInch,
  netVolume: '60 L',
  fb: '28 Hz',
  ventArea: si('area', area),
  QL: 10,
  QP: 60,
};

/** Peak air speed at a frequency, with a resistance in the vent beside that of QP. */
function speedWith(resistance: number, frequency: number, volts: number): number {
  const box = ventedBox(input);
  const loss = box.network.values.ventLoss as number;
  const QP = (60 * loss) / (loss + resistance);
  const { airSpeedPeak } = respond(ventedBox({ ...input, QP }), frequencyGrid([frequency]), {
    driveVoltageRms: si('voltageRms', volts),
  }) as { readonly airSpeedPeak?: Float64Array };
  return airSpeedPeak![0]!;
}

test.each([
  [28, 2],
  [28, 6],
  [28, 12],
  [22, 10],
  [35, 20],
])('at %d Hz and %d V', (frequency, volts) => {
  const box = ventedBox(input);
  const { density } = box.air;
  const resistance = (speed: number) => ((4 / (3 * Math.PI)) * density * K * speed) / area;
  const still = speedWith(0, frequency, volts);
  const found = bracketedRoot((speed) => speedWith(resistance(speed), frequency, volts) - speed, 0, still);
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { x: described } = found;
  const state = steadyState(box, {
    base: si('frequency', frequency),
    tones: [{ multiple: 1, voltageRms: si('voltageRms', volts) }],
    outputs: ['ventAirSpeed'],
    losses: { vent: quadraticVentLoss({ area: si('area', area), outward: K }) },
    orders: 5,
  });
  if (!state.ok) throw new Error(state.because[0]?.text);
  const { amplitudes } = state.harmonics.ventAirSpeed!;
  const compression = 20 * Math.log10(still / amplitudes[1]!);
  expect(compression).toBeGreaterThan(0.05);
  expect(compression).toBeLessThan(3.1);
  expect(Math.abs(amplitudes[1]! / described - 1)).toBeLessThan(0.002);
});
