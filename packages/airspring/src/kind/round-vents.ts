import { type EndCorrection, finiteFlange, flanged, flared } from '@airspring/core/duct';
import { type Impossible, impossible } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { compileLongestVent, type Fit, faces, type VentBody } from '@airspring/core/space';
import type { RoundVentSection } from '@airspring/core/vent';
import type { DriverChoice, Job } from '../job/job.js';
import type { BoxKind } from './box-kind.js';
import { driverLayout } from './drivers.js';
import { type FormedEnd, formTaken } from './flare-form.js';
import type { Phrase } from './phrase.js';
import { metres } from './placing.js';
import type { Point } from './point.js';
import { isJoined, type Printer, wholeLines, widthOf } from './printed-tube.js';
import type { RoundVentSettings } from './round-vent-fields.js';
import {
  bodyWithPlay,
  compileStraightOrBentAtMost,
  depthsOf,
  holeOf,
  mouthDiameter,
  printedElbow,
  printedHeight,
  printedTube,
  ROW_GAP,
  ventHoles,
  ventOf,
} from './round-vent-tube.js';
import { ventWords, wallWords } from './round-vent-words.js';
import { endsInRow } from './row-of-vents.js';
import { ventHoleWords } from './vent-hole.js';
import { atSmallest, type Vents } from './vents.js';

/** The inner diameter of the vents at a point: by its place, since taking an array apart takes longer than what is done with it. */
const diameterOf = (point: Point): number => point[2]!;

const areaOf = (count: number, diameter: number): number => (count * Math.PI * diameter ** 2) / 4;

const widenedEnd = (radius: number, formed: FormedEnd | undefined, end: EndCorrection): EndCorrection => {
  if (formed) return formed.correction(end);
  return radius > 0 ? flared({ radius: metres(radius), end }) : end;
};

/** Air that a quarter round takes in addition to its tube, m³. `inside` is the length of it that stands inside the box. */
function bellTaken(outerRadius: number, radius: number, inside: number): number {
  if (!(radius > 0 && inside > 0)) return 0;
  // At a distance s from the throat the wall stands `R − √(R² − s²)` further out. Both integrals are in closed form.
  const s = Math.min(inside, radius);
  const under = (s * Math.sqrt(radius ** 2 - s ** 2) + radius ** 2 * Math.asin(s / radius)) / 2;
  const first = radius * s - under;
  const second = 2 * radius ** 2 * s - s ** 3 / 3 - 2 * radius * under;
  return Math.PI * (2 * outerRadius * first + second);
}

