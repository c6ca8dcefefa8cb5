import { visible } from '@airspring/core/fault';
import { format, type Kind, kinds } from '@airspring/core/quantity';
import { inWords } from '../kind/wording.js';
import type { Answer, DriverAccount, Met, NotMet } from '../record/answer.js';
import type { Design } from '../record/design-record.js';
import { comparison } from './comparison.js';
import { designInFull, designInShort, summary } from './design-text.js';
import { heading, paragraph, table } from './layout.js';
import { endOfSearchText, type Phrasing, phrasing, type Units } from './phrasing.js';
import { printable } from './printable.js';

/** Kind and unit in which each parameter of a driver is printed; any other parameter is a plain number. */
const PARAMETERS: Readonly<Record<string, readonly [kind: Kind, unit: string]>> = {
  fs: ['frequency', 'Hz'],
  Vas: ['volume', 'L'],
  Sd: ['coneArea', 'cm²'],
  coneDiameter: ['length', 'mm'],
  Mms: ['mass', 'g'],
  Cms: ['compliance', 'mm/N'],
  Rms: ['mechanicalResistance', 'N·s/m'],
  Re: ['resistance', 'Ω'],
  Bl: ['forceFactor', 'T·m'],
  Le: ['inductance', 'mH'],
};

function parameterText(field: string, value: number): string {
  const [kind, unit] = PARAMETERS[field] ?? (['ratio', '1'] as const);
  const known = unit in kinds[kind].units && unit !== '1';
  return known ? format(kind, value, unit as never) : format('ratio', value, '1').replace(/ 1$/, '');
}

/** Which values were derived and from what, and where the given values disagree. */
function accountText({ name, derived, deviations, blocked, assumed }: DriverAccount, say: Phrasing): string[] {
  const rows = derived.map(({ field, value, by }) => [field, parameterText(field, value), by]);
  const disagree = deviations.map(
    ({ field, given, implied, relative }) =>
      `${field} is given as ${parameterText(field, given)}, but the other values give ${parameterText(field, implied)}. The two differ by ${Math.abs(relative * 100).toFixed(1)} %.`,
  );
  return [
    paragraph(
      `"${name}": ${rows.length > 0 ? 'these values are derived from its data.' : 'no value had to be derived from its data.'}`,
    ),
    ...(rows.length > 0 ? [table('lrl', rows)] : []),
    ...disagree.map(paragraph),
    ...blocked.map(paragraph),
    ...assumed.map((phrase) => paragraph(say.phrase(phrase))),
  ];
}

const drivers = (accounts: readonly DriverAccount[], say: Phrasing): string[] => [
  heading('Drivers', '-'),
  ...accounts.flatMap((account) => accountText(account, say)),
];

/** How many of which driver, by its number in the brief. */
const driverNumber = ({ count, index }: { readonly count: number; readonly index: number }): string =>
  `${count > 1 ? `${count} × ` : ''}#${index + 1}`;

/** The best box of each driver: which one to buy, and why not another. */
function bestOfEach({ perDriver }: Met, say: Phrasing): string[] {
  const [best] = perDriver ?? [];
  if (perDriver === undefined || !best?.ok) return [];
  const others = perDriver.slice(1).map((one) => {
    if (!one.ok) return [`#${one.driverIndex + 1}`, one.because];
    const words = comparison(one, best);
    return [`#${one.driverIndex + 1}`, `its best box is ${words.length > 0 ? words.join(', ') : 'just as good'}`];
  });
  const rows = perDriver.flatMap((one) =>
    one.ok
      ? [
          [
            driverNumber({ count: one.count, index: one.driverIndex }),
            say.reach(one.depth, one.endOfSearch),
            say.decibels(one.level),
            say.volume(one.volume),
            one.points.toFixed(1),
            one.called,
          ],
        ]
      : [],
  );
  return [
    heading('The best box of each driver', '-'),
    table(
      'll',
      [...perDriver]
        .sort((a, b) => a.driverIndex - b.driverIndex)
        .map((one) => [`#${one.driverIndex + 1}`, `"${one.name}"`]),
    ),
    paragraph(
      `By the weights of this brief, #${best.driverIndex + 1} serves best: its box has ${best.points.toFixed(1)} points.`,
    ),
    table('lrrrrl', [['driver', 'down to', 'level', 'outside', 'points', 'box'], ...rows]),
    table('ll', others),
    paragraph(
      'One point is one decibel of greatest level, a tenth of an octave of depth, a tenth of a halving of the outer volume, or a tenth of a metre of vent to print, each times its weight. Price, sound above the band and supply are not judged here.',
    ),
  ];
}

