import type { Fit } from '@airspring/core/space';
import type { Phrase } from './phrase.js';
import type { Along } from './slot-boards.js';
import type { VentTold } from './tuned-by-vent.js';

/** A slot where it was placed. */
interface PlacedSlot {
  readonly along: Along;
  readonly width: number;
  readonly height: number;
  readonly wall: number;
  readonly length: number;
  readonly fb: number;
  /** What more would still fit. */
  readonly spare: number;
  readonly vent: NonNullable<Fit['placement']['vent']>;
  readonly centre: readonly number[];
  /** Outer edges of the box. */
  readonly edges: readonly [number, number, number];
}

/** On which panels it lies, as where its air is nearest to them. */
function panelsOf({ along, vent: { face }, centre, edges, width, height }: PlacedSlot): string[] {
  if (along === 'none') return [];
  const inwards = face === 'left' || face === 'right' ? 0 : face === 'bottom' || face === 'top' ? 1 : 2;
  const names = [
    ['left', 'right'],
    ['bottom', 'top'],
    ['front', 'back'],
  ] as const;
  const near = (axis: number) => {
    const at = centre[axis] ?? 0;
    const far = edges[axis]! - at;
    return { from: Math.min(at, far), name: names[axis]?.[at <= far ? 0 : 1] as string };
  };
  const axes = [0, 1, 2].filter((axis) => axis !== inwards);
  const sorted = axes.map(near).sort((a, b) => a.from - b.from);
  const [first, second] = sorted.map(({ name }) => name) as [string, string];
  if (along === 'one') return [first];
  if (along === 'two') return [first, second];
  // From side to side: the middle of the other axis is nearest to the panel it lies on.
  const other = axes.find((axis) => axis !== 0) as number;
  return [width >= height ? near(other).name : first, 'left', 'right'];
}

const listOf = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** How the panels of the box take part. */
function wallWords(slot: PlacedSlot): string {
  const panels = panelsOf(slot);
  if (panels.length === 0) return 'It stands free, with four boards of its own, which pass the panel.';
  const stand = panels.length === 1 ? 'panel stands for one of its boards' : 'panels stand for boards of it';
  return `The ${listOf(panels)} ${stand}, and the slot ends behind the ${slot.vent.face} panel, which has the opening.`;
}

/** What a reader is told of a slot. */
export function slotWords(slot: PlacedSlot): Pick<VentTold, 'summary' | 'brief' | 'building' | 'playing'> {
  const { width, height, wall, length, fb, spare, vent, along } = slot;
  const { bend, firstLeg, face } = vent;
  const inside: Phrase = [[width, 'bareLength'], ' × ', [height, 'length']];
  const way: Phrase =
    bend === undefined
      ? ['It runs straight. ']
      : [
          `From the ${face} it runs `,
          [firstLeg, 'length'],
          ' straight, folds towards the ',
          `${bend.towards}, and goes on for `,
          [bend.secondLeg, 'length'],
          ' behind the fold. ',
        ];
  return {
    summary: [
      'It is tuned to ',
      [fb, 'frequency'],
      ' by a slot of ',
      ...inside,
      ' inside, ',
      [length, 'length'],
      ` long${bend ? ' with one fold' : ''}.`,
    ],
    brief: ['slot ', [height, 'bareLength'], ' high × ', [length, 'bareLength'], bend ? ', folded' : ''],
    building: [
      [
        'The slot is ',
        ...inside,
        ' inside, of boards ',
        [wall, 'length'],
        ' thick, and ',
        [length, 'length'],
        ` long on its centre line, counted from the outside of the ${face} panel. It tunes the box to `,
        [fb, 'frequency'],
        '. ',
        wallWords(slot),
      ],
      [
        ...way,
        'Glue every joint airtight. Keep ',
        [Math.min(width, height), 'length'],
        ' of free air before its inner end; ',
        [spare, 'length'],
        ' more length would still fit.',
      ],
    ],
    playing: [
      ['The limit of the air speed is a stated speed, common practice; no sound is predicted from it.'],
      [
        along === 'none'
          ? 'The inner end of a slot is known as an estimate only.'
          : 'Panels beside the inner end of a slot make it act longer, by an amount that is an estimate only.',
        ' Measure the impedance, and plane the slot shorter if the box is tuned too low.',
      ],
    ],
  };
}
