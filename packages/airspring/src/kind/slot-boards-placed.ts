import type { Fit } from '@airspring/core/space';
import { axesOf, type PlacedBoard } from './build-record.js';
import { axisOf, isFar } from './face-axis.js';
import { LEAST, type Slot } from './slot-boards.js';

/** The slot in its box. */
interface PlacedSlot extends Slot {
  /** Outer edges of the box. */
  readonly edges: readonly number[];
  /** Edges of its opening along the axes of the box: the slot may stand on its short side. */
  readonly opening: readonly number[];
}

type Range = readonly [from: number, to: number];

const NEARLY = 1e-6;

/**
 * Where the boards of a slot stand, named as `boardsOf` lists them. They are counted inwards from the outer surface of its panel, from the air towards
 * the fold, and across; a side of the air that lies at a panel has no board.
 */
export function placedBoards(
  { along, width, height, wall, panel, edges, opening }: PlacedSlot,
  length: number,
  { face, centres, firstLeg, bend }: NonNullable<Fit['placement']['vent']>,
): PlacedBoard[] {
  const [long, short] = [Math.max(width, height), Math.min(width, height)];
  const free = along === 'none';
  const centre = centres[0]!;
  const inwards = axisOf(face);
  const [first, second] = axesOf(face);
  const turn = bend ? axisOf(bend.towards) : opening[first]! < opening[second]! ? first : second;
  const across = 3 - inwards - turn;
  const sign = bend && !isFar(bend.towards) ? -1 : 1;

  /** A cuboid in the box, from ranges inwards, towards the fold and across. */
  function placed(name: string, u: Range, v: Range, w: Range): PlacedBoard[] {
    if (u[1] - u[0] <= LEAST || v[1] - v[0] <= LEAST) return [];
    const least: number[] = [];
    const greatest: number[] = [];
    const put = (axis: number, [from, to]: Range, turned: boolean, at: number) => {
      least[axis] = turned ? at - to : at + from;
      greatest[axis] = turned ? at - from : at + to;
    };
    put(inwards, u, isFar(face), isFar(face) ? edges[inwards]! : 0);
    put(turn, v, sign < 0, centre[turn]!);
    put(across, w, false, centre[across]!);
    return [{ name, least, greatest }];
  }
  const atPanel = (axis: number, offset: number): boolean => {
    const at = centre[axis]! + offset;
    return Math.min(Math.abs(at - panel), Math.abs(edges[axis]! - panel - at)) < NEARLY;
  };
  const air: Range = [-short / 2, short / 2];
  const sides = [-1, 1].filter((side) => free || !atPanel(across, (side * long) / 2));
  const shortAcross = sides.map(
    (side): Range => (side < 0 ? [-long / 2 - wall, -long / 2] : [long / 2, long / 2 + wall]),
  );
  const longAcross: Range = [-long / 2 - (sides.includes(-1) ? wall : 0), long / 2 + (sides.includes(1) ? wall : 0)];
  const start = free ? 0 : panel;
  const shorts = (name: string, u: Range, v: Range) => shortAcross.flatMap((w) => placed(name, u, v, w));
  if (bend === undefined) {
    const onLong = [-1, 1].filter((side) => free || !atPanel(turn, (side * short) / 2));
    return [
      ...onLong.flatMap((side) =>
        placed(
          'long board of the slot',
          [start, length],
          side < 0 ? [air[0] - wall, air[0]] : [air[1], air[1] + wall],
          longAcross,
        ),
      ),
      ...shorts('short board of the slot', [start, length], air),
    ];
  }
  const fold = firstLeg + short;
  const end = air[1] + bend.secondLeg;
  return [
    ...placed('inner long board, first leg', [start, firstLeg], [air[1], air[1] + wall], longAcross),
    ...placed('inner long board, second leg', [firstLeg - wall, firstLeg], [air[1] + wall, end], longAcross),
    ...(free
      ? [
          ...placed('outer long board, first leg', [0, fold + wall], [air[0] - wall, air[0]], longAcross),
          ...placed('outer long board, second leg', [fold, fold + wall], [air[0], end], longAcross),
        ]
      : []),
    ...shorts('short board, first leg', [start, fold], air),
    ...shorts('short board, second leg', [firstLeg, fold], [air[1], end]),
  ];
}
