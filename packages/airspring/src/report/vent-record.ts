import type { Fit } from '@airspring/core/space';
import type { DesignVent } from '../answer.js';
import type { Build } from '../box/build.js';
import { ventBody } from '../box/candidate.js';
import type { Job } from '../brief/job.js';

/** The vent of a build where it was placed; `undefined` for a closed box. */
export function ventOf(job: Job, { kin, diameter, ventLength, fb }: Build, placement: Fit): DesignVent | undefined {
  const placed = placement.placement.vent;
  if (kin.family === 'closed' || placed === undefined) return undefined;
  const body = ventBody(job, diameter);
  const pieces = Math.max(1, Math.ceil(ventLength / job.printer.height - 1e-9));
  return {
    count: kin.vents,
    diameter,
    outerDiameter: body.outerDiameter,
    flangeDiameter: body.flangeDiameter,
    length: ventLength,
    fb,
    face: placed.face,
    ...(placed.bend && {
      bend: {
        radius: body.bendRadius,
        firstLeg: placed.firstLeg,
        arc: placed.bend.length,
        secondLeg: placed.bend.secondLeg,
        towards: placed.bend.towards,
      },
    }),
    pieces: piecesOf(
      placed.bend && [placed.firstLeg, placed.bend.length, placed.bend.secondLeg],
      ventLength,
      job.printer.height,
      pieces,
    ),
    clearance: body.clearance,
    spare: placement.slack.ventLength ?? 0,
  };
}

/** Straight parts cut into equal pieces that the printer takes; an elbow is a piece of its own. */
function piecesOf(parts: readonly number[] | undefined, length: number, longest: number, least: number): number[] {
  const cut = (part: number) => {
    const count = Math.max(1, Math.ceil(part / longest - 1e-9));
    return Array.from({ length: count }, () => part / count);
  };
  if (parts === undefined) return Array.from({ length: least }, () => length / least);
  const [first = 0, arc = 0, second = 0] = parts;
  return [...cut(first), arc, ...(second > 1e-4 ? cut(second) : [])];
}
