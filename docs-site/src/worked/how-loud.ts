import { format, type Length } from '@airspring/core/quantity';
import { answers, boxWith, type Event, events, grid, happens, inputs, ofMusic } from '../../examples/how-loud.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { frequencyAxis } from '../figures/axis.js';
import { beside, clearest } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';

type Wish = Parameters<typeof answers>[0];

/** Keeps what was worked out: of the numbers of the page one changes at a time, and most hangs on one of them. */
function kept() {
  const known = new Map<string, unknown>();
  return <T>(key: string, make: () => T): T => {
    if (known.size > 4000) known.clear();
    if (!known.has(key)) known.set(key, make());
    return known.get(key) as T;
  };
}
const keep = kept();

const boxOf = (diameter: Length) => keep(`box ${diameter}`, () => boxWith(diameter));
const middle = Math.ceil(grid.length / 2);
const halves = [grid.slice(0, middle), grid.slice(middle)];
const half = (diameter: Length, event: Event, i: number) =>
  keep(`half ${diameter} ${event} ${i}`, () => boxOf(diameter).steady(event, halves[i]!));
const curve = (diameter: Length, event: Event) =>
  keep(`curve ${diameter} ${event}`, () => Float64Array.from([0, 1].flatMap((i) => [...half(diameter, event, i)])));
const level = ({ diameter, tone }: Wish, event: Event) =>
  keep(`tone ${diameter} ${tone} ${event}`, () => boxOf(diameter).steady(event, [tone])[0]!);
/** Only the noise of the vent hangs on its diameter. */
const music = (diameter: Length, crest: number, event: Event) =>
  keep(`music ${event === 'noise' ? diameter : ''} ${crest} ${event}`, () => boxOf(diameter).music(event, crest));
const crests = [3, 8, 14, 20];

const solved = once((at: Wish) => {
  const each = <T>(list: readonly Event[], of: (event: Event) => T) =>
    Object.fromEntries(list.map((event) => [event, of(event)])) as Record<Event, T>;
  return {
    length: boxOf(at.diameter).length,
    curves: each(events, (event) => curve(at.diameter, event)),
    levels: each(events, (event) => level(at, event)),
    music: each(ofMusic, (event) => music(at.diameter, at.crest, event)),
    squashed: each(ofMusic, (event) => music(at.diameter, 3, event)),
    drums: each(ofMusic, (event) => music(at.diameter, 20, event)),
  };
});
const answered = once((at: Wish) => answers(at, solved(at)));

const looks: Readonly<Record<Event, Pick<Trace, 'colour' | 'dash'>>> = {
  noise: { colour: 'var(--speed)' },
  compression: { colour: 'var(--speed)', dash: '7 4' },
  motor: { colour: 'var(--travel)', dash: '7 4' },
  suspension: { colour: 'var(--travel)', dash: '2 3' },
  travel: { colour: 'var(--travel)' },
  heat: { colour: 'var(--heat)' },
  amplifier: { colour: 'var(--amplifier)' },
};
/** The three lines of the travel lie so close together that they have one name. */
const names: Partial<Record<Event, string>> = {
  noise: 'vent heard',
  compression: 'vent −1 dB',
  travel: 'cone',
  heat: 'coil hot',
  amplifier: 'amplifier',
};
const domain = [70, 120] as const;
const ticks = [70, 80, 90, 100, 110, 120];

const least = (curves: readonly ArrayLike<number>[], i: number) => Math.min(...curves.map((one) => one[i]!));

/** The area in which nothing has happened yet. */
const nothingYet = (x: readonly number[], curves: readonly ArrayLike<number>[]): Trace => ({
  name: 'nothing yet',
  x: [...x, x.at(-1)!, x[0]!],
  y: [...x.map((_, i) => least(curves, i)), domain[0] - 40, domain[0] - 40],
  colour: 'var(--level)',
  area: true,
});

/** Where names stand, and how far above their lines, dB. */
type Places = Partial<Record<Event, readonly [x: number, lift: number]>>;

