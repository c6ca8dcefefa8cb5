import { closedBox } from '@airspring/core/enclosure';
import { format, logarithmicGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { answers, closed, driverOf, inputs, solve, volumes } from '../../examples/how-small.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((wish: Wish) => answers(wish, solved(wish)));
const litres = volumes.map((volume) => volume * 1e3);
const frequencies = logarithmicGrid(15, 200, 80);
const hertz = (frequency: number) => format('frequency', frequency, 'Hz');
/** Volume of which the box is shown: the smallest one, or twenty litres where there is none. */
const shown = (wish: Wish): number => {
  const found = solved(wish);
  return found.ok ? found.netVolume : 0.02;
};

/** The volume below which the level rises more than is allowed: where the rise of a smaller box crosses the wish. */
export function evenFrom({ Mms, rise }: Wish): number {
  const box = closed(Mms);
  let [small, large] = [1e-4, 10];
  for (let i = 0; i < 60; i++) {
    const middle = Math.sqrt(small * large);
    if (box(middle).rise <= rise) large = middle;
    else small = middle;
  }
  return large;
}

export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    return { ...texts, said: `${texts.words}; ${texts.because} decides.` };
  },
  figures: {
    reach: {
      title: 'How deep each volume reaches',
      chart: (wish) => {
        const [found, texts, box] = [solved(wish), answered(wish), closed(wish.Mms)];
        const y = volumes.map((volume) => box(volume).f3);
        const even = evenFrom(wish) * 1e3;
        const axis = axisOf(20, Math.max(...y, wish.reach), 'Hz');
        const soft = { colour: 'var(--soft)', dash: '2 3' };
        return {
          label: `A closed box that is 3 dB down at ${hertz(wish.reach)} and has at most ${format('level', wish.rise, 'dB')} of rise: ${texts.words}; ${texts.because} decides.`,
          x: { domain: [3, 300], ticks: [3, 5, 10, 20, 50, 100, 200, 300], log: true, words: 'air in the box, L' },
          y: axis,
          // Both rules move with the wish; the box stands where the curve crosses the one that decides.
          traces: [
            { name: 'reach', x: litres, y, colour: 'var(--length)', thick: true },
            {
              name: 'wanted',
              x: [3, 300],
              y: [wish.reach, wish.reach],
              ...soft,
              words: `wanted: ${hertz(wish.reach)}`,
            },
            { name: 'even', x: [even, even], y: axis.domain, ...soft },
          ],
          marks: [
            {
              name: 'even',
              x: Math.min(Math.max(even, 3), 300),
              y: axis.domain[1],
              words: `rises ${format('level', wish.rise, 'dB')} here`,
              colour: 'var(--soft)',
              side: even > 40 ? 'left' : 'right',
              under: true,
            },
            {
              name: 'now',
              x: shown(wish) * 1e3,
              y: box(shown(wish)).f3,
              words: found.ok ? texts.netVolume : '',
              colour: 'var(--length)',
              dot: found.ok,
              side: 'right',
            },
          ],
        };
      },
      data: ({ Mms }) => ({
        heads: ['air', '3 dB down at', 'rise', 'Qtc'],
        rows: volumes
          .filter((_, i) => i % 12 === 0)
          .map((volume) => {
            const { f3, rise, Qtc } = closed(Mms)(volume);
            return [format('volume', volume, 'L'), hertz(f3), `${rise.toFixed(1)} dB`, Qtc.toFixed(2)];
          }),
      }),
    },
    level: {
      title: 'Level at one metre',
      note: 'For 2.83 V, half space. Full line: the box above; dashes: half its air; dots: twice its air.',
      chart: (wish) => {
        const texts = answered(wish);
        const boxes = [1, 0.5, 2].map((times, i) => ({
          name: ['box', 'half', 'twice'][i] as string,
          x: frequencies,
          y: respond(
            closedBox({ drivers: driverOf(wish.Mms), netVolume: si('volume', shown(wish) * times) }),
            frequencies,
            { driveVoltageRms: '2.83 V' },
          ).levelHalfSpace,
          colour: 'var(--level)',
          dash: ['none', '7 4', '2 4'][i] as string,
          thick: i === 0,
        }));
        const [, half, twice] = boxes as readonly Trace[] as readonly [Trace, Trace, Trace];
        return {
          label: `Far above its resonance the driver plays ${texts.level} for 2.83 V in any box; ${texts.half}.`,
          x: frequencyAxis(15, 200),
          y: axisOf(60, 100, 'dB'),
          traces: boxes,
          marks: [beside(half, 'half the air', 80, 0, 'middle'), beside(twice, 'twice the air', 25, 1, 'left')],
        };
      },
      data: (wish) => {
        const { levelHalfSpace } = respond(
          closedBox({ drivers: driverOf(wish.Mms), netVolume: si('volume', shown(wish)) }),
          frequencies,
          { driveVoltageRms: '2.83 V' },
        );
        return {
          heads: ['frequency', 'level'],
          rows: [...frequencies.keys()]
            .filter((i) => i % 6 === 0)
            .map((i) => [hertz(frequencies[i]!), `${levelHalfSpace[i]!.toFixed(1)} dB`]),
        };
      },
    },
  },
});
