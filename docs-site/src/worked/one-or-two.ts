import { format } from '@airspring/core/quantity';
import { answers, frequencies, inputs, solve } from '../../examples/one-or-two.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { comparedPanels } from '../figures/compared.js';

type Wish = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((wish: Wish) => answers(wish, solved(wish)));
const tones = [...frequencies];
const names = ['one', 'same air', 'twice the air'];

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    const said = `Two drivers in the same air reach ${texts.same} (−3 dB) instead of ${texts.one}; at ${texts.low} they are ${texts.sameLow}, at ${texts.high} ${texts.sameHigh}.`;
    return { ...texts, said };
  },
  figures: {},
  sweeps: {
    drivers: {
      how: 'The bold curve is one driver; the thin ones are two, in the same air and in twice the air, and carry at their dots how far they lie from one driver. Where you changed a number, the grey curves are ours.',
      sweep: (wish) => {
        const [found, texts] = [solved(wish), answered(wish)];
        return {
          id: 'drivers',
          title: 'One driver and two',
          frequencies: tones,
          band: [30, 100],
          events: [30, 100].map((f) => ({ f, words: format('frequency', f, 'Hz') })),
          panels: comparedPanels(
            tones,
            found.map(({ most }, i) => ({ name: names[i] as string, most })),
            {
              most: `At ${texts.low} two drivers in the same air are ${texts.sameLow}, with twice the air ${texts.twiceLow}; at ${texts.high} ${texts.sameHigh} and ${texts.twiceHigh}.`,
              limits:
                'The limits are the travel of the cones, the heat of the coils, and the voltage and current of the amplifier.',
              level: `The level is 3 dB down at ${texts.one} with one driver, at ${texts.same} with two in the same air, and at ${texts.twice} with two and twice the air.`,
            },
          ),
        };
      },
    },
  },
});
