import { alongWalls, type EndCorrection, rectangularPiston, slitSection } from '../duct/index.js';
import type { Fault } from '../fault/index.js';
import {
  count,
  type Fields,
  type LengthInput,
  nested,
  notNegative,
  oneOf,
  optional,
  positive,
} from '../quantity/index.js';
import { type BendInput, bendGeometry, bendShape, sharpBendFaults } from './bend.js';
import { foldRadius, type SlotAlong, slotBoards } from './slot-boards.js';
import { endCorrection, type VentGeometry } from './vent-geometry.js';

/** A rectangular vent without its length. */
export interface SlotVentSection {
  /** Inner width. */
  readonly width: LengthInput;
  /** Inner height. */
  readonly height: LengthInput;
  /** Number of such vents, 1 to 1000; default 1. */
  readonly count?: number | undefined;
  /** Thickness of the boards of the vent; default 0. They take up volume. */
  readonly wall?: LengthInput | undefined;
  /**
   * Panels of the box that replace boards of the vent: none; one, on a long side; two, in a corner;
   * or three, where it is as wide as the box is inside. Default none. Such panels mirror the inner end, which makes the vent act
   * longer.
   */
  readonly along?: 'none' | 'one' | 'two' | 'three' | undefined;
  /** End correction at the inner end; default an estimate from the flush rectangle and the free round tube. */
  readonly innerEnd?: EndCorrection | undefined;
  /** End correction at the outer end; default `rectangularPiston`, for an end flush with the panel, which is up to 3 % too long. */
  readonly outerEnd?: EndCorrection | undefined;
  /** The bends of the vent, in the plane of the short side; by default it is straight. */
  readonly bend?: BendInput | undefined;
}

/** A rectangular vent. */
export interface SlotVentInput extends SlotVentSection {
  /** From the outer surface of the panel to the inner end, along the centre line. */
  readonly length: LengthInput;
}

export const slotShape = {
  width: positive('length'),
  height: positive('length'),
  count: optional(count(1000)),
  wall: optional(notNegative('length')),
  along: optional(oneOf('none', 'one', 'two', 'three')),
  innerEnd: optional(endCorrection),
  outerEnd: optional(endCorrection),
  bend: optional(nested(bendShape)),
};

/** Ratio of the end correction of a free round tube to that of a round piston in a wide wall. */
const freeOverFlush = 0.6133 / (8 / (3 * Math.PI));

/** We know of no exact value for a free rectangular end. From panel to panel it is treated as if it were in a corner. */
const freeEnd = (along: SlotAlong): EndCorrection => {
  const flush = along === 'none' ? rectangularPiston : alongWalls(along === 'one' ? 'one' : 'two');
  return Object.assign((...of: Parameters<EndCorrection>) => freeOverFlush * flush(...of), {
    sources: flush.sources,
    greatestKa: 0.2,
    atAnyFrequency: true as const,
    estimate: 'the free end of a slot is scaled like that of a round tube',
  });
};

/** Derives the geometry, and adds a fault for each field that contradicts another. */
export function slotGeometry(faults: Fault[], vent: Fields<typeof slotShape>): VentGeometry {
  const { width, height, wall = 0, along = 'none', bend } = vent;
  const slots = vent.count ?? 1;
  const [short, long] = height < width ? [height, width] : [width, height];
  faults.push(...sharpBendFaults(bend, foldRadius(short), 'half the side in the plane of the bend'));
  for (const name of ['innerEnd', 'outerEnd'] as const) {
    const flare = vent[name]?.flare;
    if (flare === undefined) continue;
    const expected = 'an end without a flare, because the formula for flares is that of a round vent';
    const path = `vent.${name}`;
    faults.push({ code: 'inconsistent', path, got: flare.radius, expected, remedy: 'Leave the flare out.' });
  }
  const [onLong, onShort] = slotBoards[along];
  const opening = { radius: Math.sqrt((width * height) / Math.PI), aspect: long / short };
  return {
    section: slitSection({ width, height }),
    count: slots,
    area: slots * width * height,
    outerArea: slots * (short + onLong * wall) * (long + onShort * wall),
    inner: opening,
    outer: opening,
    innerEnd: vent.innerEnd ?? freeEnd(along),
    outerEnd: vent.outerEnd ?? rectangularPiston,
    ...bendGeometry(bend, short / 2),
  };
}
