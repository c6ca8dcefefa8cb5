import { NANOMETRE } from '@airspring/core/quantity';
import { caution, figure, list, paragraph, section, table } from './markup.js';
import { designedWall, FLANGE, onBed, type Printing, printerAssumed } from './printing.js';
import type { Says } from './says.js';
import type { Work } from './work.js';

/** What of a vent decides how it is printed. */
interface Printed {
  readonly bent: boolean;
  readonly flared: boolean;
  /** Whether a bent piece lies on its side, and whether each does. */
  readonly lying: 'none' | 'some' | 'each';
  /** Whether one of these has the flange. */
  readonly flangeLies: boolean;
}

/** How the bent pieces of vents are printed. */
export function lyingOf(vents: readonly { readonly lying: readonly boolean[]; readonly bent: boolean }[]) {
  const bent = vents.filter((vent) => vent.bent);
  const lies = bent.filter(({ lying }) => lying.includes(true));
  return {
    bent: bent.length > 0,
    lying: lies.length === 0 ? ('none' as const) : lies.length < bent.length ? ('some' as const) : ('each' as const),
    flangeLies: bent.some(({ lying }) => lying[0]),
  };
}

/** How a piece is told in a table. */
export const pieceTold = (name: string, lies: boolean | undefined): string =>
  lies ? `${name}; lies on its side` : name;

/** Heads of a table of printed pieces. */
export const PIECES = ['', 'piece', 'along the centre line', 'in the printer: width × depth × height'] as const;

const SUPPORTED = 'have the printer support it from below and inside, and clear the bore.';

const supports = ({ bent, flared, lying, flangeLies }: Printed): string =>
  [
    `Stand each ${lying === 'none' ? '' : 'straight '}piece on its outer end, as its file does.`,
    flangeLies
      ? 'Where no joint finds room before the bend, the flange stands on its edge, beside the elbow that lies.'
      : 'The flange then lies flat on the bed.',
    ...(lying === 'none'
      ? []
      : [
          `The printer is too low for ${lying === 'each' ? 'an' : 'each'} elbow to stand. One that lies on its side, as its file does, touches the bed along a line: ${SUPPORTED}`,
        ]),
    ...(bent && lying !== 'each' ? [`The arm of an elbow hangs free: ${SUPPORTED}`] : []),
    ...(flared ? ['A wide inner flare needs support as well.'] : []),
    ...(bent || flared ? [] : ['No overhang needs support.']),
  ].join(' ');

/** Rules of thumb of those who print parts for loudspeakers (common practice). */
export const advice = (vent: Printed): readonly string[] => [
  supports(vent),
  'The flange lies on the outside of the panel, or flush in a recess as deep as it is thick. The vent keeps its length in both.',
  'Leave room on the bed for what the printer lays around a piece, such as a brim.',
  'Three walls or more and 30 % infill make a tube airtight enough. Thin walls of the first layers leak: brush the outside with thinned glue where light shines through.',
  'Join pieces with glue for the plastic, spigot into socket, until the shoulder sits. Wipe off what wells out inside.',
  `Smooth the joints inside${vent.flared ? ' and the flares' : ''} with fine paper, and wear a mask for it. A ridge in the narrowest part makes noise.`,
  'Do not use PLA in a car: it softens at about 60 °C. PETG and ABS bear more.',
];

/** What the printer makes, how its pieces are joined, and what the solid itself says of its tuning. */
export function printingSection(work: Work, printings: readonly Printing[], says: Says): string {
  const parts = printings.flatMap(
    ({ vent, wall, nozzle, flangeDiameter, parts: pieces, cuts, lying, picture, detuning, mass }, nth) => {
      const asked = designedWall(vent);
      /** The rest of the pages speaks of the tube as it is designed. */
      const designed = (length: number) => (wall > asked + NANOMETRE ? `; the design has ${says(length)}` : '');
      const ends = [0, ...cuts, vent.length];
      const rows = pieces.map(({ name, mesh }, i) => [
        `${vent.count} ×`,
        pieceTold(name, lying[i]),
        `${says(ends[i]!)} to ${says(ends[i + 1]!)}`,
        onBed(mesh, says),
      ]);
      const off = detuning === undefined ? undefined : Math.abs(detuning * vent.fb);
      return [
        `<div class="pair">${figure(picture, `One vent${vent.chamber ? ` of the ${vent.chamber} chamber` : ''}, all pieces joined, seen from behind the flange.`)}<div>`,
        table(
          [],
          [
            ['inner diameter', says(vent.diameter)],
            [
              'wall',
              `${says(wall)}, ${Math.round(wall / nozzle)} lines of a nozzle of ${says(nozzle)}${designed(asked)}`,
            ],
            ['outer diameter', `${says(vent.diameter + 2 * wall)}${designed(vent.diameter + 2 * asked)}`],
            ['flange', `${says(flangeDiameter)}, ${says(FLANGE)} thick`],
            ['length along the centre line', says(vent.length)],
            [`tunes the ${vent.chamber ? `${vent.chamber} chamber` : 'box'} to`, `${vent.fb.toFixed(1)} Hz`],
            ['plastic, printed solid', `about ${Math.round(1e3 * mass)} g`],
            ...(printings.length > 1 ? [['its files', `folder vent-${nth + 1}`]] : []),
          ],
        ),
        '</div></div>',
        ...(off === undefined
          ? []
          : [
              paragraph(
                `The solid was measured slice by slice: as printed it tunes ${off < 0.005 ? 'to within 0.01 Hz of its drawing' : `${off.toFixed(2)} Hz ${detuning! > 0 ? 'higher' : 'lower'} than its drawing`}.`,
              ),
            ]),
        table(PIECES, rows),
      ];
    },
  );
  return section(
    'Print',
    [
      caution(work.cautions.fumes),
      ...printerAssumed(work.tools, says, work.vents).map(paragraph),
      ...parts,
      '<h3>How to print and join (common practice)</h3>',
      list(
        advice({
          ...lyingOf(printings.map(({ vent, lying }) => ({ lying, bent: vent.bend !== undefined }))),
          flared: work.vents.some(({ flare }) => flare),
        }),
      ),
    ].join('\n'),
    'flows',
  );
}
