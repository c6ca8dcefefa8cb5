import type { Design, Margin } from '../record/answer.js';
import { cautions } from '../record/cautions.js';
import { buildText, cautionOf, cutList, driversText, partsText } from './build-text.js';
import { caution, heading, paragraph, table } from './layout.js';
import type { Phrasing } from './phrasing.js';
import { belowText, deepest, impedanceText, loudest, loudText, protectionText, stretches } from './play-text.js';

/** Nearer than this to a limit, a wish binds. */
const BINDS = 0.005;
const binds = ({ relative }: Margin): boolean => relative > -BINDS;

/** What is left of a limit; levels in decibels, since a decibel is a ratio already. */
function room(margin: Margin, say: Phrasing): string {
  if (binds(margin)) return 'binds';
  const left = margin.limit.endsWith(' dB')
    ? say.decibels(-20 * Math.log10(1 + margin.relative))
    : say.percent(-margin.relative);
  return `${left} to spare`;
}

/** Limits of the brief, the tightest first. */
const marginTable = ({ margins }: Design, say: Phrasing): string =>
  table('lrlrr', [
    ['limit', 'this box', '', 'the brief', ''],
    ...[...margins]
      .sort((a, b) => b.relative - a.relative)
      .map((margin) => [margin.what, margin.value, margin.sense, margin.limit, room(margin, say)]),
  ]);

const bindingText = ({ margins }: Design): string => {
  const tight = margins.filter(binds).map(({ what }) => what);
  return tight.length > 0 ? `What binds: ${tight.join(', ')}.` : 'No limit of the brief binds.';
};

const warningText = (warning: Design['warnings'][number]): string =>
  warning.code === 'neglected'
    ? `Neglected: ${warning.text}`
    : warning.expected.startsWith('an estimate: ')
      ? `${warning.path} is ${warning.expected}.`
      : `Outside the range of a formula: ${warning.path} is ${warning.got.toPrecision(4)}, and ${warning.expected} is what it was made for.`;

const head = ({ name, leaning, called }: Design): string => heading(`Box ${name}, ${leaning}: ${called}`, '-');

/** The answer in one paragraph: which box, how loud, how deep, and what gives out first. */
export function summary(design: Design, say: Phrasing): string {
  const { name, leaning, called, drivers, box, told } = design;
  return [
    `Box ${name}, the ${leaning} one, is ${called} with ${driversText(drivers)}, ${say.sizes(box.outer)} outside (width, height, depth).`,
    deepest(design, say),
    say.phrase(told.summary),
    loudest(design, say),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** A design in full. */
export const designInFull = (design: Design, say: Phrasing): string[] => {
  const due = Object.values<string>(cautions);
  return [
    head(design),
    'TO CUT AND TO PRINT',
    ...buildText(design, say),
    'HOW LOUD, AND WHAT GIVES OUT FIRST',
    ...loudText(design, say),
    ...belowText(design, say),
    'BELOW THE BAND',
    ...protectionText(design, say),
    'IMPEDANCE',
    paragraph(impedanceText(design, say)),
    table(
      'lr',
      design.numbers.map(({ what, value }) => [what, say.phrase(value)]),
    ),
    ...cautionOf(design, cautions.mains),
    'WHAT BINDS, AND WHAT HAS ROOM',
    marginTable(design, say),
    ...design.warnings.map((warning) => paragraph(warningText(warning))),
    ...design.cautions.filter((text) => !due.includes(text)).map(caution),
  ];
};

/** A design beside the first: what to build, and how it differs. */
export const designInShort = (design: Design, say: Phrasing): string[] => [
  head(design),
  paragraph(
    `${driversText(design.drivers)}, ${say.sizes(design.box.outer)} outside.`.replace(/^./, (letter) =>
      letter.toUpperCase(),
    ),
  ),
  ...cutList(design, say),
  ...partsText(design, say),
  paragraph(`${deepest(design, say)} ${loudest(design, say)}`),
  ...belowText(design, say),
  stretches(design, say),
  paragraph(`${protectionText(design, say)[0] ?? ''} Impedance: ${impedanceText(design, say)} ${bindingText(design)}`),
  ...design.warnings.map((warning) => paragraph(warningText(warning))),
];
