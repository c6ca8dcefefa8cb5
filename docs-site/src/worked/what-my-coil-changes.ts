import { answers, grid, inputs, solve } from '../../examples/what-my-coil-changes.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { axisOf, frequencyAxis } from '../figures/axis.js';
import { beside } from '../figures/beside.js';
import type { Trace } from '../figures/chart.js';
import { frequencyRows } from '../figures/frequency-rows.js';

type Coil = Parameters<typeof answers>[0];
const solved = once(solve);
const answered = once((at: Coil) => answers(at, solved(at)));
type Column = 'levelHalfSpace' | 'impedance';

const NAMES = { none: 'Re alone', inductor: 'Re + Le', lossy: 'lossy', four: 'four parameters', semi: 'semi-inductor' };
const DASHES = { none: '1 5', inductor: '12 5', lossy: undefined, four: '7 4', semi: '3 3' };
const names = Object.keys(NAMES) as (keyof typeof NAMES)[];

const traces = (column: Column, at: Coil, colour: string) => {
  const of = (name: keyof typeof NAMES): Trace => {
    const dash = DASHES[name];
    const y = solved(at)[name].swept[column];
    return { name: NAMES[name], x: grid, y, colour, ...(dash ? { dash } : { thick: true }) };
  };
  return {
    none: of('none'),
    inductor: of('inductor'),
    lossy: of('lossy'),
    four: of('four'),
    semi: of('semi'),
  };
};

const table = (column: Column, at: Coil, unit: string, digits: number) => ({
  heads: ['frequency', ...names.map((name) => `${NAMES[name]}, ${unit}`)],
  rows: frequencyRows(grid, (i) => names.map((name) => solved(at)[name].swept[column][i]!.toFixed(digits))),
});

const LINES =
  'Full line: the lossy inductor; long dashes: Re + Le; dashes: four parameters; short dashes: semi-inductor; dots: Re alone.';

export default worked({
  inputs,
  answers: (at) => {
    const texts = answered(at);
    return { ...texts, said: `Re + Le: ${texts.inductor}; with losses: ${texts.lossy}.` };
  },
  figures: {
    level: {
      title: 'Level at one metre',
      note: `For 2.83 V, half space. ${LINES}`,
      chart: (at) => {
        const texts = answered(at);
        const all = traces('levelHalfSpace', at, 'var(--level)');
        return {
          label: `At the tone, Re + Le is ${texts.inductor} than without inductance, the lossy inductor ${texts.lossy}, the four-parameter model ${texts.four}, the semi-inductor ${texts.semi}.`,
          x: frequencyAxis(20, 1000),
          y: axisOf(70, 100, 'dB'),
          traces: Object.values(all),
          marks: [beside(all.none, 'Re alone', 500, 1, 'middle'), beside(all.lossy, 'lossy', 250, 0, 'right')],
        };
      },
      data: (at) => table('levelHalfSpace', at, 'dB', 1),
    },
    impedance: {
      title: 'Input impedance',
      note: LINES,
      chart: (at) => {
        const texts = answered(at);
        const all = traces('impedance', at, 'var(--impedance)');
        return {
          label: `At the tone the impedance is ${texts.bare} without inductance, ${texts.Z_inductor} with Re + Le and ${texts.Z_lossy} with the lossy inductor.`,
          x: frequencyAxis(20, 1000),
          // The peak is the same for all of them, and much higher.
          y: axisOf(0, 25, 'Ω'),
          traces: Object.values(all),
          marks: [beside(all.none, 'Re alone', 300, 0, 'right'), beside(all.lossy, 'lossy', 300, 1, 'middle')],
        };
      },
      data: (at) => table('impedance', at, 'Ω', 2),
    },
  },
});
