import { type BoxAccount, type Verdict, verdicts } from './account.js';
import type { Heard, HeardBox } from './heard.js';

/** A quantity over time, with a line for each box that has it: A is bold, B is thin. */
export interface Panel {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly colour: string;
  readonly lines: readonly { readonly name: string; readonly values: ArrayLike<number> }[];
  /** Greatest that a limit allows. */
  readonly rules: readonly { readonly at: number; readonly words: string }[];
  /** Of the bold line, where its colour says more. */
  readonly verdicts?: readonly Verdict[];
}

const scaled = (values: ArrayLike<number>, by: number): Float64Array =>
  Float64Array.from(values, (value) => by * value);

/** What is drawn below the strips. */
export function panelsOf({ boxes }: Heard, accounts: readonly BoxAccount[], drive: number): readonly Panel[] {
  const lines = (of: (box: HeardBox, i: number) => ArrayLike<number> | undefined) =>
    boxes.flatMap((box, i) => {
      const values = of(box, i);
      return values ? [{ name: 'AB'[i]!, values }] : [];
    });
  const peak = (name: string, unit: number) => lines((box) => box.peak[name] && scaled(box.peak[name], drive * unit));
  const rules = (name: string, unit: number, words: string) => {
    const all = boxes.flatMap(({ limits }, i) => {
      const { greatestRms } = limits.find((limit) => limit.name === name) ?? {};
      return greatestRms === undefined
        ? []
        : [{ at: Math.SQRT2 * unit * greatestRms, words: `${words} of ${'AB'[i]}` }];
    });
    const same = all.length === 2 && Math.abs(all[0]!.at / all[1]!.at - 1) < 1e-9;
    return same ? [{ at: all[0]!.at, words }] : all;
  };
  const first = boxes[0] && verdicts(boxes[0], drive);
  const all: readonly Panel[] = [
    {
      id: 'air',
      title: 'Air in the vent',
      unit: 'm/s',
      colour: 'var(--speed)',
      lines: peak('ventAirSpeed', 1),
      rules: [],
      ...(first && { verdicts: first }),
    },
    {
      id: 'travel',
      title: 'Cone travel',
      unit: 'mm',
      colour: 'var(--travel)',
      lines: peak('displacement', 1000),
      rules: rules('travel', 1000, 'Xmax'),
    },
    {
      id: 'voltage',
      title: 'Voltage',
      unit: 'V',
      colour: 'var(--amplifier)',
      lines: peak('voltage', 1),
      rules: rules('amplifier voltage', 1, 'amplifier'),
    },
    {
      id: 'warmth',
      title: 'Coil above the air',
      unit: 'K',
      colour: 'var(--heat)',
      lines: lines((_, i) => accounts[i]?.rise),
      rules: [],
    },
  ];
  return all.filter((panel) => panel.lines.length > 0);
}
