import { NANOMETRE } from '@airspring/core/quantity';
import { compileLongestSlot, type Fit, faces, type SlotBody } from '@airspring/core/space';
import { type SlotAlong, type SlotVentSection, slotAlongs, slotBoards } from '@airspring/core/vent';
import type { DriverChoice, Job } from '../job/job.js';
import type { BoxKind } from './box-kind.js';
import { holeAt } from './build-record.js';
import { driverLayout, leastFor } from './drivers.js';
import type { Finished } from './kind-record.js';
import { metres } from './placing.js';
import type { Point } from './point.js';
import { inOrder } from './round-vent-fields.js';
import { boardsOf, takenBySlot } from './slot-boards.js';
import { placedBoards } from './slot-boards-placed.js';
import { acrossSlot, type SlotRead, slotFields } from './slot-fields.js';
import { compileSlotAtMost } from './slot-room.js';
import { slotWords } from './slot-words.js';
import { tunedByVents } from './tuned-by-vent.js';
import { airSpeedOf } from './vented-fields.js';
import { atSmallest, type Vents, type VentTold } from './vents.js';

const MM = 1e-3;
/** Ratio between neighbouring widths on the lattice, for a slot from side to side. */
const WIDTH_RATIO = 1.08;

function slotVents(job: Job, choice: DriverChoice, along: SlotAlong): Vents {
  const { slot = {}, vent = {} } = job.sections as SlotRead;
  const t = job.space.panelThickness;
  const smallest = slot.smallest ?? Math.min(0.015, slot.largest ?? Infinity);
  const largest = slot.largest ?? Math.max(0.08, smallest);
  const wall = slot.wall ?? t;
  const bends = slot.bends ?? 1;
  const full = along === 'three';
  const stated = typeof slot.width === 'number' ? slot.width : 0;
  const placed = inOrder(vent.faces).filter((face) => !full || (face !== 'left' && face !== 'right'));
  const [narrowest] = leastFor(job, choice);
  const widest = Math.max(narrowest, job.space.width - 2 * t);
  const layout = {
    count: 1,
    faces: placed.map((face) => faces.indexOf(face)),
    bend: bends > 0,
    walls: slotAlongs.indexOf(along) as NonNullable<Vents['layout']>['walls'],
  };
  const whole = { ...driverLayout(job, choice), vent: layout };
  const [onLong, onShort] = slotBoards[along];
  const longest = compileLongestSlot(whole);
  const atMost = compileSlotAtMost(whole, onLong);
  const straightAtMost = compileSlotAtMost({ ...whole, vent: { ...layout, bend: false } }, onLong);
  const inner = new Float64Array(3);
  const both = new Float64Array(2);
  const widthOf = (point: Point): number => (full ? point[3]! : stated);
  const heightOf = (point: Point): number => point[2]!;
  const slotBody = { longSide: 0, shortSide: 0, wall, clearance: 0 };
  const bodyAt = (width: number, height: number): SlotBody => {
    slotBody.longSide = Math.max(width, height);
    slotBody.shortSide = Math.min(width, height);
    slotBody.clearance = slotBody.shortSide;
    return slotBody;
  };
  const sections = new Map<number, Map<number, SlotVentSection>>();
  function section(point: Point): SlotVentSection {
    const [width, height] = [widthOf(point), heightOf(point)];
    const wide = sections.get(width) ?? new Map<number, SlotVentSection>();
    sections.set(width, wide);
    const known = wide.get(height);
    if (known !== undefined) return known;
    const found: SlotVentSection = { width: metres(width), height: metres(height), wall: metres(wall), along };
    wide.set(height, found);
    return found;
  }

  const taken = (point: Point) => takenBySlot({ along, width: widthOf(point), height: heightOf(point), wall });

  /** Whether a slot of a length is folded: as in core's `fit`, only where a straight one has no room. */
  function isFolded([width, height, depth]: readonly [number, number, number], point: Point, length: number): boolean {
    if (bends === 0) return false;
    const least = length - NANOMETRE;
    const body = bodyAt(widthOf(point), heightOf(point));
    inner[0] = width;
    inner[1] = height;
    inner[2] = depth;
    if (straightAtMost(inner, body, body.longSide + onShort * wall) < least) return true;
    // No folded slot is as short as 0 m, so that only straight ones are looked for.
    longest(width, height, depth, body, both, undefined, 0);
    return both[0]! < least;
  }

  function tell({ edges, point, fit }: Finished, length: number, fb: number): VentTold {
    const vent = fit.placement.vent as NonNullable<typeof fit.placement.vent>;
    const [width, height] = [widthOf(point), heightOf(point)];
    const spare = fit.slack.ventLength ?? 0;
    const boards = boardsOf({ along, width, height, wall, panel: t }, length, vent);
    const holes = fit.holes.flatMap((hole) =>
      hole.part === 'vent' && hole.form === 'rectangle' ? [holeAt('vent', hole.face, hole.edges, hole.centre)] : [],
    );
    return {
      holes,
      boards: wall === t ? boards : boards.map((board) => ({ ...board, thickness: wall })),
      placed: placedBoards({ along, width, height, wall, panel: t, edges, opening: openingOf(fit) }, length, vent),
      ...slotWords({ along, width, height, wall, length, fb, spare, vent, centre: vent.centres[0] ?? [], edges }),
      margins: atSmallest('slot.smallest', 'inner height of the slot', height, smallest),
      printed: false,
    };
  }

  return {
    kind: slotVented,
    airSpeedPeak: airSpeedOf(vent),
    quiet: vent.quiet ?? false,
    geometric: [{ name: 'height', from: smallest, to: largest, ratio: 1.12, unit: MM, beyond: 1.6 }],
    ...(full && { span: { name: 'width', edge: 0, from: narrowest, to: widest, ratio: WIDTH_RATIO, beyond: 2 } }),
    area: (point) => widthOf(point) * heightOf(point),
    areaTaken: (point) => taken(point).metre,
    endsTaken: (point, length, inner) =>
      inner !== undefined && isFolded(inner, point, length) ? taken(point).fold : 0,
    section,
    layout,
    body: (point) => ({
      width: metres(widthOf(point)),
      height: metres(heightOf(point)),
      wall: metres(wall),
      along,
      bends: bends > 0 ? ('one-bend' as const) : ('straight' as const),
      faces: placed,
    }),
    room: (width, height, depth, point, enough) => {
      longest(width, height, depth, bodyAt(widthOf(point), heightOf(point)), both, enough);
      return Math.max(both[0]!, both[1]!) || -1;
    },
    fits: (width, height, depth, point, length) => {
      const least = length - NANOMETRE;
      longest(width, height, depth, bodyAt(widthOf(point), heightOf(point)), both, least, length + NANOMETRE);
      return Math.max(both[0]!, both[1]!) >= least;
    },
    roomAtMost: (width, height, depth, point) => {
      const body = bodyAt(widthOf(point), heightOf(point));
      inner[0] = width;
      inner[1] = height;
      inner[2] = depth;
      return atMost(inner, body, body.longSide + onShort * wall);
    },
    roomKey: JSON.stringify([layout, smallest, largest, wall, stated]),
    effort: 1,
    wishes: [
      {
        path: 'slot.largest',
        what: 'inner height of the slot',
        quantity: 'length',
        unit: job.units.length,
        allowed: largest,
        sense: 'at most',
        weight: 'simple',
        needed: heightOf,
      },
    ],
    tell,
  };
}

/** Edges of the opening of a slot. */
const openingOf = ({ holes }: Fit): readonly number[] =>
  holes.flatMap((hole) => (hole.part === 'vent' && hole.form === 'rectangle' ? [hole.edges] : []))[0] ?? [0, 0, 0];

/** A vented box whose vent is a slot made of boards. Panels of the box serve as some of its walls. */
export const slotVented: BoxKind<typeof slotFields> = {
  name: 'slot-vented',
  called: 'a box with a slot vent',
  byName: true,
  fields: slotFields,
  across: acrossSlot,
  variants: (job, choice) => {
    const { slot = {} } = job.sections as SlotRead;
    const full = (slot.width ?? 'full') === 'full';
    const all: readonly SlotAlong[] = full ? ['three'] : [...new Set(slot.along ?? (['one'] as const))];
    return all.map((along) => tunedByVents(job, choice, slotVents(job, choice, along)));
  },
};
