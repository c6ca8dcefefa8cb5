import type { Fit } from '@airspring/core/space';
import type { SlotAlong } from '@airspring/core/vent';
import type { Phrase } from './phrase.js';
import type { VentTold } from './vents.js';
import { airSpeedNote, listOf, moreLength } from './wording.js';

/** A slot where it was placed. */
interface PlacedSlot {
  readonly along: SlotAlong;
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

/** The panels that it lies on: those to which its air is nearest. */
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

/** Which panels of the box serve as boards of the slot. */
function wallWords(slot: PlacedSlot): string {
  const panels = panelsOf(slot);
  if (panels.length === 0) return 'It stands alone. It has four boards of its own, which pass through the panel.';
  const serve = panels.length === 1 ? 'panel serves as one of its boards' : 'panels serve as boards of the slot';
  return `The ${listOf(panels)} ${serve}. Its own boards begin at the inside of the ${slot.vent.face} panel, in which you cut the opening.`;
}

/** What a reader is told about a slot. */
export function slotWords(slot: PlacedSlot): Pick<VentTold, 'summary' | 'brief' | 'building' | 'playing'> {
  const { width, height, wall, length, fb, spare, vent, along } = slot;
  const { bend, firstLeg, face } = vent;
  const inside: Phrase = [[width, 'bareLength'], ' × ', [height, 'length']];
  const way: Phrase =
    bend === undefined
      ? ['It runs straight. ']
      : [
          `From the ${face}, it runs `,
          [firstLeg, 'length'],
          ` straight and then folds towards the ${bend.towards}. After the fold it goes on for `,
          [bend.secondLeg, 'length'],
          '. ',
        ];
  return {
    summary: [
      'It is tuned to ',
      [fb, 'frequency'],
      ' by a slot of ',
      ...inside,
      ' inside and ',
      [length, 'length'],
      ` length${bend ? ', with one fold' : ''}.`,
    ],
    brief: ['slot ', [height, 'bareLength'], ' high, ', [length, 'bareLength'], ' long', bend ? ', folded' : ''],
    building: [
      [
        'The slot is ',
        ...inside,
        ' inside, made of boards ',
        [wall, 'length'],
        ' thick. It is ',
        [length, 'length'],
        ` long, measured along its centre line from the outside of the ${face} panel. It tunes the box to `,
        [fb, 'frequency'],
        '. ',
        wallWords(slot),
      ],
      [
        ...way,
        'Glue every joint airtight. Keep ',
        [Math.min(width, height), 'length'],
        ' of free air in front of its inner end.',
        ...moreLength(spare),
      ],
    ],
    playing: [
      airSpeedNote,
      [
        along === 'none'
          ? 'The inner end makes the slot act longer than it is. By how much is only an estimate.'
          : 'Panels beside the inner end make the slot act longer than it is. By how much is only an estimate.',
        ' Measure the impedance. If the box is tuned too low, shorten the slot.',
      ],
    ],
  };
}
