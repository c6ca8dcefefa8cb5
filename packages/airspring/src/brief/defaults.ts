import type { Air } from '@airspring/core/air';
import { HALF_POWER } from '@airspring/core/response';
import type { ShapeChoice } from '@airspring/core/space';
import type { AlignmentChoice } from '../job/alignment-choice.js';
import type { DriverChoice, Job, Written } from '../job/job.js';
import { alignmentAsked } from './alignment.js';
import { amplifierOf } from './amplifier.js';
import { roomHeard } from './room.js';
import type { ReadBrief } from './schema.js';
import { shapeOf } from './space-shape.js';
import { unitsOf } from './units.js';

const EDGES = ['width', 'height', 'depth'] as const;

/** Fills in the defaults of a brief without faults. Each kind fills in the defaults of its own fields. */
export function jobOf(
  written: Written,
  read: ReadBrief,
  air: Air,
  choices: readonly DriverChoice[],
  alignments: readonly AlignmentChoice[] = [],
  shapes: readonly ShapeChoice[] = [],
): Job {
  const alignment = alignmentAsked(read.alignment, alignments);
  const { title, space, wanted, amplifier, room, box = {}, weights = {} } = read;
  const shape = space.shape && shapeOf([], space as never, (written as unknown as ReadBrief).space.shape, shapes);
  const closed = shape ? EDGES.filter((edge) => edge !== shape.open) : [];
  return {
    written,
    title,
    choices,
    air,
    space: {
      width: space.width,
      height: space.height,
      depth: space.depth,
      panelThickness: space.panelThickness,
      volume: space.volume ?? Infinity,
      exactly: [...new Set([...(space.exactly ?? []), ...closed])],
      ...(shape && { shape }),
      bracing: space.bracing ?? 0,
      cutoutPlay: space.cutoutPlay ?? 0.002,
    },
    wanted: { ...wanted, fall: wanted.fall ?? HALF_POWER, rise: wanted.rise ?? 1.5 },
    ...(room && { heard: roomHeard(room, wanted.at ?? '1 m', air) }),
    amplifier: amplifierOf(amplifier),
    ...(box.kinds && { kinds: [...new Set(box.kinds)] }),
    alignments,
    shapes,
    ...(alignment !== undefined && { alignment }),
    sections: read as unknown as Job['sections'],
    units: unitsOf(written),
    weights: {
      deep: weights.deep ?? 1,
      loud: weights.loud ?? 1,
      small: weights.small ?? 1,
      simple: weights.simple ?? 1,
    },
  };
}
