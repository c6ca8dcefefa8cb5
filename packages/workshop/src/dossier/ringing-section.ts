import { capital } from '../drawing/drawing.js';
import { airOf } from './brace-air.js';
import { listed } from './listed.js';
import { paragraph, section, table } from './markup.js';
import { ALIKE, braced, weakest } from './ringing.js';
import type { ChosenBrace, Ringing, RingingPanel } from './ringing-record.js';
import { knownBoard } from './sawing.js';
import type { Says } from './says.js';
import { standingWaves } from './standing-waves.js';
import type { Work, WorkBox } from './work.js';

type Band = NonNullable<Work['band']>;

/** Whole hertz: the numbers are good to a quarter. */
const hertz = (frequency: number): string => `${Math.round(frequency)} Hz`;
const range = ({ resonance: { lowest, highest } }: RingingPanel): string =>
  `${Math.round(lowest)} to ${hertz(highest)}`;
const facesOf = (panels: readonly RingingPanel[]) => listed(panels.map(({ face }) => face));

/** Rounded as it is shown, so that a word never contradicts the number beside it. */
const place = ({ resonance: { lowest, highest } }: RingingPanel, { from, to }: Band): string => {
  const [low, high] = [Math.round(lowest), Math.round(highest)];
  if (low > to) return 'above the band';
  if (high < from) return 'below the band';
  return low >= from && high <= to ? 'in the band' : 'may be in the band';
};
const mayRing = (panels: readonly RingingPanel[], band: Band) =>
  panels.filter((panel) => !/above|below/.test(place(panel, band)));

/** Sides shorter than this many thicknesses bend in another way as well. */
const THIN = 10;
/** Thickest board that is proposed, m. */
const THICKEST = 0.03;

const FROM = { width: 'left', height: 'lower', depth: 'front' } as const;

/** What to do about the panels of a box. */
function adviceOf(
  { panels, brace, because, untold = [] }: Required<Pick<Ringing, 'panels'>> & Ringing,
  band: Band,
  box: WorkBox,
  work: Work,
  says: Says,
) {
  const bandText = `${hertz(band.from)} to ${hertz(band.to)}`;
  const ringing = mayRing(panels, band);
  const lowest = weakest(panels);
  const where = facesOf(panels.filter(({ resonance }) => Math.round(resonance.lowest) === Math.round(lowest)));
  const cut = work.tools.brace !== undefined && brace !== undefined;
  const made = brace
    ? [capital(braceText(brace, panels, box, cut, says)), ...(cut ? [] : [airOf(brace, box, work)])]
    : [];
  if (ringing.length === 0) {
    const above = panels.every((panel) => place(panel, band) === 'above the band');
    return [
      above
        ? `No brace is needed: every panel ${untold.length > 0 ? 'in the table ' : ''}has its first resonance above the band of ${bandText}. The lowest is that of the ${where}, at ${hertz(lowest)} or higher. It matters only if higher tones reach this box.`
        : `No brace is needed: no panel ${untold.length > 0 ? 'in the table ' : ''}has its first resonance in the band of ${bandText}.`,
      ...made,
    ];
  }
  const told = `The first resonance of the ${facesOf(ringing)} may lie in the band of ${bandText}. A panel that rings there sounds along, and long after.`;
  if (brace === undefined) {
    const none = because === undefined ? [] : [`No window brace is proposed: ${because}.`];
    return [told, ...none, thicker(weakest(ringing), band, box, says)];
  }
  const left = mayRing(brace.panels, band);
  return [
    told,
    ...made,
    left.length === 0
      ? `With it no panel has its first resonance in the band.`
      : `Even with it, that of the ${facesOf(left)} may lie in the band. ${thicker(weakest(left), band, box, says)}`,
    `Do not make it narrower: with a border of ${says(brace.border / 2)} the lowest rings at ${hertz(brace.narrow)}, because a narrow border bends with the panels.`,
  ];
}

