/** How far the step responses of two shapes swing: boxes of them, against the steps of their transfer functions. */
import { type Alignment, bessel, butterworth, solveAlignment } from '@airspring/core/alignment';
import { ventedFamily } from '@airspring/core/enclosure';
import { stepResponse } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { fs, paperAir, physical, split } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

/** The first two turns of the step response, as shares of where it begins. */
function swings(type: Alignment): readonly number[] {
  const drivers = physical({ fs, ...split(0.28), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
  const found = solveAlignment(type, ventedFamily, { drivers }, { air: paperAir, addResistance: true });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { pressure } = stepResponse(found.system, { until: '0.12 s', points: 6001 });
  const low = Math.min(...pressure);
  const after = pressure.slice(pressure.indexOf(low));
  return [low / pressure[0]!, Math.max(...after) / pressure[0]!];
}

for (const [name, type, expected] of [
  ['butterworth', butterworth(4), [-0.3502, 0.1705]],
  ['bessel', bessel(4), [-0.2919, 0.0967]],
] as const) {
  check(`alignment.step.${name}`, {
    formula: `alignment/${name}`,
    source: { key: 'scipy', locator: 'signal.step of s⁴/D(s): its first two turns' },
    status: 'derived',
    kind: 'program',
    given: { order: { value: 4, unit: '1' } },
    got: () => swings(type),
    expected,
    unit: '1',
    tolerance: { absolute: 1e-4, why: 'four decimals; turns between points 20 µs apart' },
  });
}
