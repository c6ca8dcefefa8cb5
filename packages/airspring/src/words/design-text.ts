import { capital } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import type { Margin } from '../record/design-parts.js';
import type { Design } from '../record/design-record.js';
import type { Played } from '../record/played.js';
import { BINDS } from '../record/prices.js';
import { alignmentTable, alignmentText } from './alignment-text.js';
import { buildText, cautionOf, cutList, driversText, partsText, shapeText } from './build-text.js';
import { heardBlocks } from './heard-text.js';
import { impedanceText } from './impedance-text.js';
import { caution, heading, paragraph, table } from './layout.js';
import type { Phrasing } from './phrasing.js';
import {
  belowText,
  deepest,
  filterText,
  loudest,
  loudText,
  protectionText,
  stretches,
  uncertainText,
  ventAtWanted,
} from './play-text.js';
import { pricesText } from './prices-text.js';
import { scatterText } from './scatter-text.js';

const binds = ({ relative }: Margin): boolean => relative > -BINDS;

/** What is left before a limit is reached; for levels in decibels, since a decibel is already a ratio. */
function room(margin: Margin, say: Phrasing): string {
  if (binds(margin)) return 'at its limit';
  const left = margin.limit.endsWith(' dB')
    ? say.decibels(-20 * Math.log10(1 + margin.relative))
    : say.percent(-margin.relative);
  return `${left} left`;
}

/** Every limit of the brief, the tightest first. */
const marginTable = ({ margins }: Pick<Design, 'margins'>, say: Phrasing): string =>
  table('lrlrr', [
    ['quantity', 'this box', '', 'limit', ''],
    ...[...margins]
      .sort((a, b) => b.relative - a.relative)
      .map((margin) => [margin.what, margin.value.replace(/^-/, '−'), margin.sense, margin.limit, room(margin, say)]),
  ]);

const bindingText = ({ margins }: Design): string => {
  const tight = margins.filter(binds).map(({ what }) => what);
  return tight.length > 0 ? `At its limit: ${tight.join(', ')}.` : 'Nothing is at its limit.';
};

function warningText(warning: Design['warnings'][number]): string {
  if (warning.code === 'neglected') return `Neglected: ${warning.text}`;
  const { path, got, expected } = warning;
  const [, estimate] = expected.split('; this is an estimate, ');
  return estimate === undefined
    ? `Outside the range of a formula: ${path} is ${got.toPrecision(4)}. The formula is made for ${expected}.`
    : `An estimate: no exact end correction is known for ${path}, ${estimate}.`;
}

const head = ({ name, leaning, called }: Design): string => heading(`Box ${name}, ${leaning}: ${called}`, '-');

/** The answer in one paragraph: which box it is, how deep and how loud it plays, and which limit it reaches first. */
export function summary(design: Design, say: Phrasing): string {
  const { name, leaning, called, drivers, box, told } = design;
  return [
    `Box ${name}, the ${leaning} one, is ${called} for ${driversText(drivers)}. It measures ${say.sizes(box.outer)} outside (width × height × depth).${shapeText(box, say)}`,
    deepest(design, say),
    say.phrase(told.summary),
    loudest(design, say),
    ventAtWanted(design, say),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** Which alignment a design comes near to, with its head, and the others. */
function alignmentBlocks(design: Design, say: Phrasing): string[] {
  const text = alignmentText(design, say);
  return text === undefined ? [] : ['ALIGNMENT', paragraph(text), ...alignmentTable(design, say)];
}

/** How loud it plays and what it does below its band, with what is uncertain of it. */
export const playingBlocks = (design: Played, say: Phrasing, uncertain: readonly string[] = []): string[] => [
  'HOW LOUD IT PLAYS, AND WHAT LIMITS IT',
  ...loudText(design, say),
  ...filterText(design, say),
  ...uncertain,
  ...belowText(design, say),
  ...heardBlocks(design, say),
  'BELOW THE BAND',
  ...protectionText(design, say),
];

/** How near it comes to every limit. */
export const limitBlocks = (design: Played, say: Phrasing): string[] => [
  ...cautionOf(design, cautions.mains),
  'WHAT IS AT ITS LIMIT, AND WHAT IS NOT',
  marginTable(design, say),
];

/** A design in full. */
export const designInFull = (design: Design, say: Phrasing): string[] => {
  const due = Object.values<string>(cautions);
  return [
    head(design),
    'TO CUT AND TO PRINT',
    ...buildText(design, say),
    ...playingBlocks(design, say, [...uncertainText(design, say), ...scatterText(design, say)]),
    'IMPEDANCE',
    paragraph(impedanceText(design, say)),
    table(
      'lr',
      design.numbers.map(({ what, value }) => [what, say.phrase(value)]),
    ),
    ...alignmentBlocks(design, say),
    ...limitBlocks(design, say),
    ...pricesText(design),
    ...design.warnings.map((warning) => paragraph(warningText(warning))),
    ...design.cautions.filter((text) => !due.includes(text)).map(caution),
  ];
};

/** A design other than the first: what to build, and how it differs. */
export const designInShort = (design: Design, say: Phrasing): string[] => [
  head(design),
  paragraph(
    `${capital(driversText(design.drivers))}. The box measures ${say.sizes(design.box.outer)} outside (width × height × depth).${shapeText(design.box, say)}`,
  ),
  ...cutList(design, say),
  ...partsText(design, say),
  paragraph(`${deepest(design, say)} ${loudest(design, say)}`),
  ...filterText(design, say),
  ...uncertainText(design, say),
  ...scatterText(design, say),
  ...belowText(design, say),
  stretches(design, say),
  ...protectionText(design, say).slice(0, 2),
  ...alignmentBlocks(design, say).slice(1, 2),
  paragraph(impedanceText(design, say)),
  paragraph(bindingText(design)),
  ...pricesText(design),
  ...design.warnings.map((warning) => paragraph(warningText(warning))),
];
