import type { DesignVent } from './build-record.js';
import type { FlareForm } from './flare-form.js';
import type { KindRecord } from './kind-record.js';
import type { Phrase } from './phrase.js';
import type { RoundVentSettings } from './round-vent-fields.js';
import type { VentNames } from './vents.js';
import { airSpeedNote, capital, inWords, moreLength } from './wording.js';

const JOIN_INSIDE = 'Join it inside the box before you close the box.';

/** The way of a vent from the panel inwards. */
function wayOf({ bend, face, count }: DesignVent, begins: string | undefined): Phrase {
  const it = count > 1 ? 'each' : 'it';
  if (bend === undefined) return [count > 1 ? 'They run straight.' : 'It runs straight.'];
  return [
    `From ${begins ?? `the ${face}`}, ${it} runs `,
    [bend.firstLeg, 'length'],
    ` straight and then turns towards the ${bend.towards} in an elbow of 90° (radius `,
    [bend.radius, 'length'],
    ', ',
    [bend.arc, 'length'],
    ' along the centre line)',
    ...(bend.secondLeg > 0 ? ['. After the elbow it runs ', [bend.secondLeg, 'length'] as const, ' straight'] : []),
    `. A bent tube does not go through its hole. ${JOIN_INSIDE}`,
  ];
}

/** How several vents stand, and how that changes their length. */
const rowWords = ({ count }: DesignVent): Phrase[] =>
  count > 1
    ? [
        [
          'The vents stand in a row. Each of them adds to the mass of air that moves at the ends of the others. Their length allows for that.',
        ],
      ]
    : [];

/** What an end looks like. */
function formWords(radius: number, { ellipse, exponential, profile = [] }: FlareForm = {}): Phrase {
  if (ellipse) return ['a quarter of an ellipse, ', [ellipse.depth, 'length'], ' deep'];
  if (exponential) return ['a flare that grows exponentially, ', [exponential.depth, 'length'], ' deep'];
  const depth = profile.at(-1)?.[0];
  if (depth !== undefined)
    return [`a flare by the ${profile.length} points of the brief, `, [depth, 'length'], ' deep'];
  return ['a quarter round of ', [radius, 'length'], ' radius'];
}

/** The rounded ends of a vent, and how it gets into the box. */
function flareWords({ flare, face, outerDiameter, bend, count }: DesignVent): Phrase[] {
  if (flare === undefined) return [];
  // How a bent tube gets in has already been said.
  const wide = flare.inner > flare.outer && bend === undefined;
  const end = (where: string, radius: number, form: FlareForm | undefined): Phrase =>
    radius > 0
      ? [
          `The ${where} end${count > 1 ? ' of each vent' : ''} is `,
          ...formWords(radius, form),
          ', which widens the tube to ',
          [outerDiameter + 2 * radius, 'length'],
          ' outer diameter. ',
        ]
      : [`The ${where} end is not rounded. `];
  return [
    [
      ...end('outer', flare.outer, flare.outerForm),
      ...end('inner', flare.inner, flare.innerForm),
      'The stated length includes the rounding. ',
      ...(wide ? [`The inner end does not go through the hole in the ${face}. ${JOIN_INSIDE} `] : []),
      'The air speed is judged in the straight part, where it is highest.',
    ],
  ];
}

/** Where whole lines of the nozzle make a wall thicker than it was asked for. */
export const wallWords = ({ wall, thickened }: Pick<RoundVentSettings, 'wall' | 'thickened'>): Phrase[] =>
  thickened === undefined
    ? []
    : [
        [
          'The wall of the tube is ',
          [wall, 'length'],
          ` thick instead of `,
          [thickened.asked, 'length'],
          `: the printer lays it in ${inWords(Math.round(wall / thickened.nozzle))} lines of `,
          [thickened.nozzle, 'length'],
          '.',
        ],
      ];

const PRINT = 'Print ';

/** Whether a phrase tells the pieces to print: pages that have the solids of these pieces tell them from the solids. */
export const tellsPieces = ([first]: Phrase): boolean => typeof first === 'string' && first.startsWith(PRINT);

/** What a reader is told about the vents. */
export function ventWords(
  vent: DesignVent,
  { tunes, from }: VentNames = {},
  /** Whether the brief has a printer. */
  hasPrinter = true,
): Pick<KindRecord, 'summary' | 'brief' | 'building' | 'playing'> {
  const { count, diameter, outerDiameter, flangeDiameter, length, fb, pieces, clearance, spare, bend } = vent;
  const many = count > 1;
  const print = `${PRINT}${many ? 'each tube' : 'the tube'} in `;
  const otherwise = hasPrinter || vent.flare ? '' : '; or make it of pipe with these diameters';
  const assumed: Phrase = vent.printer
    ? [
        ' The brief states no printer: this is for one that builds ',
        [vent.printer.height, 'length'],
        ' in each direction (common practice).',
      ]
    : [];
  const printed: Phrase =
    pieces.length > 1
      ? [
          `${print}pieces, for instance ${inWords(pieces.length)}, from the flange inwards: `,
          ...pieces.flatMap((piece, i) => [...(i > 0 ? [', '] : []), [piece, 'length'] as const]),
          `${otherwise}.`,
          ...assumed,
        ]
      : [`${print}one piece${otherwise}.`, ...assumed];
  return {
    summary: [
      `${tunes === undefined ? 'It' : capital(tunes)} is tuned to `,
      [fb, 'frequency'],
      ` by ${inWords(count)} ${many ? 'vents, each' : 'vent'} of `,
      [diameter, 'length'],
      ' inner diameter and ',
      [length, 'length'],
      ` length${bend ? ', with one bend' : ''}.`,
    ],
    brief: [many ? `${count} of ` : '', [diameter, 'bareLength'], ' × ', [length, 'bareLength'], bend ? ', bent' : ''],
    building: [
      [
        `Make ${inWords(count)} ${many ? 'tubes, each' : 'tube'} of `,
        [diameter, 'length'],
        ' inner and ',
        [outerDiameter, 'length'],
        ' outer diameter, with a flange of ',
        [flangeDiameter, 'length'],
        ` diameter. ${many ? 'Each' : 'It'} is `,
        [length, 'length'],
        ` long, measured along its centre line from ${from ?? `the outside of the ${vent.face} panel`}. ${many ? 'Together they tune' : 'It tunes'} ${tunes ?? 'the box'} to `,
        [fb, 'frequency'],
        '. ',
        ...wayOf(vent, from),
        ' Keep ',
        [clearance, 'length'],
        ` of free air in front of ${many ? 'each' : 'its'} inner end.`,
        ...moreLength(spare),
      ],
      printed,
      ...flareWords(vent),
      ...rowWords(vent),
    ],
    playing: [airSpeedNote],
  };
}
