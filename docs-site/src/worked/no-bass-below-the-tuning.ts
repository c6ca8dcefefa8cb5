import { format } from '@airspring/core/quantity';
import { answers, drive, inputs, solve, Xmax } from '../../examples/no-bass-below-the-tuning.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside, clearest, heightAt } from '../figures/beside.js';

type Wish = Parameters<typeof answers>[0];
const solved = once((wish: Wish) => solve(wish));
const answered = once((wish: Wish) => answers(wish));
const x = frequencyAxis(10, 100);
const hertz = (frequency: number) => format('frequency', frequency, 'Hz');
const data = (wish: Wish) => {
  const found = solved(wish);
  return {
    heads: ['frequency', 'cone alone', 'vent alone', 'both', 'vent blocked', 'cone travel'],
    rows: [...found.frequencies.keys()]
      .filter((i) => i % 7 === 0)
      .map((i) => [
        hertz(found.frequencies[i]!),
        ...[found.coneLevel, found.ventLevel, found.level, found.closedLevel].map(
          (column) => `${column[i]!.toFixed(1)} dB`,
        ),
        format('displacementPeak', found.travel[i]!, 'mm'),
      ]),
  };
};
export default worked({
  inputs,
  answers: (wish) => {
    const texts = answered(wish);
    const said = `At ${hertz(wish.tone)} the air in the vent moves ${texts.against}; both together are ${texts.effect} the cone alone.`;
    return { ...texts, said };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: `For ${drive} V, half space. The bold line is what is heard: cone, vent and leak together. The broken line is the same box, with the same leak, and its vent blocked.`,
      chart: (wish) => {
        const [found, texts] = [solved(wish), answered(wish)];
        const line = (name: string, y: Float64Array, colour: string, dash = 'none') => ({
          name,
          x: found.frequencies,
          y,
          dash,
          colour,
          thick: name === 'both',
        });
        // The colours of the parts: the vent as it is drawn in a box, the cone as its travel.
        const traces = [
          line('both', found.level, 'var(--level)'),
          line('cone', found.coneLevel, 'var(--travel)'),
          line('vent', found.ventLevel, 'var(--speed)'),
          line('shut', found.closedLevel, 'var(--soft)', '7 4'),
        ] as const;
        const [both] = traces;
        const domain = [60, 110] as const;
        const named = traces.map((trace) => {
          const others = traces.filter((other) => other !== trace);
          return beside(trace, trace.name, clearest(trace, others, [11, 90], domain), 0, 'middle');
        });
        return {
          label: `At ${hertz(wish.tone)} the cone alone makes ${texts.cone}, the vent alone ${texts.vent}, both together ${texts.both}: ${texts.effect} the cone alone.`,
          x,
          y: { domain, ticks: [60, 70, 80, 90, 100, 110], words: 'dB' },
          traces,
          marks: [
            ...named,
            {
              name: 'now',
              x: wish.tone,
              y: heightAt(both, wish.tone),
              words: texts.both,
              colour: 'var(--level)',
              dot: true,
              side: 'right',
              under: true,
            },
          ],
        };
      },
      data,
    },
    travel: {
      title: 'Cone travel',
      note: 'Peak, one way.',
      chart: (wish) => {
        const [found, texts] = [solved(wish), answered(wish)];
        const mm = found.travel.map((travel) => travel * 1e3);
        return {
          label: `With ${drive} V at ${hertz(wish.tone)} the cone moves ${texts.travel}, ${texts.room}.`,
          x,
          y: axisOf(0, Math.max(Xmax * 1e3, ...mm), 'mm'),
          traces: [{ name: 'travel', x: found.frequencies, y: mm, colour: 'var(--travel)', thick: true }],
          rules: [{ at: Xmax * 1e3, words: `Xmax ${texts.Xmax}` }],
          marks: [
            {
              name: 'now',
              x: wish.tone,
              y: heightAt({ x: found.frequencies, y: mm }, wish.tone),
              words: texts.travel,
              colour: 'var(--travel)',
              dot: true,
              side: 'right',
            },
          ],
        };
      },
      data,
    },
  },
});