/** The brace, where it is, and what it gains. */
function braceText(
  brace: ChosenBrace,
  panels: readonly RingingPanel[],
  box: WorkBox,
  cut: boolean,
  says: Says,
): string {
  const standing = braced(brace.panels, panels);
  const after = weakest(standing);
  const without = weakest(panels.filter((_, i) => standing.includes(brace.panels[i]!)));
  const gains =
    after > ALIKE * without
      ? `at ${hertz(after)} or higher, ${(after / without).toFixed(1)} times the ${hertz(without)} without it`
      : 'no higher than without it';
  const what = cut ? 'the window brace of these pages' : 'the window brace that helps most and has room';
  const ask = cut ? '' : ' To have it cut, nested and drawn, write "brace": {} into the "workshop" of the brief.';
  return `${what} is a board of ${says(box.thickness)} across the ${brace.across}, its middle ${says(brace.at)} from the ${FROM[brace.across]} outer edge, with a border of ${says(brace.border)} around its opening. It stands on the ${facesOf(standing)}. The lowest of them then rings ${gains}.${ask}`;
}

/** The board that would lift a resonance above the band: frequencies grow as the thickness. */
function thicker(lowest: number, { to }: Band, { thickness }: WorkBox, says: Says): string {
  const needed = Math.ceil((1e3 * thickness * to) / lowest) / 1e3;
  return needed <= THICKEST
    ? `A board of ${says(needed)} would lift it above the band.`
    : 'No usual board would lift it above the band: use two braces, or glue a second board on the inside.';
}

/** Where the panels ring, whether that is in the band, and what a brace gains. */
export function ringingSection(work: Work, ringing: Ringing, says: Says): string {
  const { band, box, tools } = work;
  const { panels, brace, dividing = [], untold = [] } = ringing;
  if (band === undefined || box === undefined || panels === undefined) return '';
  const standing = brace ? braced(brace.panels, panels) : [];
  const cells = panels.map((panel, i) => {
    const withIt = brace?.panels[i];
    const stands = withIt !== undefined && standing.includes(withIt);
    return [
      `${says(panel.width)} × ${says(panel.height)}`,
      range(panel),
      place(panel, band),
      ...(brace ? (stands ? [range(withIt), place(withIt, band)] : ['as without', '']) : []),
    ];
  });
  // Opposite panels are mostly alike.
  const alike = new Map<string, string[]>();
  panels.forEach(({ face, cut }, i) => {
    const key = JSON.stringify(cells[i]);
    alike.set(key, [...(alike.get(key) ?? []), `${face}${cut ? ' *' : ''}`]);
  });
  const rows = [...alike].map(([key, names]) => [names.join(', '), ...(JSON.parse(key) as string[])]);
  const { name, known } = knownBoard(tools);
  const short = panels.filter(({ width, height, thickness }) => Math.min(width, height) < THIN * thickness);
  const cut = panels.filter((panel) => panel.cut);
  const notes = [
    ...standingWaves(box, band, says),
    ...untold,
    'How this is worked out: each panel is a thin plate between the panels around it. The lower number is for edges that may turn and a heavy, soft board, the higher one for edges that cannot turn and a light, stiff board; glue lies between them. Of a brace the lower number is for a bar that bends with the panel, the higher one for a line that cannot move. The air on both sides is left out.',
    ...(dividing.length > 0
      ? [
          `The ${listed(dividing)} ${dividing.length > 1 ? 'hold' : 'holds'} the panels as a brace does: that is counted, with the brace and without it.`,
        ]
      : []),
    known
      ? `The stiffness of ${name}, and how much boards of it differ, is common practice.`
      : `The stiffness of "${name}" is not known here: that of fibreboard was taken.`,
    ...(cut.length > 0
      ? [
          `* Something is cut into the ${facesOf(cut)}. That and what is fitted there are left out: a driver may move this resonance either way.`,
        ]
      : []),
    ...(short.length > 0
      ? [
          `The ${facesOf(short)} ${short.length > 1 ? 'are' : 'is'} shorter than ten times the thickness: thin plates are not quite what they are, and they ring lower than told.`,
        ]
      : []),
  ];
  const head = ['panel', 'clear size', 'first resonance', '', ...(brace ? ['with the brace', ''] : [])];
  return section(
    'Panels that ring',
    [
      ...adviceOf({ ...ringing, panels }, band, box, work, says).map(paragraph),
      table(head, rows),
      ...notes.map(paragraph),
    ].join('\n'),
    'flows',
  );
}
