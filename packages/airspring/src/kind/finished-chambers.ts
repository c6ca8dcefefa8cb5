import type { Job } from '../job/job.js';
import type { Finished } from './kind-record.js';
import type { Partition, PartitionFit } from './partition.js';
import type { Point } from './point.js';
import { type LengthFor, wholeMillimetres } from './vent-length.js';
import { bodyOf, takenBy, tunedTo, type Vents, type VentTold } from './vents.js';

type Edges = readonly [width: number, height: number, depth: number];

/** Where the vents of the chamber behind the cone lead, if it has some: outside, or through the partition into the other chamber. */
export type Rear = 'closed' | 'out' | 'through';

/** What is told of one chamber with its vents. */
export interface ChamberTold extends VentTold {
  readonly fb: number;
  readonly length: number;
}

/** The vents of one chamber, with what they see of a point: the air of their chamber, its tuning, and their diameter. */
export interface Chamber {
  readonly vents: Vents;
  readonly seenAt: (point: Point, out?: number[]) => Point;
  /** The length that tunes the air of the chamber to a frequency, for vents of the diameter that is seen. */
  readonly lengthFor: (seen: Point) => LengthFor;
  readonly lengthOf: (seen: Point) => number;
  /** Air that bracing takes in it, m³. */
  readonly bracing: number;
}

/** The air that a chamber, its bracing and its vents of this length take together. */
export const heldBy = ({ vents, bracing }: Chamber, seen: Point, length: number, panel: number): number =>
  seen[0]! + bracing + takenBy(vents, seen, length, panel);

/** How the chambers of a settled point are placed, and what is told of them; the front one is the first. */
export function finishedChambers(job: Job, partition: Partition, chambers: readonly Chamber[], rear: Rear) {
  const t = job.space.panelThickness;
  const front = chambers[0]!;

  /** Lengths of the vents of each chamber, and of the front chamber, at a point that is settled. */
  function madeAt(outer: Edges, point: Point) {
    const inner = outer.map((size) => size - 2 * t) as unknown as Edges;
    const lengths = chambers.map(({ seenAt, lengthOf }) => wholeMillimetres(lengthOf(seenAt(point))));
    const at = wholeMillimetres(heldBy(front, front.seenAt(point), lengths[0]!, t) / partition.area(inner));
    return { inner, lengths, at };
  }

  function place(outer: Edges, point: Point) {
    const { lengths, at } = madeAt(outer, point);
    const [first, second] = chambers.map(({ vents, seenAt }, i) => bodyOf(vents, seenAt(point), lengths[i]!));
    const placed = partition.place(outer, at, [first!, second]);
    if (!placed.ok) return placed;
    for (const [side, { vents }] of chambers.entries()) {
      const judged = vents.refuse?.(side === 0 ? placed : ofSecond(placed));
      if (judged !== undefined && !judged.ok) return judged;
    }
    return placed;
  }

  /** A placement with the vents of the rear chamber in the place of those of the front one. */
  const ofSecond = ({ placement, slack, second, secondSlack, ...placed }: PartitionFit): PartitionFit => ({
    ...placed,
    placement: { ...placement, ...(second && { vent: second }) },
    slack: secondSlack ?? slack,
  });

  /** What is told of a finished box: its chambers, the front one first, and where the partition stands. */
  function told(finished: Finished) {
    const { edges, point } = finished;
    const placed = finished.fit as PartitionFit;
    const { inner, lengths, at } = madeAt(edges, point);
    const all = chambers.map(({ vents, seenAt }, side) => {
      const seen = seenAt(point);
      const { fb, warnings } = tunedTo(vents, seen, lengths[side]!, job);
      const one = { ...finished, point: seen, fit: side === 0 ? placed : ofSecond(placed) };
      const many = chambers.length > 1;
      const words = vents.tell(one, lengths[side]!, fb, {
        ...(many && { tunes: side === 0 ? 'the front chamber' : 'the rear chamber' }),
        ...(side === 1 && rear === 'through' && { from: 'the front side of the partition' }),
      });
      const holes = side === 0 ? words.holes : words.holes.map((hole) => partition.ofSecond(edges, at, hole));
      return { warnings, told: { ...words, holes, fb, length: lengths[side]! } satisfies ChamberTold };
    });
    return {
      at,
      chambers: all.map((one) => one.told),
      sizes: partition.chambers(inner, at),
      warnings: all.flatMap(({ warnings }) => warnings),
      driverHoles: partition.holes(edges, at, placed),
      boards: [partition.board(edges)],
    };
  }

  return { place, told };
}