/** Equal round vents in a row, with sharp or rounded ends. `bodies` are what stands beside them, by default the drivers. */
export function roundVents(
  kind: BoxKind,
  job: Job,
  choice: DriverChoice,
  settings: RoundVentSettings,
  count: number,
  bodies = driverLayout(job, choice),
): Vents {
  const { printer, wall, flare, formed } = settings;
  const { inner: innerDepth, outer: outerDepth } = depthsOf(settings);
  /** Air that an end takes in addition to its tube, m³. */
  const endTaken = (end: 'inner' | 'outer', outerRadius: number, inside: number): number => {
    const own = formed[end];
    return own ? formTaken(own, outerRadius, inside) : bellTaken(outerRadius, flare[end], inside);
  };
  const t = job.space.panelThickness;
  const layout = {
    count,
    faces: settings.faces.map((face) => faces.indexOf(face)),
    bend: settings.bends > 0,
    walls: 0 as const,
  };
  const whole = { ...bodies, vent: layout };
  const [bent, straight] = [whole, { ...whole, vent: { ...layout, bend: false } }].map(compileLongestVent) as [
    ReturnType<typeof compileLongestVent>,
    ReturnType<typeof compileLongestVent>,
  ];
  /** A first leg is at least as long as its panel is thick. */
  const panel = Math.min(...layout.faces.map((face) => whole.thickness[face]!));
  const elbows = new Map<number, Printer | undefined>();
  const elbowAt = (diameter: number): Printer | undefined => {
    if (!elbows.has(diameter)) elbows.set(diameter, printedElbow(settings, diameter, panel));
    return elbows.get(diameter);
  };
  const mayBend = (diameter: number) => settings.bends > 0 && elbowAt(diameter) !== undefined;
  const longestAt = (diameter: number) => (mayBend(diameter) ? bent : straight);
  /** The longest vent that the printer makes, m: one of several pieces needs joints. */
  const longest = isJoined(printedTube(settings, settings.smallest), printer) ? Infinity : printer.height;
  /** The least straight part beside a flare, m. */
  const innerLeg = innerDepth > 0 ? Math.max(innerDepth, wholeLines(wall, settings.nozzle)) : 0;
  const atMost = compileStraightOrBentAtMost(whole);
  const inner = new Float64Array(3);
  const both = new Float64Array(2);
  let body: VentBody = bodyWithPlay(settings, settings.smallest);
  let bodyOf = settings.smallest;
  const bodyAt = (diameter: number): VentBody => {
    if (diameter !== bodyOf) {
      body = bodyWithPlay(settings, diameter);
      bodyOf = diameter;
    }
    return body;
  };
  const sections = new Map<number, RoundVentSection>();
  const section = (point: Point): RoundVentSection => {
    const diameter = diameterOf(point);
    let found = sections.get(diameter);
    if (found === undefined) {
      const pitch = bodyAt(diameter).flangeDiameter + ROW_GAP;
      const ends = endsInRow(count, pitch, diameter, {
        innerEnd: widenedEnd(flare.inner, formed.inner, finiteFlange),
        outerEnd: widenedEnd(flare.outer, formed.outer, flanged),
      });
      found = { diameter: metres(diameter), count, wall: metres(wall), ...ends };
      sections.set(diameter, found);
    }
    return found;
  };

  /** A rounded end needs a straight part that is at least as long, and a long vent needs joints. */
  function refuse(placed: Fit | Impossible): Fit | Impossible {
    const vent = placed.ok ? placed.placement.vent : undefined;
    if (vent === undefined) return placed;
    if (vent.bend === undefined) {
      if (vent.firstLeg <= longest + NANOMETRE) return placed;
      return impossible(
        'no-joint',
        'The printer is too low for the vent in one piece, and its pieces cannot be joined.',
      );
    }
    if (vent.firstLeg >= outerDepth && vent.bend.secondLeg >= innerLeg) return placed;
    return impossible('no-room-for-flare', 'A straight part beside the bend is shorter than the rounding of its end.');
  }

  return {
    kind,
    airSpeedPeak: settings.airSpeedPeak,
    quiet: settings.quiet,
    waves: settings.waves,
    geometric: [
      { name: 'diameter', from: settings.smallest, to: settings.largest, ratio: 1.07, unit: 1e-3, beyond: 1.6 },
    ],
    area: (point) => areaOf(count, diameterOf(point)),
    areaTaken: (point) => areaOf(count, diameterOf(point) + 2 * wall),
    endsTaken: (point, length) => {
      const radius = diameterOf(point) / 2 + wall;
      // The outer rounding begins in the panel. Only the part behind the panel takes air.
      const behind = Math.min(outerDepth, length) - t;
      return count * (endTaken('inner', radius, innerDepth) + endTaken('outer', radius, behind));
    },
    section,
    layout,
    body: (point) => {
      const diameter = diameterOf(point);
      const { outerDiameter, flangeDiameter, bendRadius, clearance } = bodyAt(diameter);
      return {
        diameter: metres(diameter),
        wall: metres((outerDiameter - diameter) / 2),
        flangeDiameter: metres(flangeDiameter),
        bendRadius: metres(bendRadius),
        clearance: metres(clearance),
        bends: mayBend(diameter) ? ('one-bend' as const) : ('straight' as const),
        count,
        faces: settings.faces,
      };
    },
    room: (width, height, depth, point, enough) => {
      const diameter = diameterOf(point);
      longestAt(diameter)(width, height, depth, bodyAt(diameter), both, enough);
      return Math.min(longest, Math.max(both[0]!, both[1]!)) || -1;
    },
    // A rounded end asks for more than room.
    refuse,
    ...(flare.inner > 0 || flare.outer > 0
      ? {}
      : {
          fits: (width, height, depth, point, length) => {
            const [diameter, least] = [diameterOf(point), length - NANOMETRE];
            longestAt(diameter)(width, height, depth, bodyAt(diameter), both, least, length + NANOMETRE);
            return length <= longest + NANOMETRE && Math.max(both[0]!, both[1]!) >= least;
          },
        }),
    roomAtMost: (width, height, depth, point) => {
      inner[0] = width;
      inner[1] = height;
      inner[2] = depth;
      return atMost(inner, bodyAt(diameterOf(point)));
    },
    roomKey: JSON.stringify([layout, settings]),
    effort: count,
    wishes: [
      {
        path: 'vent.largest',
        what: 'inner diameter of the vent',
        quantity: 'length',
        unit: job.units.length,
        allowed: settings.largest,
        sense: 'at most',
        weight: 'simple',
        needed: diameterOf,
      },
      {
        path: 'printer.width',
        what: 'widest printed part',
        quantity: 'length',
        unit: job.units.length,
        allowed: printer.width,
        sense: 'at most',
        needed: (point) => widthOf(printedTube(settings, diameterOf(point))),
      },
    ],
    tell: ({ point: [, , diameter = 0], fit }, length, fb, named) => {
      const vent = ventOf(settings, { count, diameter, length, fb }, fit);
      const elbow = vent.bend && elbowAt(diameter);
      const words = ventWords(vent, named, printer.height < Infinity);
      const made: Phrase[] = [
        ...wallWords(settings),
        ...(settings.holeSaws.length > 0
          ? [ventHoleWords(vent, mouthDiameter(settings, diameter), holeOf(settings, diameter))]
          : []),
      ];
      return {
        vent,
        holes: ventHoles(settings, diameter, fit),
        ...words,
        building: [...words.building, ...made],
        margins: [
          ...atSmallest('vent.smallest', 'inner diameter of the vent', diameter, settings.smallest),
          {
            path: 'printer.height',
            what: 'tallest printed piece',
            meaning: 'length',
            value: printedHeight(vent, elbow),
            limit: printer.height,
            sense: 'at most',
          },
          ...(elbow
            ? [
                {
                  path: 'printer.width',
                  what: 'width of the printed elbow',
                  meaning: 'length' as const,
                  value: elbow.width,
                  limit: printer.width,
                  sense: 'at most' as const,
                },
              ]
            : []),
        ],
        printed: true,
      };
    },
  };
}
