import { boxesThatSuit, butterworth, candidate, quasiThirdOrder, type Suited } from '@airspring/core/alignment';
import { ventedFamily } from '@airspring/core/enclosure';
import { type Frequency, format, type Volume } from '@airspring/core/quantity';
import { delayAtMost } from '../../../tests/packages/stranger-alignment/delay-at-most.js';
import { driverOf } from '../../examples/which-boxes-suit.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';

const hertz = (frequency: number) => format('frequency', frequency, 'Hz');

function told({ result }: Suited): string {
  if (!result.ok) return result.because[0]?.text ?? '';
  const { netVolume, fb } = result.system.spec as unknown as { readonly netVolume: Volume; readonly fb: Frequency };
  const reach = result.f3.ok ? hertz(result.f3.frequency) : 'nowhere';
  return `${format('volume', netVolume, 'L')} of air, tuned to ${hertz(fb)}, −3 dB at ${reach}`;
}

/** The driver of the table of boxes, which is invented, and the rows of three alignments. */
const rows = once((_: object) =>
  boxesThatSuit(
    driverOf(0.36),
    [quasiThirdOrder, butterworth(4), delayAtMost(0.016)].map((one) => candidate(one, ventedFamily, { QL: 7 })),
  ),
);

export default worked({
  inputs: {},
  answers: (values) => {
    const [droopy, flat, own] = rows(values) as [Suited, Suited, Suited];
    return { droopy: told(droopy), flat: told(flat), own: told(own), name: own.alignment.name };
  },
  figures: {},
});
