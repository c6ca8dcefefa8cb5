import { drawn } from './changing.js';
import { caution, figure, list, paragraph, section, table } from './markup.js';
import { advice, lyingOf, PIECES, pieceTold } from './printed.js';
import { onBed, printerAssumed } from './printing.js';
import type { Says } from './says.js';
import type { SetPrinting } from './set-printing.js';
import type { TubePrinting } from './tube-printing.js';
import type { ChangeWork } from './work.js';

const hertz = (f: number): string => `${f.toFixed(1)} Hz`;

/** How the printed part tunes beside the report. */
const tuningTold = ({ designed, printed }: { readonly designed: number; readonly printed: number }): string => {
  const off = printed - designed;
  return Math.abs(off) < 0.05
    ? `${hertz(designed)}, within 0.05 Hz`
    : `${hertz(printed)}, ${Math.abs(off).toFixed(2)} Hz ${off > 0 ? 'higher' : 'lower'}`;
};

/** What tells the tuning of a solid from that of the report. */
const COUNTED =
  'The solids were measured slice by slice for this. What differs from the report is the wall, which leaves the tube its play in the hole, and what stands out in front of the panel, which leaves more air behind it. What plastic does after printing is not counted.';

/** Pieces between the joints of a tube, a row each. */
function pieceRows(
  {
    parts,
    cuts,
    length,
    lying = [],
  }: Pick<TubePrinting, 'parts' | 'cuts' | 'length'> & Partial<Pick<TubePrinting, 'lying'>>,
  count: number,
  says: Says,
): string[][] {
  const ends = [0, ...cuts, length];
  return parts.map(({ name, mesh }, i) => [
    `${count}\u00a0×`,
    pieceTold(name, lying[i]),
    `${says(ends[i]!)} to ${says(ends[i + 1]!)}`,
    onBed(mesh, says),
  ]);
}

function gluedTube(work: ChangeWork, tube: TubePrinting, says: Says): string {
  const sizes = [
    ['inner diameter', says(tube.diameter)],
    ['outer diameter', says(tube.outerDiameter)],
    ...(tube.flangeDiameter === undefined ? [] : [['flange', says(tube.flangeDiameter)]]),
    ['length of the printed part', says(tube.length)],
    ['the report tunes the box to', hertz(tube.designed)],
    ['the printed part tunes it to', tuningTold(tube)],
    ['plastic, printed solid', `about ${Math.round(1e3 * tube.mass)} g`],
  ];
  return [
    `<div class="pair">${figure(tube.picture, `The ${tube.name}, all pieces joined.`)}<div>${table([], sizes)}</div></div>`,
    table(PIECES, pieceRows(tube, tube.count, says)),
    drawn(
      work,
      tube.section,
      `The ${tube.name} in its panel, cut along the middle. Broken lines show where pieces meet.`,
    ),
  ].join('\n');
}

function tubesOfSet(work: ChangeWork, set: SetPrinting, says: Says): string {
  const { vent, outerDiameter, flange, head, tubes, pictures, collar, mass } = set;
  const cord = vent.cord.thickness;
  const sizes = [
    ['hole in the panel', says(vent.hole)],
    ['flange', `${says(vent.flangeDiameter)}, stands out ${says(vent.proud)}`],
    ['tubes', `${says(outerDiameter)} outer diameter`],
    ['gap between tube and flange', `${says(vent.clearance)} all round`],
    [
      'cord',
      `${says(cord)} round, ${says(Math.ceil(vent.cord.length * 1e3) / 1e3)} for each ${collar ? 'collar' : 'tube'}`,
    ],
    ['plastic, printed solid', `about ${Math.round(1e3 * mass)} g`],
  ];
  const pieces = [
    ['1\u00a0×', 'flange', '', onBed(flange.mesh, says)],
    ...(collar ? [[`${tubes.length}\u00a0×`, 'collar', '', onBed(collar.mesh, says)]] : []),
    ...tubes.flatMap((tube) => pieceRows(tube, 1, says)),
  ];
  return [
    `<div class="pair">${pictures.map(([picture, words]) => figure(picture, words)).join('')}</div>`,
    table([], sizes),
    drawn(
      work,
      head,
      `Flange and tube, cut along the middle. Glue joins the flange to the panel. The tube is pushed in until its rim rests in the flange. The cord lies in the groove${vent.seated === 'on the panel' ? ', in front of the panel' : ''}.`,
      '160 mm',
    ),
    paragraph(
      vent.seated === 'on the panel'
        ? 'The flange lies on the panel: the hole has room for the tube, and none for a sleeve around it.'
        : 'The sleeve of the flange stands in the hole.',
    ),
    table(
      ['tube', 'report', 'as printed'],
      tubes.map((tube) => [tube.name.replace(/^tube /, ''), hertz(tube.designed), tuningTold(tube)]),
    ),
    table(PIECES, pieces),
    ...tubes.map((tube) => drawn(work, tube.section, `The ${tube.name}, in its flange.`, '105 mm')),
  ].join('\n');
}

/** What the printer makes, and what the solids themselves say of the tuning. */
export function changePrinting(
  work: ChangeWork,
  tubes: readonly TubePrinting[],
  set: SetPrinting | undefined,
  says: Says,
): string {
  const { cautions, change } = work;
  if (tubes.length === 0 && set === undefined) return '';
  return section(
    'Print',
    [
      caution(cautions.fumes),
      ...printerAssumed(work.tools, says, [...change.tubes, ...(change.set ? [change.set] : [])]).map(paragraph),
      ...tubes.map((tube) => gluedTube(work, tube, says)),
      ...(set ? [tubesOfSet(work, set, says)] : []),
      paragraph(COUNTED),
      '<h3>How to print and join (common practice)</h3>',
      list(
        advice({
          ...lyingOf(tubes),
          flared: [...change.tubes, ...(change.set ? [change.set] : [])].some(({ rounding }) => rounding > 0),
        }),
      ),
    ].join('\n'),
  );
}
