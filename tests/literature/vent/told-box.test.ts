import { si } from '@airspring/core/quantity';
import { lengthForTuning, type RoundVentSection, type Tuning, tuning } from '@airspring/core/vent';
import { check } from '../../ledger/check.js';

function solved(vent: RoundVentSection, V: number, fb: number): Tuning {
  const result = lengthForTuning({ vent, netVolume: si('volume', V), fb: si('frequency', fb) });
  if (!result.ok) throw new Error(result.because[0]?.text);
  return result;
}

// A box known only by what its builders tell: a vent 2 in wide and 7.75 in long tunes it to 33 Hz. Its volume by our own
// solve; the rows below then ask how it answers to another vent. Custom rounds, so they can support, not prove.
const inch = (value: number) => si('length', value * 0.0254);
const toldSection = { diameter: inch(2) };
const toldVolume = bisect((V) => fbOf(7.75, V) - 33, 0.005, 0.1);
const told = { key: 'common-practice', locator: "builders' account: 2 in wide, 7.75 in long, 33 Hz" };

function fbOf(inches: number, V: number): number {
  const result = tuning({ vent: { ...toldSection, length: inch(inches) }, netVolume: si('volume', V) });
  return result.ok ? result.fb : Number.NaN;
}

function bisect(f: (x: number) => number, low: number, high: number): number {
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

check('vent.tuning.custom-longer', {
  formula: 'vent/tuning',
  source: told,
  status: 'practice',
  kind: 'measured',
  given: { length: { value: 10, unit: 'in' } },
  got: ({ length }) => fbOf(length, toldVolume),
  expected: 28,
  unit: 'Hz',
  tolerance: {
    relative: 0.07,
    why: 'theory says 29.6; without any end correction it were 29.1, and the longer tube takes volume, which raises it: neither explains 28, for which the vent would have to be 11.3 in long; the account says about',
  },
});

check('vent.custom.wider', {
  formula: 'vent/lengthForTuning',
  source: { ...told, locator: `${told.locator}; 2.45 in wide it must be longer, as the cross-section` },
  status: 'practice',
  kind: 'measured',
  given: { diameter: { value: 2.45, unit: 'in' } },
  got: ({ diameter }) => solved({ diameter: inch(diameter) }, toldVolume, 33).effectiveLength / inch(9.185),
  expected: 1.500625,
  unit: '1',
  tolerance: {
    relative: 0.001,
    why: 'effective length in proportion to the cross-section; 9.185 in is that of the first vent',
  },
});

check('vent.custom.higher', {
  formula: 'vent/lengthForTuning',
  source: { ...told, locator: `${told.locator}; tuned to 40 to 45 Hz it can be about half as long` },
  status: 'practice',
  kind: 'measured',
  given: { fb: { value: [40, 45], unit: 'Hz' } },
  got: ({ fb }) => solved(toldSection, toldVolume, fb).length / inch(7.75),
  expected: [0.5, 0.5],
  unit: '1',
  tolerance: { absolute: 0.13, why: "'about half': 0.62 at 40 Hz, 0.45 at 45 Hz" },
});
