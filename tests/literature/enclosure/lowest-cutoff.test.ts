/** Which total Q of a closed box reaches lowest with a given motor, where box and filling fix the mechanical Q in the box. */
import { closedBox, closedResonance } from '@airspring/core/enclosure';
import { boundedMinimum } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { cutoff } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { paperAir, physical } from './textbook.js';

const check = checkIn(paperAir);

const [fs, Qes, Vas] = [30, 0.4, 0.06];
/** A driver whose mechanical Q in the box is as wanted, in a box that is `alpha` times as stiff as its suspension. */
const boxOf = (Qmc: number, alpha: number) => ({
  drivers: physical({ fs, Qes, Qms: Qmc / Math.sqrt(1 + alpha), Vas, Sd: 0.033, Re: 5.6 }, paperAir),
  netVolume: si('volume', Vas / alpha),
});
function lowestQtc(Qmc: number): number {
  const f3 = (alpha: number) => {
    const found = cutoff(closedBox(boxOf(Qmc, alpha), paperAir));
    return found.ok ? found.frequency : Number.NaN;
  };
  return closedResonance(boxOf(Qmc, boundedMinimum(f3, 1, 6).x), paperAir).Qtc;
}

const shared = {
  formula: 'enclosure/closedResonance',
  kind: 'table',
  got: ({ Qmc }: { Qmc: number }) => lowestQtc(Qmc),
  unit: '1',
} as const;
check('enclosure.closed.lowest-cutoff', {
  ...shared,
  source: { key: 'leachqtc', locator: 'Qtc for a mechanical Q of 3.5' },
  status: 'seen',
  part: 'Qtc',
  given: { Qmc: { value: [3.5], unit: '1' } },
  printed: ['0.63'],
});
check('enclosure.closed.lowest-cutoff.fit', {
  ...shared,
  source: { key: 'leachqtc', locator: '0.1994 + 0.2822 Qmc − 0.06219 Qmc² + 0.0048 Qmc³, from 2 to 5' },
  status: 'derived',
  given: { Qmc: { value: [2, 2.5, 3, 3.5, 4, 5], unit: '1' } },
  expected: [0.55344, 0.5912125, 0.61589, 0.6310725, 0.64036, 0.65565],
  tolerance: { relative: 0.0027, why: 'a cubic through computed values: the exact minimum lies up to 0.25 % off' },
});
