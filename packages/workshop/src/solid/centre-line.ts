import type { SpacePoint } from '../mesh/index.js';

/** A bend of a centre line after a straight leg, in plain SI numbers. */
export interface BendAfter {
  /** Straight length before the bend, m. */
  readonly leg: number;
  /** rad */
  readonly angle: number;
  /** Radius of the centre line, m. */
  readonly centreLineRadius: number;
  /** Direction in which it turns, rad about the centre line, from the x axis of the cross-section. */
  readonly roll: number;
}

/** Where a cross-section stands: its middle, its two axes and the direction of the centre line. */
export interface Frame {
  readonly origin: SpacePoint;
  readonly x: SpacePoint;
  readonly y: SpacePoint;
  readonly along: SpacePoint;
}

/** The centre line of a duct: straight legs and arcs of circles. It starts at the origin and runs along z. */
export interface CentreLine {
  readonly length: number;
  /** The frame at a position along it, m. */
  readonly frame: (along: number) => Frame;
  /** From where to where it is bent, and by which angle. */
  readonly arcs: readonly { readonly from: number; readonly to: number; readonly angle: number }[];
}

const start: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], along: [0, 0, 1] };

/** Sum of multiples of points. */
const sum = (...terms: readonly (readonly [number, SpacePoint])[]): SpacePoint => {
  let [x, y, z] = [0, 0, 0];
  for (const [factor, point] of terms) {
    x += factor * point[0];
    y += factor * point[1];
    z += factor * point[2];
  }
  return [x, y, z];
};

const ahead = (frame: Frame, by: number): Frame =>
  by === 0 ? frame : { ...frame, origin: sum([1, frame.origin], [by, frame.along]) };

/** The frame after part of a bend. The cross-section turns with the centre line, and about nothing else. */
function turned({ origin, x, y, along }: Frame, { centreLineRadius: R, roll }: BendAfter, angle: number): Frame {
  const [cosRoll, sinRoll] = [Math.cos(roll), Math.sin(roll)];
  const inwards = sum([cosRoll, x], [sinRoll, y]);
  const aside = sum([cosRoll, y], [-sinRoll, x]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turnedIn = sum([cos, inwards], [-sin, along]);
  return {
    origin: sum([1, origin], [R * (1 - cos), inwards], [R * sin, along]),
    x: sum([cosRoll, turnedIn], [-sinRoll, aside]),
    y: sum([sinRoll, turnedIn], [cosRoll, aside]),
    along: sum([cos, along], [sin, inwards]),
  };
}

/** The centre line of a given length through its bends. */
export function centreLine(length: number, bends: readonly BendAfter[]): CentreLine {
  let frame = start;
  let at = 0;
  const runs = bends.map((bend) => {
    const before = ahead(frame, bend.leg);
    const from = at + bend.leg;
    const straight = { frame, at };
    frame = turned(before, bend, bend.angle);
    at = from + bend.angle * bend.centreLineRadius;
    return { bend, before, from, to: at, straight };
  });
  const last = { frame, at };
  return {
    length,
    arcs: runs.map(({ from, to, bend }) => ({ from, to, angle: bend.angle })),
    frame: (along) => {
      const run = runs.find(({ to }) => along < to);
      if (run === undefined) return ahead(last.frame, along - last.at);
      if (along <= run.from) return ahead(run.straight.frame, along - run.straight.at);
      return turned(run.before, run.bend, (along - run.from) / run.bend.centreLineRadius);
    },
  };
}