/** All designs side by side. */
function overview({ designs, asked, perDriver }: Met, say: Phrasing): string[] {
  const several = perDriver !== undefined;
  const rows = designs.map((design) => [
    design.name,
    design.leaning,
    ...(several ? [driverNumber(design.drivers)] : []),
    say.reach(design.response.depth, design.response.endOfSearch),
    design.response.f3 === undefined ? '' : say.hertz(design.response.f3),
    say.decibels(design.loudness.level),
    design.box.outer.map(say.bareLength).join(' × '),
    say.phrase(design.told.brief),
  ]);
  const unit = say.lengthUnit;
  const round = designs.some(({ vent }) => vent !== undefined);
  const apart = designs.filter(({ words }) => words.length > 0).map(({ name, words }) => [name, words.join(', ')]);
  return [
    table(several ? 'lllrrrll' : 'llrrrll', [
      ['', 'leaning', ...(several ? ['driver'] : []), 'down to', 'f3', 'level', `outside, ${unit}`, `parts, ${unit}`],
      ...rows,
    ]),
    paragraph(
      `Down to: the lowest frequency at which the box still plays the wanted level within every limit, with a response that has fallen by at most ${say.decibels(asked.fall)}. f3: the frequency at which the response has fallen by 3 dB (half power), whatever the level${asked.at === 'listener' ? ', at 1 m in half space' : ''}. Level: the loudest steady tone that the box can play at every frequency of the band, ${asked.at === 'listener' ? 'at the listener' : 'at 1 m, with the box on the floor (half space)'}.${endOfSearchText([...designs.map(({ response }) => response), ...(perDriver ?? []).filter((one) => one.ok)])}${round ? ' Parts: the inner diameter of a vent × its length.' : ''}${several ? ' Driver: its number in the list below.' : ''}`,
    ),
    ...(apart.length > 0 ? [`Compared with ${designs[0]?.name}:\n${table('ll', apart)}`] : []),
  ];
}

function metText(answer: Met, say: Phrasing): string[] {
  const [first, ...others] = answer.designs;
  if (first === undefined) return [];
  const count = answer.designs.length;
  return [
    paragraph(
      `${count > 1 ? `Every wish is met. You can choose from ${inWords(count)} boxes.` : 'Every wish is met, by one box.'} ${summary(first, say)}`,
    ),
    ...(answer.leftOut
      ? [paragraph(`Other boxes cannot have the alignment of this brief. ${answer.leftOut.join(' ')}`)]
      : []),
    ...overview(answer, say),
    ...bestOfEach(answer, say),
    ...designInFull(first, say),
    ...others.flatMap((design) => designInShort(design, say)),
    ...drivers(answer.drivers, say),
  ];
}

function notMetText({ because, conflict, nearest, drivers: accounts }: NotMet, say: Phrasing): string[] {
  const first = nearest?.answer.designs[0];
  const others = nearest?.changes.some((change) => conflict.every(({ path }) => path !== change.path));
  const near =
    nearest && first
      ? [
          heading('The nearest brief that can be met', '-'),
          paragraph(
            `The brief can be met with the changes below.${others ? ' Some of them are to wishes that are not in the list above. They would be the next ones in the way.' : ''}`,
          ),
          table('lll', [['change', 'from', 'to'], ...nearest.changes.map(({ path, from, to }) => [path, from, to])]),
          paragraph(`With these changes you can build this box. ${summary(first, say)}`),
          ...overview(nearest.answer, say),
          ...designInFull(first, say),
        ]
      : [paragraph('The search found no similar brief that can be met.')];
  return [
    paragraph(`No box meets every wish. ${because.join(' ')}`),
    ...(conflict.length > 0
      ? [table('ll', [['field', 'wish'], ...conflict.map(({ path, wish }) => [path, wish])])]
      : []),
    ...near,
    ...drivers(accounts, say),
  ];
}

/**
 * The printed report of an answer, at most 80 columns wide. It says which box to build, what to cut and to print, how deep and
 * how loud the box plays, and which limit it reaches first; or which wishes conflict, and what to ask for instead. Each caution
 * stands at its step.
 *
 * @example reportText(design(brief), { length: 'mm' })
 */
export function reportText(given: Answer, units: Units = {}): string {
  const answer = printable(given);
  const say = phrasing(units);
  const blocks = answer.ok ? metText(answer, say) : notMetText(answer, say);
  return `${[heading(answer.title, '='), ...blocks].join('\n\n')}\n`;
}

/**
 * The printed report of one box of an answer alone.
 *
 * @example designText('The whale bench', answer.designs[1], { length: 'mm' })
 */
export function designText(title: string, given: Design, units: Units = {}): string {
  const design = printable(given);
  const say = phrasing(units);
  return `${[heading(visible(title), '='), paragraph(summary(design, say)), ...designInFull(design, say)].join('\n\n')}\n`;
}
