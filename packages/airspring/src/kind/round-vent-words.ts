import type { KindRecord } from './box-kind.js';
import type { DesignVent } from './build-record.js';
import type { Phrase } from './phrase.js';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'] as const;
const inWords = (count: number): string => NUMBERS[count] ?? String(count);
const capital = (text: string): string => text.replace(/^./, (letter) => letter.toUpperCase());

/** Way of a bent vent from the panel inwards. */
function bendWords({ bend, face }: DesignVent): Phrase {
  if (bend === undefined) return ['It runs straight.'];
  return [
    `From the ${face} it runs `,
    [bend.firstLeg, 'length'],
    ` straight, turns towards the ${bend.towards} in an elbow of 90° (radius `,
    [bend.radius, 'length'],
    ', ',
    [bend.arc, 'length'],
    ' along the centre line)',
    ...(bend.secondLeg > 0 ? [', then ', [bend.secondLeg, 'length'] as const, ' straight'] : []),
    '. The bent tube does not pass through its hole: join it inside, before the back goes on.',
  ];
}

/** How several vents stand, and what they do to each other. */
const rowWords = ({ count }: DesignVent): Phrase[] =>
  count > 1
    ? [['They stand in a row. Each makes the air before the others heavier, and their length allows for it.']]
    : [];

/** What the rounded ends of a vent are, and how it gets into the box. */
function flareWords({ flare, face, outerDiameter }: DesignVent): Phrase[] {
  if (flare === undefined) return [];
  const end = (where: string, radius: number): Phrase =>
    radius > 0
      ? [
          `${where} end opens in a quarter round of `,
          [radius, 'length'],
          ' radius to ',
          [outerDiameter + 2 * radius, 'length'],
          ' outer diameter',
        ]
      : [`${where} end is not rounded`];
  return [
    [
      ...end('Its outer', flare.outer),
      '; ',
      ...end('its inner', flare.inner),
      `. Both count in its length. ${flare.inner > flare.outer ? `The inner end does not pass through the hole in the ${face}: join it inside, before the back goes on. ` : ''}The air is fastest in the straight part, and there its speed is judged.`,
    ],
  ];
}

/** What a reader is told of the vents. */
export function ventWords(vent: DesignVent): Pick<KindRecord, 'summary' | 'brief' | 'building' | 'playing'> {
  const { count, diameter, outerDiameter, flangeDiameter, length, fb, face, pieces, clearance, spare, bend } = vent;
  const many = count > 1;
  const print = `Print ${many ? 'each' : 'it'} in `;
  const printed: Phrase =
    pieces.length > 1
      ? [
          `${print}${inWords(pieces.length)} pieces, from the flange inwards: `,
          ...pieces.flatMap((piece, i) => [...(i > 0 ? [', '] : []), [piece, 'length'] as const]),
          '.',
        ]
      : [`${print}one piece.`];
  return {
    summary: [
      'It is tuned to ',
      [fb, 'frequency'],
      ` by ${inWords(count)} ${many ? 'vents, each' : 'vent'} of `,
      [diameter, 'length'],
      ' inner diameter, ',
      [length, 'length'],
      ` long${bend ? ' with one bend' : ''}.`,
    ],
    brief: [many ? `${count} of ` : '', [diameter, 'bareLength'], ' × ', [length, 'bareLength'], bend ? ', bent' : ''],
    building: [
      [
        capital(`${many ? `${inWords(count)} tubes, each` : 'one tube'} of `),
        [diameter, 'length'],
        ' inner diameter, ',
        [outerDiameter, 'length'],
        ' outer, flange ',
        [flangeDiameter, 'length'],
        '; ',
        [length, 'length'],
        ` long on the centre line, counted from the outside of the ${face} panel. ${many ? 'Together they tune' : 'It tunes'} the box to `,
        [fb, 'frequency'],
        '. ',
        ...bendWords(vent),
        ' ',
        ...printed,
        ' Keep ',
        [clearance, 'length'],
        ' of free air in front of its inner end; ',
        [spare, 'length'],
        ' more length would still fit.',
      ],
      ...flareWords(vent),
      ...rowWords(vent),
    ],
    playing: [['The limit of the air speed is a stated speed, common practice; no sound is predicted from it.']],
  };
}