/** A line for each thing that happens, with its name; where nobody says where, it stands where there is most room. */
function drawn(x: readonly number[], of: Readonly<Partial<Record<Event, ArrayLike<number>>>>, places: Places = {}) {
  const lines = events.flatMap((event): Trace[] => {
    const y = of[event];
    return y ? [{ name: event, x, y, ...looks[event] }] : [];
  });
  const marks = lines.flatMap((line) => {
    const name = names[line.name as Event];
    if (name === undefined) return [];
    const others = lines.filter(
      (other) => other !== line && (names[other.name as Event] || names[line.name as Event] !== 'cone'),
    );
    const [x, lift] = places[line.name as Event] ?? [clearest(line, others, [20, 110], domain), 1];
    return [{ ...beside(line, name, x, lift, 'middle'), name: line.name }];
  });
  return {
    traces: [
      nothingYet(
        x,
        lines.map(({ y }) => y),
      ),
      ...lines,
    ],
    marks,
  };
}

export default worked({
  inputs,
  parts: (at) => [
    ...events.flatMap((event) => [0, 1].map((i) => () => half(at.diameter, event, i))),
    ...events.map((event) => () => level(at, event)),
    ...ofMusic.flatMap((event) => [at.crest, ...crests].map((crest) => () => music(at.diameter, crest, event))),
  ],
  answers: (at) => {
    const texts = answered(at);
    const said = `First ${texts.first}, at ${texts.firstLevel}. With music, first ${texts.soonest}, at ${texts.soonestLevel}.`;
    return { ...texts, said };
  },
  figures: {
    limits: {
      title: 'What gives out first',
      note: 'Steady tones, at one metre in half space. Below the lowest line nothing has happened yet. The three lines of the cone: Xmax is drawn, the motor dashed, the suspension dotted.',
      chart: (at) => {
        const texts = answered(at);
        const { curves, levels } = solved(at);
        const { traces, marks } = drawn([...grid], curves);
        const first = Math.min(...Object.values(levels));
        return {
          label: `At ${format('frequency', at.tone, 'Hz')} first ${texts.first}, at ${texts.firstLevel}; then ${texts.second}, at ${texts.secondLevel}. The box itself gives out at ${texts.hardLevel}, where ${texts.hard}.`,
          x: frequencyAxis(16, 128),
          y: { domain, ticks, words: 'dB' },
          traces,
          marks: [
            ...marks,
            {
              name: 'first',
              x: at.tone,
              y: first,
              words: texts.firstLevel,
              colour: 'var(--ink)',
              dot: true,
              side: 'right',
              under: true,
            },
          ],
        };
      },
      data: (at) => ({
        heads: ['frequency', ...events.map((event) => happens[event])],
        rows: [...grid.keys()]
          .filter((i) => i % 5 === 0)
          .map((i) => [
            format('frequency', grid[i]!, 'Hz'),
            ...events.map((event) => {
              const at_ = curve(at.diameter, event)[i]!;
              return at_ > 130 ? 'never' : `${at_.toFixed(1)} dB`;
            }),
          ]),
      }),
    },
    music: {
      title: 'The same for music',
      note: 'Rms level of noise with equal power in each octave from 32 Hz to 128 Hz, at one metre in half space. An estimate.',
      chart: (at) => {
        const texts = answered(at);
        const curves = Object.fromEntries(
          ofMusic.map((event) => [event, crests.map((crest) => music(at.diameter, crest, event))]),
        );
        const { traces, marks } = drawn(crests, curves, {
          noise: [7, -7],
          travel: [8, 2.5],
          heat: [15, 1],
          amplifier: [15, -6],
        });
        const now = Math.min(...Object.values(solved(at).music));
        return {
          label: `Where peaks stand ${format('level', at.crest, 'dB')} above the rms, first ${texts.soonest}, at ${texts.soonestLevel}; then ${texts.next}, at ${texts.nextLevel}.`,
          x: { domain: [3, 20], ticks: [3, 6, 9, 12, 15, 18], words: 'peaks above the rms, dB' },
          y: { domain, ticks, words: 'dB' },
          traces,
          marks: [
            ...marks,
            {
              name: 'now',
              x: at.crest,
              y: now,
              words: texts.soonestLevel,
              colour: 'var(--ink)',
              dot: true,
              side: 'right',
              under: true,
            },
          ],
        };
      },
      data: (at) => ({
        heads: ['peaks above the rms', ...ofMusic.map((event) => happens[event])],
        rows: crests.map((crest) => [
          `${crest} dB`,
          ...ofMusic.map((event) => `${music(at.diameter, crest, event).toFixed(1)} dB`),
        ]),
      }),
    },
  },
});
