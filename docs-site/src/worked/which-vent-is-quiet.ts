import { format } from '@airspring/core/quantity';
import { answers, grid, inputs, onsetsInFigure, solve } from '../../examples/which-vent-is-quiet.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { frequencyAxis } from '../figures/axis.js';
import { heightAt } from '../figures/beside.js';
import type { Mark, Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];
const solved = once((at: Wish) => solve(at));
const answered = once((at: Wish) => answers(at, solved(at)));

/** Both edges of the onsets over the tones of the figure. */
const edgesOf = once(({ diameter }: Wish) => onsetsInFigure({ diameter }, (Math.PI / 4) * diameter ** 2));
const levels = Array.from({ length: 25 }, (_, i) => 70 + 1.5 * i);
const lossesOf = once((at: Wish) => levels.map(solved(at).now.losses));

/** The area between two lines over the same places. */
const between = (name: string, x: ArrayLike<number>, low: ArrayLike<number>, high: ArrayLike<number>) =>
  ({
    name,
    x: [...Array.from(x), ...Array.from(x).reverse()],
    y: [...Array.from(low), ...Array.from(high).reverse()],
    area: true,
  }) as const;

const words = (name: string, x: number, y: number, colour = 'var(--ink)'): Mark => ({
  name,
  x,
  y,
  words: name,
  colour,
});

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return { ...texts, said: `At that level the vent ${texts.now_verdict}; it is quiet up to ${texts.now_quiet}.` };
  },
  figures: {
    onsets: {
      title: 'Between which levels nobody can say',
      note: 'At one metre, half space. The lower line is the lowest published onset, the upper one the highest.',
      chart: (at) => {
        const { now_quiet, now_noisy } = answered(at);
        const { quiet, noisy } = edgesOf(at);
        const edge = (name: string, y: Float64Array): Trace => ({
          name,
          x: grid,
          y,
          colour: 'var(--speed)',
          thick: true,
        });
        const [low, high] = [edge('lowest onset', quiet), edge('highest onset', noisy)];
        const tone = 26;
        return {
          label: `From 35 Hz upwards the vent is quiet up to ${now_quiet} and noisy above ${now_noisy}. You want ${format('level', at.level, 'dB')}.`,
          x: frequencyAxis(20, 100),
          y: { domain: [50, 130], ticks: [50, 60, 70, 80, 90, 100, 110, 120, 130], words: 'dB' },
          traces: [
            { ...between('doubtful', grid, quiet, noisy), colour: 'var(--speed)' },
            low,
            high,
            { name: 'wanted', x: [35, 100], y: [at.level, at.level], colour: 'var(--level)', dash: '7 4' },
          ],
          marks: [
            words('noisy', 25, heightAt(high, 25) + 8),
            words('doubtful', tone, (heightAt(low, tone) + heightAt(high, tone)) / 2 - 1),
            words('quiet', 75, heightAt(low, 75) - 22),
            { name: 'wanted', x: 100, y: at.level, words: 'wanted', colour: 'var(--level)', side: 'left' },
          ],
        };
      },
      data: (at) => {
        const { quiet, noisy } = edgesOf(at);
        return {
          heads: ['frequency', 'quiet up to, dB', 'noisy above, dB'],
          rows: [...grid.keys()]
            .filter((i) => i % 5 === 0)
            .map((i) => [format('frequency', grid[i]!, 'Hz'), quiet[i]!.toFixed(1), noisy[i]!.toFixed(1)]),
        };
      },
    },
    behind: {
      title: 'How far the level falls behind',
      note: 'At the tuning. The line follows data of steady flow for these very ends, the area reaches from the least to the greatest published loss.',
      chart: (at) => {
        const { now_lost, now_between } = answered(at);
        const losses = lossesOf(at);
        const { nominal } = solved(at).now.losses(at.level);
        const colour = 'var(--level)';
        return {
          label: `At ${format('level', at.level, 'dB')} the level falls behind by ${now_lost}; published losses give ${now_between} dB.`,
          x: { domain: [70, 106], ticks: [70, 80, 90, 100], words: 'level if the vent lost nothing, dB' },
          y: { domain: [0, 8], ticks: [0, 2, 4, 6, 8], words: 'dB' },
          traces: [
            {
              ...between(
                'published',
                levels,
                losses.map(({ low }) => low),
                losses.map(({ high }) => high),
              ),
              colour,
            },
            { name: 'nominal', x: levels, y: losses.map((one) => one.nominal), colour, thick: true },
          ],
          marks: [{ name: 'now', x: at.level, y: nominal, words: now_lost, colour, dot: true, side: 'left' }],
        };
      },
      data: (at) => ({
        heads: ['level, dB', 'least, dB', 'steady flow, dB', 'greatest, dB'],
        rows: lossesOf(at).flatMap(({ low, nominal, high }, i) =>
          i % 4 === 0 ? [[levels[i]!.toFixed(0), low.toFixed(1), nominal.toFixed(1), high.toFixed(1)]] : [],
        ),
      }),
    },
  },
});
