import type { GreatestLevel } from '@airspring/core/limit';
import { format } from '@airspring/core/quantity';
import { axisOf } from './axis.js';
import { bindingWords, inColours } from './binding.js';
import type { Panel } from './sweep.js';

/** A box by the word that tells it from the others, and the most it plays. */
export interface Compared {
  readonly name: string;
  readonly most: GreatestLevel;
}

/** Level for 2.83 V: the greatest one less what the drive is above that. */
const levelFor = ({ levelHalfSpace, driveVoltageRms }: GreatestLevel): number[] =>
  Array.from(levelHalfSpace, (level, i) => level - 20 * Math.log10(driveVoltageRms[i]! / 2.83));

/** The greatest level of some boxes with what gives out first in the bold one, and their level for one voltage. */
export function comparedPanels(
  frequencies: readonly number[],
  boxes: readonly Compared[],
  told: { readonly most: string; readonly limits: string; readonly level: string },
): Panel[] {
  const panel = (
    of: (most: GreatestLevel) => number[],
    rest: Pick<Panel, 'id' | 'title' | 'label' | 'note'>,
    low: number,
  ) => {
    const lines = boxes.map(({ name, most }) => ({ name, values: of(most) }));
    const { domain, ticks } = axisOf(low, Math.max(...lines.flatMap(({ values }) => values)), '');
    const rows = [...frequencies.keys()]
      .filter((i) => i % 6 === 0)
      .map((i) => [
        format('frequency', frequencies[i]!, 'Hz'),
        ...lines.map(({ values }) => `${values[i]!.toFixed(1)} dB`),
      ]);
    const heads = ['frequency', ...lines.map(({ name }) => name)];
    return { ...rest, colour: 'var(--level)', unit: 'dB', lines, domain, ticks, data: { heads, rows } };
  };
  const most = panel(
    ({ levelHalfSpace }) => [...levelHalfSpace],
    {
      id: 'most',
      title: 'Greatest level',
      label: told.most,
      note: `${told.limits} The colour of the bold curve and the word beside it tell what gives out first. Steady tone, at one metre in half space.`,
    },
    70,
  );
  const level = panel(
    levelFor,
    { id: 'level', title: 'Level for 2.83 V', label: told.level, note: 'At one metre in half space.' },
    60,
  );
  const [bold] = boxes;
  const { binding = [] } = bold?.most ?? {};
  return [
    {
      ...most,
      lines: most.lines.map((line, i) => (i === 0 ? { ...line, stretches: inColours(frequencies, binding) } : line)),
      words: bindingWords(frequencies, most.lines[0]?.values ?? [], binding),
    },
    level,
  ];
}
