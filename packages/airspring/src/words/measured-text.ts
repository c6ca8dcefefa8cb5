import { format } from '@airspring/core/quantity';
import { USUAL_QL } from '../kind/vented-fields.js';
import { cautions } from '../record/cautions.js';
import type { MeasuredDriver } from '../standing/measured-driver.js';
import { LEAST_QL } from '../standing/measured-leaks.js';
import { GREATEST_QMS, NO_LEAK } from '../standing/measured-values.js';
import type { Retrofit } from '../standing/retrofit.js';
import { leakText } from './bands-text.js';
import type { Phrasing } from './phrasing.js';

type Field = MeasuredDriver['values'][number]['field'];
/** How each value is written. */
const UNITS: Readonly<Record<Field, readonly [quantity: string, unit: string] | undefined>> = {
  fs: ['frequency', 'Hz'],
  Qes: undefined,
  Qms: undefined,
  Qts: undefined,
  Vas: ['volume', 'L'],
  Sd: ['coneArea', 'cm²'],
  Mms: ['mass', 'g'],
  Cms: ['compliance', 'mm/N'],
  Rms: ['mechanicalResistance', 'N·s/m'],
  Bl: ['forceFactor', 'T·m'],
  Re: ['resistance', 'Ω'],
};

const written = (field: Field, value: number): string => {
  const unit = UNITS[field];
  return unit === undefined ? value.toPrecision(3) : format(unit[0] as never, value as never, unit[1] as never, 3);
};

/** What follows for each driver, with its range; the first row heads the columns. */
export const measuredRows = ({ values }: MeasuredDriver): string[][] => [
  ['each driver', 'value', 'from', 'to'],
  ...values.map(({ field, value, from, to }) => [
    field,
    written(field, value),
    written(field, from),
    written(field, to),
  ]),
];

/** The three numbers that a driver is chosen by, as ranges: 'fs 28.1 to 31.4 Hz'. */
export const measuredRanges = ({ values }: MeasuredDriver): readonly string[] =>
  (['fs', 'Qts', 'Vas'] as const).flatMap((name) => {
    const found = values.find(({ field }) => field === name);
    if (found === undefined) return [];
    const [from, to] = [written(name, found.from), written(name, found.to)];
    return `${name} ${from.replace(/ \S+$/, '')} to ${to}`;
  });

/** What the ranges count, and what stays open; a paragraph each. */
export function measuredSentences({ within, withinAssumed, leaks, open }: MeasuredDriver, say: Phrasing): string[] {
  const { frequency, length, impedance, air } = within;
  return [
    `The sheet of the drivers is not known. This follows from the impedance of the box. A value lies in its range if each frequency is right within ${say.edge(frequency)}, the diameter of the cone within ${say.length(length)}, each impedance within ${say.percent(impedance)} and the air within ${say.volume(air)}, each independently of the others${withinAssumed ? ' (what you do not state is assumed, common practice)' : ''}.`,
    leaksSentence(leaks),
    ...(open.length > 0 ? [`This stays open: ${open.join('; ')}.`] : []),
  ];
}

/** Which leaks the values and their ranges count. */
function leaksSentence({ QL, least, assumed, lessThanUsual }: MeasuredDriver['leaks']): string {
  if (!assumed && QL > 0.99 / NO_LEAK)
    return 'The brief says that the box does not leak: values and ranges count no leak.';
  const why = lessThanUsual
    ? `The QL of ${USUAL_QL} that is common practice leaves no peak so high; this is half the leak that alone would explain its height.`
    : assumed
      ? 'That QL is assumed, common practice.'
      : 'That QL is what the brief states.';
  const end =
    least > 1.001 * LEAST_QL && assumed
      ? `: with more leak no suspension, not even with a Qms of ${GREATEST_QMS}, would leave the peak as high as it is`
      : assumed
        ? ', also common practice'
        : '';
  return `What a leak loses looks like loss in the suspension, so the leak counts most in Qms. The values are those of drivers in a box with ${leakText(QL)}: it has the peaks and the dip that you measured. ${why} The ranges count, besides the readings, every box from one without leaks to one with ${leakText(least)}${end}. A QL that you know goes into box.QL.`;
}

/** How the tuning is found without an instrument, a step each; none where the box is closed. */
export function byEyeSteps({ now: { account } }: Pick<Retrofit, 'now'>, say: Phrasing): string[] {
  const { fb } = account;
  if (fb === undefined) return [];
  return [
    `Turn the amplifier right down. Play a steady tone of ${say.hertz(1.6 * fb)}, so soft that you hardly hear it.`,
    'Turn it up until you can just see the edge of the cone move, and no further.',
    `Lower the tone slowly towards ${say.hertz(fb)}. At the tuning the cone nearly stands still: where it moves least is the tuning, as the box stands. A lamp that shines flat across the cone shows it best.`,
    `Do not go much below ${say.hertz(0.8 * fb)}: there the air in the vent no longer holds the cone, and it is soon over-driven.`,
    'If what you find is more than 5 % away, write it into the brief as standing.measured.tuning. After the work, check once more: the tuning is then the one that is told for the change.',
  ];
}

export const byEyeCautions = [cautions.byEye, cautions.travel] as const;
