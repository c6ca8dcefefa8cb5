import { flanged } from '@airspring/core/duct';
import { type LineBoxSpec, lineFamily } from '@airspring/core/enclosure';
import { impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { fit } from '@airspring/core/space';
import type { VentSection } from '@airspring/core/vent';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { airSpeedIn } from './air-speed.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { channelFor, foldedLine, spread } from './folded-line.js';
import { lineBoards } from './line-boards.js';
import type { shapedLineFields } from './line-fields.js';
import { between, depthAt, depthsOf, type LineForm, type Stretch } from './line-form.js';
import { lineRecord } from './line-words.js';
import { noParts } from './no-parts.js';
import { metres, outerSizes } from './placing.js';
import type { Point } from './point.js';
import { airSpeedOf } from './vented-fields.js';

/** Wall loss of boards over that of a round duct: perimeter by perimeter, for channels twice as wide as they are deep. */
const BOARDS = 1.2;
/** Air that a driver must leave free behind it in its channel, m (common practice). */
const BEHIND = 0.01;
/** Work of gluing in a board, as metres of vent to print for each metre. */
const EFFORT = 0.3;
/** Section of the mouth over that of the closed end, where a brief leaves it open. */
const MOUTHS = [0.3, 1] as const;

/** Lengths that are tried, over a quarter of a wave of the lowest tone. */
const SHORTEST = 0.35;
const LONGEST = 1.5;

/** What the search of a line does not vary. */
export interface LineChoice {
  readonly kind: BoxKind;
  readonly form: LineForm;
  readonly folds: number;
  /** Where the driver is, as a share of the length from the closed end; default the middle of the first channel. */
  readonly driverAt?: number;
  /** Where the line is open, likewise; 1 is its far end. */
  readonly openAt: number;
}

/**
 * A line that is folded in a box: channels side by side, from the front to the back, as high and as wide as the box. Along its centre it
 * is as long as its channels and the boards between them:
 *
 * L = n h + (n − 1) t, and the air in it is exactly the sum of its stretches, each its length times its mean section.
 *
 * A point is the net volume, the length, the section of the mouth over that of the closed end unless all sections are alike, and the width.
 */
export function lineVariant(
  job: Job,
  choice: DriverChoice,
  { kind, form, folds, driverAt, openAt }: LineChoice,
): Variant {
  const { line = {}, vent = {} } = job.sections as ReadFields<typeof shapedLineFields>;
  const { flowResistivity = si('flowResistivity', 0), filled = 1 } = line;
  const t = job.space.panelThickness;
  const { channels, folding, lengthIn, across, depthIn, takenBy } = foldedLine(form, folds, t);
  const isUniform = form.told === 'uniform';
  const contents = contentsOf(job, choice);
  const layout = driverLayout(job, choice);
  const none = noParts(layout);
  const { outerDiameter, cutoutDiameter, depth: reach, edgeMargin } = driverRoom(choice);
  const needed = Math.max(0, reach - t) + BEHIND;
  /** How far from the ends of its channel the middle of a driver must stay. */
  const clear = Math.max(cutoutDiameter / 2 + job.space.cutoutPlay, outerDiameter / 2 + edgeMargin - t);
  const mouthRatio = (point: Point) => (isUniform ? 1 : point[2]!);
  const widthOf = (point: Point) => point[isUniform ? 2 : 3] ?? 1;
  const stretchesOf = (point: Point) => form.stretches(folding(point[1]!), mouthRatio(point));
  const areaAt = (point: Point, share: number) => {
    const stretches = stretchesOf(point);
    return (point[0]! / spread(stretches)) * depthAt(stretches, share * point[1]!);
  };
  /** Depth at the closed end of a line that holds the net volume and what stands in it. */
  const depthOf = (point: Point) => (point[0]! + contents.taken) / (spread(stretchesOf(point)) * widthOf(point));
  const driverFrom = (length: number) => (driverAt === undefined ? folding(length).height / 2 : driverAt * length);
  /** The opening, of the area that the model has. */
  const mouthOf = (point: Point): VentSection => {
    const height = depthOf(point) * depthAt(stretchesOf(point), openAt * point[1]!);
    return { width: metres(areaAt(point, openAt) / height), height: metres(height) };
  };
  const endCorrectionOf = (point: Point) => {
    const end = flanged({ radius: Math.sqrt(areaAt(point, openAt) / Math.PI) }, 0);
    // An opening in a side has a wall and a face on either side of it.
    return si('length', openAt < 1 ? 2 * end + t : end);
  };

  function spec(point: Point): LineBoxSpec {
    const [netVolume = 0, length = 1] = point;
    const stretches = stretchesOf(point);
    const area = netVolume / spread(stretches);
    const parts = ({ length, from, to }: Stretch, resistivity: number) => ({
      length: si('length', length),
      area: si('area', area * from),
      ...(from !== to && { wedgeTo: si('area', area * to) }),
      flowResistivity: si('flowResistivity', resistivity),
      // Fibre takes so much more than the walls that they do not count.
      wallLoss: resistivity > 0 ? 0 : BOARDS,
    });
    const fibre = filled * length;
    return {
      drivers: choice.drivers,
      parts: [
        ...between(stretches, 0, fibre).map((one) => parts(one, flowResistivity)),
        ...between(stretches, fibre, length).map((one) => parts(one, 0)),
      ],
      driverAt: si('length', driverFrom(length)),
      opening: {
        at: si('length', openAt * length),
        area: si('area', areaAt(point, openAt)),
        endCorrection: endCorrectionOf(point),
      },
      sourceResistance: si('resistance', job.amplifier.sourceResistance),
    };
  }

  /** Whether driver and opening are where they can be: in the first channel and in the last one. */
  function isReached(point: Point, depth: number): boolean {
    const [, length = 0] = point;
    const { height } = folding(length);
    const at = driverFrom(length);
    if (driverAt !== undefined && (at < clear || at > height - clear)) return false;
    if (openAt === 1) return true;
    const half = (depth * depthAt(stretchesOf(point), openAt * length)) / 2;
    const into = height - (1 - openAt) * length;
    return into >= half && into <= height - half;
  }

  function place(edges: readonly [number, number, number], point: Point) {
    const [width, high, deep] = edges;
    const [, length = 0] = point;
    const at = driverFrom(length);
    // The line begins where its last channel can end at the top.
    const centre = [metres(width / 2), metres(folds % 2 === 0 ? t + at : high - t - at), metres(0)] as const;
    const placed = fit({
      outer: outerSizes(edges),
      thickness: metres(t),
      driver: { ...driverRoom(choice), ...(driverAt !== undefined && { centres: [centre] }) },
      cutoutMargin: metres(job.space.cutoutPlay),
    });
    if (!placed.ok) return placed;
    // Behind the driver is the first board, where there is one, and not the back.
    const depth = deep - 2 * t;
    const stretches = stretchesOf(point);
    const first = depthIn(depth, mouthRatio(point));
    const reach = cutoutDiameter / 2;
    const behind = first * Math.min(...[-reach, reach].map((x) => depthAt(stretches, Math.max(0, at + x))));
    const less = (left: number) => si('length', Math.max(0, left - (depth - behind)));
    return {
      ...placed,
      placement: {
        ...placed.placement,
        drivers: placed.placement.drivers.map((one) => ({ ...one, depthLeft: less(one.depthLeft) })),
      },
      solids: [
        ...placed.solids,
        ...lineBoards(edges, { form, folds, board: t, first, mouth: mouthRatio(point) }).solids,
      ],
      slack: { ...placed.slack, driverDepth: less(placed.slack.driverDepth) },
    };
  }

  const quarter = job.air.speedOfSound / (4 * job.wanted.lowest);

  const asked =
    driverAt === undefined || !(driverAt > 0 && driverAt * channels < 1)
      ? undefined
      : channelFor({
          at: driverAt,
          clear,
          folds,
          board: t,
          longest: LONGEST * quarter,
          height: job.space.height - 2 * t,
        });

  const [narrowest, lowest, shallowest] = leastFor(job, choice, layout.bodies);
  const mouths = line.mouth === undefined ? MOUTHS : ([line.mouth, line.mouth] as const);
  const [leastMouth, greatestMouth] = mouths;
  // Behind the driver the first channel is as deep as it needs, and so the box for all of them.
  const ownDepth = Math.min(
    ...mouths.map((mouth) => (across(mouth) * needed) / Math.max(...depthsOf(form, 0, channels, mouth)) + folds * t),
  );
  return {
    kind,
    choice,
    acoustic: [
      { name: 'length', from: SHORTEST * quarter, to: LONGEST * quarter, ratio: 1.05, unit: 1e-3 },
      ...(isUniform ? [] : [{ name: 'mouth', from: leastMouth, to: greatestMouth, ratio: 1.9, unit: 0.01 }]),
    ],
    span: {
      name: 'width',
      edge: 0,
      from: narrowest,
      to: Math.max(narrowest, job.space.width - 2 * t),
      ratio: 1.08,
      beyond: 2,
    },
    contents: contents.taken,
    least: [narrowest, lowest, Math.max(shallowest, ownDepth)],
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
      area: (point) => areaAt(point, openAt),
      quiet: vent.quiet ?? false,
    }),
    parts: (point, out) => {
      const [, length = 0] = point;
      const depth = depthOf(point);
      const { height } = folding(length);
      const stretches = stretchesOf(point);
      const reach = cutoutDiameter / 2;
      const at = driverFrom(length);
      if (depth * Math.min(depthAt(stretches, at - reach), depthAt(stretches, at + reach)) < needed) return false;
      if (height <= depth * Math.max(1, mouthRatio(point)) || !isReached(point, depth)) return false;
      out.extent = length;
      out.taken = takenBy(widthOf(point), height, depth, mouthRatio(point));
      out.effort = EFFORT * folds * height;
      return true;
    },
    room: (width, height, depth, point) => (none.room(width, height, depth, point) < 0 ? -1 : lengthIn(height)),
    roomKey: `${none.roomKey} ${folds}`,
    roomAtMost: (_width, height) => lengthIn(height),
    settle: (airBefore, point, [width, height, depth]) => {
      const mouth = mouthRatio(point);
      const first = depthIn(depth, mouth);
      const netVolume = airBefore - takenBy(width, height, first, mouth);
      if (first <= 0 || netVolume <= 0) return undefined;
      return [netVolume, lengthIn(height), ...(isUniform ? [] : [mouth]), width];
    },
    place,
    ...(asked && { asksForRoom: asked }),
    record: (finished) =>
      lineRecord(finished, {
        form,
        folds,
        panel: t,
        mouth: mouthRatio(finished.point),
        first: depthIn(finished.edges[2] - 2 * t, mouthRatio(finished.point)),
        stretches: stretchesOf(finished.point),
        ...(driverAt !== undefined && { driverAt }),
        openAt,
        flowResistivity,
        filled,
        endCorrection: endCorrectionOf(finished.point),
        speedOfSound: job.air.speedOfSound,
        assumed: contents.assumed,
      }),
  };
}
