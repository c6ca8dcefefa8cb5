import { format } from '@airspring/core/quantity';
import {
  answers,
  atOnePlace,
  cornerAdds,
  deep,
  grid,
  inputs,
  inTheCabin,
  inTheOpen,
} from '../../examples/what-the-corner-adds.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { frequencyAxis } from '../figures/axis.js';
import { beside, clearest } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];
const answered = once((at: Wish) => answers(at));
const corner = once(({ wall }: Wish) => ({ mean: cornerAdds(wall), place: atOnePlace(wall) }));
const touching = cornerAdds(0 as never);
const cabin = once((at: Wish) => inTheCabin(at));

const [range, loud] = [[-18, 18] as const, [60, 120] as const];
const signed = (level: number) => `${level < 0 ? '−' : '+'}${Math.abs(level).toFixed(1)} dB`;

/** The names of lines, each where it is farthest from the others. */
const named = (
  lines: readonly Trace[],
  within: readonly [number, number],
  domain: readonly [number, number],
  lift: number,
) =>
  lines.map((line) => {
    const others = lines.filter((other) => other !== line);
    return beside(line, line.name, clearest(line, others, within, domain), lift, 'middle');
  });

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    const said = `The corner adds ${texts.deepest} at 20 Hz, and ${texts.least} at ${texts.leastAt}. In the cabin the box reaches ${texts.reach}, in the open ${texts.open}.`;
    return { ...texts, said };
  },
  figures: {
    corner: {
      title: 'What two walls add to the floor alone',
      note: 'Rigid walls, at the same distance from the box for both curves. The thin curve is for one place, 4 m out of the corner.',
      chart: (at) => {
        const texts = answered(at);
        const { mean, place } = corner(at);
        const lines: Trace[] = [
          { name: 'all three touching', x: grid, y: touching, colour: 'var(--level)', dash: '7 4' },
          { name: 'one place', x: grid, y: place, colour: 'var(--ink)' },
          { name: 'all directions', x: grid, y: mean, colour: 'var(--level)', thick: true },
        ];
        return {
          label: `With both walls ${format('length', at.wall, 'm')} away they add ${texts.deepest} at 20 Hz and ${texts.least} at ${texts.leastAt}, as a mean over all directions.`,
          x: frequencyAxis(20, 320),
          y: { domain: range, ticks: [-18, -12, -6, 0, 6, 12, 18], words: 'dB' },
          traces: lines,
          marks: named(lines, [26, 260], range, 0.6),
        };
      },
      data: (at) => {
        const { mean, place } = corner(at);
        return {
          heads: ['frequency', 'all directions', 'one place'],
          rows: [...grid.keys()]
            .filter((i) => i % 8 === 0)
            .map((i) => [format('frequency', grid[i]!, 'Hz'), signed(mean[i]!), signed(place[i]!)]),
        };
      },
    },
    cabin: {
      title: 'A closed box in the open and in a cabin',
      note: 'Level for 2.83 V: in the open at one metre in half space, in the cabin at the listener.',
      chart: (at) => {
        const texts = answered(at);
        const lines: Trace[] = [
          { name: 'in the open', x: deep, y: inTheOpen, colour: 'var(--level)', dash: '7 4' },
          { name: 'in the cabin', x: deep, y: cabin(at), colour: 'var(--level)', thick: true },
        ];
        return {
          label: `The level is 6 dB down at ${texts.open} in the open; in the cabin it reaches ${texts.reach}.`,
          x: frequencyAxis(10, 160),
          y: { domain: loud, ticks: [60, 70, 80, 90, 100, 110, 120], words: 'dB' },
          traces: lines,
          marks: named(lines, [14, 120], loud, 1.2),
        };
      },
      data: (at) => ({
        heads: ['frequency', 'in the open', 'in the cabin'],
        rows: [...deep.keys()]
          .filter((i) => i % 8 === 0)
          .map((i) => [
            format('frequency', deep[i]!, 'Hz'),
            `${inTheOpen[i]!.toFixed(1)} dB`,
            `${cabin(at)[i]!.toFixed(1)} dB`,
          ]),
      }),
    },
  },
});
