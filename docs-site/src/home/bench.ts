import { standardAir } from '@airspring/core/air';
import { format, type Length, si } from '@airspring/core/quantity';
import { type Face, fit, innerSize } from '@airspring/core/space';
import { airSpeedPeak, lengthForTuning } from '@airspring/core/vent';

/** What may be changed. Bench and driver are invented. */
export const inputs = {
  diameter: {
    kind: 'length',
    label: 'Inner diameter of the vent',
    value: '70 mm',
    least: '44 mm',
    greatest: '92 mm',
    step: '1 mm',
  },
} as const;

export const outer = { width: 0.41, height: 0.33, depth: 0.4 } as const;
export const thickness = 0.018;
export const driver = { outerDiameter: 0.262, cutoutDiameter: 0.232, depth: 0.118 } as const;
export const wall = 0.003;
const tuning = si('frequency', 26);
const level = 92;
/** Allowed in the vent, peak; the stricter of two rules of thumb is 10 m/s, the usual one 17 m/s. */
const limit = 12;
/** Air that the driver and the braces take. */
const taken = 0.0021;

const size = {
  outer: { width: si('length', outer.width), height: si('length', outer.height), depth: si('length', outer.depth) },
  thickness: si('length', thickness),
};
const body = {
  outerDiameter: si('length', driver.outerDiameter),
  cutoutDiameter: si('length', driver.cutoutDiameter),
  depth: si('length', driver.depth),
};

/** From the left, the bottom and the front, m. */
export type Point = readonly [x: number, y: number, z: number];

/** The vent in its box, and the driver; the box is turned so that the driver stands on the right. */
export interface Bench {
  readonly diameter: number;
  /** Left out where no length tunes the box: the tube would fill it. */
  readonly length?: number;
  readonly fits: boolean;
  readonly bend?: { readonly firstLeg: number; readonly secondLeg: number; readonly towards: Face };
  /** Centre of its hole. */
  readonly at: Point;
  readonly driverAt: Point;
  /** Peak, at the tuning. */
  readonly speed: number;
}

/** The length that tunes the box, with the tube itself taken from its air. */
function lengthOf(diameter: Length): number | undefined {
  const { width, height, depth } = innerSize(size);
  const air = width * height * depth - taken;
  let net = air;
  for (let i = 0; i < 60; i++) {
    const vent = lengthForTuning({
      vent: { diameter, wall: si('length', wall) },
      netVolume: si('volume', net),
      fb: tuning,
    });
    if (!vent.ok) return undefined;
    const next = air - (Math.PI / 4) * (diameter + 2 * wall) ** 2 * Math.max(0, vent.length - thickness);
    if (!(next > air / 3)) return undefined;
    if (Math.abs(next - net) < 1e-9) return vent.length;
    net = next;
  }
  return undefined;
}

const mirrored: Readonly<Partial<Record<Face, Face>>> = { left: 'right', right: 'left' };

export function solve({ diameter }: { readonly diameter: Length }): Bench {
  const length = lengthOf(diameter);
  // At the tuning the vent alone is heard: U = p / (ρ f) at one metre in half space.
  const pressure = 20e-6 * 10 ** (level / 20);
  const flowPeak = si('volumeFlow', (Math.SQRT2 * pressure) / (standardAir.density * tuning));
  const edge = thickness + diameter / 2 + wall + 0.01;
  const seat = thickness + driver.outerDiameter / 2;
  const outside: Bench = {
    diameter,
    ...(length !== undefined && { length }),
    fits: false,
    at: [edge, outer.height - edge, 0],
    driverAt: [outer.width - seat, seat, 0],
    speed: airSpeedPeak({ diameter, flowPeak }),
  };
  if (length === undefined) return outside;
  const fitted = fit({
    ...size,
    driver: body,
    vent: { diameter, wall: si('length', wall), length: si('length', length) },
  });
  if (!fitted.ok || !fitted.placement.vent) return outside;
  const { vent, drivers } = fitted.placement;
  const [at, driverAt] = [vent.centres[0]!, drivers[0]!.centres[0]!];
  const turned = driverAt[0] < outer.width / 2;
  const turn = ([x, y, z]: Point): Point => [turned ? outer.width - x : x, y, z];
  const { bend, firstLeg } = vent;
  return {
    ...outside,
    fits: true,
    at: turn(at),
    driverAt: turn(driverAt),
    ...(bend && {
      bend: {
        firstLeg,
        secondLeg: bend.secondLeg,
        towards: (turned && mirrored[bend.towards]) || bend.towards,
      },
    }),
  };
}

const mm = (length: number): string => `${(length * 1e3).toFixed(0)} mm`;

export function answers(values: { readonly diameter: Length }, bench = solve(values)) {
  const { length, fits, bend, speed } = bench;
  const slow = speed <= limit;
  const air = format('airSpeedPeak', speed, 'm/s');
  const verdict =
    length === undefined
      ? 'No: the tube would fill the box.'
      : !fits
        ? 'No: it does not fit, straight or bent.'
        : slow
          ? 'Yes: it fits, and its air stays below that.'
          : 'No: it fits, but its air is too fast.';
  return {
    tuning: format('frequency', tuning, 'Hz'),
    box: `the tuning ${format('frequency', tuning, 'Hz')}, and a box of ${mm(outer.width)} × ${mm(outer.height)} × ${mm(outer.depth)} outside in board of ${mm(thickness)}, of which driver and braces take ${format('volume', si('volume', taken), 'L')}`,
    tone: `and the flow that a tone of ${format('frequency', tuning, 'Hz')} needs for ${format('level', level, 'dB')} at one metre in half space`,
    level: format('level', level, 'dB'),
    limit: format('airSpeedPeak', limit, 'm/s'),
    length: length === undefined ? 'longer than any that fits' : mm(length),
    shape: !fits ? 'sticks out of the box' : bend ? 'bends once inside' : 'lies straight inside',
    speed: air,
    verdict,
  };
}
