import type { Fit, Layout, VentBody } from '@airspring/core/space';
import type { KindRecord } from './box-kind.js';
import { type DesignVent, type Hole, holeAt } from './build-record.js';
import type { Phrase } from './phrase.js';

/** Free room kept around each tube, so that glue and an inexact print do not decide. */
const PLAY = 0.002;

/** What of a brief's wishes shapes a tube. */
interface TubeSettings {
  readonly wall: number;
  readonly collar: number;
  readonly printer: { readonly height: number };
}

/** Sizes of a vent's parts by its inner diameter, as people print them: collar, elbow of one outer diameter's radius. */
export function ventBody({ wall, collar }: Pick<TubeSettings, 'wall' | 'collar'>, diameter: number): VentBody {
  const outerDiameter = diameter + 2 * wall;
  return {
    outerDiameter,
    flangeDiameter: outerDiameter + 2 * collar,
    clearance: diameter,
    bendRadius: outerDiameter,
  };
}

/** The same with room around it; without a collar the hole is what has to stay clear of its neighbours. */
export function withPlay(body: VentBody): VentBody {
  const outerDiameter = body.outerDiameter + 2 * PLAY;
  return { ...body, outerDiameter, flangeDiameter: Math.max(body.flangeDiameter, outerDiameter) };
}

/** What a printer's bed must hold: the flange, or the elbow lying flat. */
export const printedWidth = ({ flangeDiameter, bendRadius, outerDiameter }: VentBody): number =>
  Math.max(flangeDiameter, bendRadius + outerDiameter / 2);

/**
 * An upper bound of the longest vent between inner edges: what the empty box would leave it.
 *
 * @source own geometry of cylinders and cuboids
 */
export function straightOrBentAtMost(
  { thickness, vent }: Layout,
  width: number,
  height: number,
  depth: number,
  { outerDiameter, clearance, bendRadius }: VentBody,
): number {
  let most = -1;
  for (const face of vent.faces) {
    const axis = face >> 1;
    const inwards = axis === 0 ? width : axis === 1 ? height : depth;
    const one = axis === 0 ? height : width;
    const other = axis === 2 ? height : depth;
    const t = thickness[face] as number;
    most = Math.max(most, t + inwards - clearance);
    if (!vent.bend) continue;
    const first = inwards - bendRadius - outerDiameter / 2;
    if (first < 0) continue;
    const second = Math.max(one, other) - clearance - bendRadius - outerDiameter / 2;
    most = Math.max(most, t + first + (Math.PI / 2) * bendRadius + Math.max(0, second));
  }
  return most;
}

/** The vent where it was placed. */
export function ventOf(
  settings: TubeSettings,
  { count, diameter, length, fb }: Pick<DesignVent, 'count' | 'diameter' | 'length' | 'fb'>,
  { placement, slack }: Fit,
): DesignVent {
  const placed = placement.vent as NonNullable<Fit['placement']['vent']>;
  const body = ventBody(settings, diameter);
  return {
    count,
    diameter,
    outerDiameter: body.outerDiameter,
    flangeDiameter: body.flangeDiameter,
    length,
    fb,
    face: placed.face,
    ...(placed.bend && {
      bend: {
        radius: body.bendRadius,
        firstLeg: placed.firstLeg,
        arc: placed.bend.length,
        secondLeg: placed.bend.secondLeg,
        towards: placed.bend.towards,
      },
    }),
    pieces: piecesOf(
      placed.bend && [placed.firstLeg, placed.bend.length, placed.bend.secondLeg],
      length,
      settings.printer.height,
    ),
    clearance: body.clearance,
    spare: slack.ventLength ?? 0,
  };
}

/** Straight parts cut into equal pieces that the printer takes; an elbow is a piece of its own. */
function piecesOf(parts: readonly number[] | undefined, length: number, longest: number): number[] {
  const cut = (part: number) => {
    const count = Math.max(1, Math.ceil(part / longest - 1e-9));
    return Array.from({ length: count }, () => part / count);
  };
  if (parts === undefined) return cut(length);
  const [first = 0, arc = 0, second = 0] = parts;
  return [...cut(first), arc, ...(second > 1e-4 ? cut(second) : [])];
}

/** The holes that the tubes pass. */
export const ventHoles = (settings: TubeSettings, diameter: number, { placement: { vent } }: Fit): Hole[] =>
  (vent?.centres ?? []).map((centre) =>
    holeAt('vent', vent?.face ?? 'front', ventBody(settings, diameter).outerDiameter + 2 * PLAY, centre),
  );

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
    ],
    playing: [['The limit of the air speed is a stated speed, common practice; no sound is predicted from it.']],
  };
}
