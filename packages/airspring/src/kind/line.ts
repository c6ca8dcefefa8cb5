import { flanged } from '@airspring/core/duct';
import { type LineBoxSpec, lineFamily } from '@airspring/core/enclosure';
import { impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { fit, type Solid } from '@airspring/core/space';
import type { VentSection } from '@airspring/core/vent';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { airSpeedIn } from './air-speed.js';
import { acousticsOf, type BoxKind, type Point, type Variant } from './box-kind.js';
import { contentsOf, driverDepth, driverLayout, driverRoom, leastFor } from './drivers.js';
import { acrossLine, lineFields } from './line-fields.js';
import { lineRecord } from './line-words.js';
import { noParts } from './no-parts.js';
import { metres, outerSizes } from './placing.js';
import { airSpeedOf } from './vented-fields.js';

/** Wall loss of boards over that of a round duct: perimeter by perimeter, for channels twice as wide as they are deep. */
const BOARDS = 1.2;
/** Air that a driver must leave free behind it in its channel, m (common practice). */
const BEHIND = 0.01;
/** Work of gluing in a board, as metres of vent to print for each metre. */
const EFFORT = 0.3;

/**
 * A line that is folded in a box: channels of one section side by side, from the front to the back, as high and as wide as the
 * box. Along its centre it is as long as its channels and the boards between them:
 *
 * L = n h + (n − 1) t, and the air in it is exactly L times its section.
 */
function variantOf(job: Job, choice: DriverChoice, folds: number): Variant {
  const { line = {}, vent = {} } = job.sections as ReadFields<typeof lineFields>;
  const { flowResistivity = si('flowResistivity', 0), filled = 1 } = line;
  const t = job.space.panelThickness;
  const channels = folds + 1;
  const contents = contentsOf(job, choice);
  const layout = driverLayout(job, choice);
  const none = noParts(layout);
  const needed = Math.max(0, driverDepth(choice.drivers) - t) + BEHIND;
  const heightFor = (length: number) => (length - folds * t) / channels;
  const lengthIn = (height: number) => channels * height + folds * t;
  const areaOf = ([netVolume = 0, length = 1]: Point) => netVolume / length;
  /** Depth of a channel that holds the net volume and what stands in it, in a box of this inner width. */
  const channelOf = ([netVolume = 0, length = 1, width = 1]: Point) => (netVolume + contents.taken) / (length * width);
  /** The opening, of the area that the model has. */
  const mouthOf = (point: Point): VentSection => {
    const height = channelOf(point);
    return { width: metres(areaOf(point) / height), height: metres(height) };
  };

  function spec(point: Point): LineBoxSpec {
    const [, length = 1] = point;
    const area = si('area', areaOf(point));
    const part = (share: number, resistivity: number) => ({
      length: si('length', share * length),
      area,
      flowResistivity: si('flowResistivity', resistivity),
      // Fibre takes so much more than the walls that they do not count.
      wallLoss: resistivity > 0 ? 0 : BOARDS,
    });
    const endCorrection = si('length', flanged({ radius: Math.sqrt(area / Math.PI) }, 0));
    return {
      drivers: choice.drivers,
      parts: [part(filled, flowResistivity), ...(filled < 1 ? [part(1 - filled, 0)] : [])],
      // In the middle of the first channel.
      driverAt: si('length', heightFor(length) / 2),
      opening: { at: si('length', length), area, endCorrection },
      sourceResistance: si('resistance', job.amplifier.sourceResistance),
    };
  }

  /** The boards between the channels. Each leaves a gap as deep as a channel; the last one at the bottom, below the open channel. */
  function innerBoards([width, height, depth]: readonly [number, number, number]): Solid[] {
    const channel = (depth - 2 * t - folds * t) / channels;
    return Array.from({ length: folds }, (_, i) => {
      const isGapBelow = (folds - i) % 2 === 1;
      const near = t + channel + i * (channel + t);
      const [low, high] = isGapBelow ? [t + channel, height - t] : [t, height - t - channel];
      const corner = (...at: number[]) => at.map(metres) as unknown as Solid['least'];
      return {
        part: 'board',
        form: 'cuboid',
        least: corner(t, low, near),
        greatest: corner(width - t, high, near + t),
      };
    });
  }

  function place(edges: readonly [number, number, number]) {
    const placed = fit({
      outer: outerSizes(edges),
      thickness: metres(t),
      driver: driverRoom(choice),
      cutoutMargin: metres(job.space.cutoutPlay),
    });
    if (!placed.ok) return placed;
    // Behind the driver is the first board, where there is one, and not the back.
    const depth = edges[2] - 2 * t;
    const boarded = depth - (depth - folds * t) / channels;
    const less = (left: number) => si('length', Math.max(0, left - boarded));
    return {
      ...placed,
      placement: {
        ...placed.placement,
        drivers: placed.placement.drivers.map((one) => ({ ...one, depthLeft: less(one.depthLeft) })),
      },
      solids: [...placed.solids, ...innerBoards(edges)],
      slack: { ...placed.slack, driverDepth: less(placed.slack.driverDepth) },
    };
  }

  const quarter = job.air.speedOfSound / (4 * job.wanted.lowest);
  const [narrowest] = leastFor(job, choice, layout.bodies);
  return {
    kind: foldedLine,
    choice,
    acoustic: [{ name: 'length', from: 0.35 * quarter, to: 1.5 * quarter, ratio: 1.05, unit: 1e-3 }],
    span: {
      name: 'width',
      edge: 0,
      from: narrowest,
      to: Math.max(narrowest, job.space.width - 2 * t),
      ratio: 1.08,
      beyond: 2,
    },
    contents: contents.taken,
    least: leastFor(job, choice, layout.bodies),
    ...acousticsOf(lineFamily, job, spec),
    align: ({ name }) =>
      impossible(
        'other-order',
        `${name} is a shape of few poles; the waves in a line have poles without end, so that no line has it.`,
      ),
    ...none,
    ...airSpeedIn(job, {
      openings: [{ element: 'opening', called: 'the opening', section: mouthOf }],
      called: 'opening',
      path: 'line.airSpeed',
      airSpeedPeak: airSpeedOf(line),
      area: areaOf,
      quiet: vent.quiet ?? false,
    }),
    parts: (point, out) => {
      const [, length = 0, width = 0] = point;
      const channel = channelOf(point);
      const height = heightFor(length);
      if (channel < needed || height <= channel) return false;
      out.extent = length;
      out.taken = folds * t * width * (height - channel);
      out.effort = EFFORT * folds * height;
      return true;
    },
    room: (width, height, depth, point) => (none.room(width, height, depth, point) < 0 ? -1 : lengthIn(height)),
    roomKey: `${none.roomKey} ${folds}`,
    roomAtMost: (_width, height) => lengthIn(height),
    settle: (airBefore, _asked, [width, height, depth]) => {
      const channel = (depth - folds * t) / channels;
      const netVolume = airBefore - folds * t * width * (height - channel);
      return channel > 0 && netVolume > 0 ? [netVolume, lengthIn(height), width] : undefined;
    },
    place,
    record: (finished) =>
      lineRecord(finished, {
        folds,
        panel: t,
        flowResistivity,
        filled,
        endCorrection: spec(finished.point).opening!.endCorrection,
        speedOfSound: job.air.speedOfSound,
        assumed: contents.assumed,
      }),
  };
}

/** A driver in a line: a pipe of one section, closed at one end and open at the other, and folded in a box. */
export const foldedLine: BoxKind<typeof lineFields> = {
  name: 'line',
  called: 'a box with a line',
  byName: true,
  fields: lineFields,
  across: acrossLine,
  variants: (job, choice) => {
    const { line = {} } = job.sections as ReadFields<typeof lineFields>;
    // Its first channel lies behind the front.
    const front: DriverChoice = { ...choice, seating: { faces: ['front'], spread: 'one-face' } };
    if (!choice.seating.faces.includes('front')) return [];
    return [...new Set(line.folds ?? [0, 1, 2, 3])].map((folds) => variantOf(job, front, folds));
  },
};
