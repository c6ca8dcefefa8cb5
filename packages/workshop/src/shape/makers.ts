import { type Fault, refuse } from '@airspring/core/fault';
import { type Length, type LengthInput, positive, readFields, si } from '@airspring/core/quantity';
import { arcCorners, type PlanePoint } from '../outline/index.js';
import { faultOf, told } from '../words/told.js';
import type { Section } from './section.js';

const length = positive('length');
/** Rounding of a sine must not make a corner that is almost, but not quite, at zero. */
const exact = (at: number): Length => si('length', Math.round(at * 1e12) / 1e12);
const metres = (points: readonly PlanePoint[]): (readonly [Length, Length])[] =>
  points.map(([x, y]) => [exact(x), exact(y)]);

/** Refuses sizes that are not below others. */
function below(
  maker: string,
  sizes: readonly (readonly [name: string, size: number, least: number, of: string])[],
): void {
  refuse(
    sizes.flatMap(([name, size, most, of]): Fault[] =>
      size < most
        ? []
        : [
            faultOf({
              code: 'inconsistent',
              path: `${maker}.${name}`,
              got: told`${size}`,
              expected: told`less than ${of}, ${most}`,
              remedy: 'Correct one of the two.',
            }),
          ],
    ),
  );
}

const rectangular = { across: length, up: length };

/**
 * The section of a wedge or of a box with one slanted side: a rectangle whose far side leans inwards towards the top.
 *
 * @validity `top` less than `across`; without `top` it ends in an edge
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`
 * @source own geometry
 * @example wedge({ across: '400 mm', up: '340 mm', top: '150 mm' }).outline.length // 4
 */
export function wedge(input: {
  readonly across: LengthInput;
  readonly up: LengthInput;
  readonly top?: LengthInput | undefined;
}): Section {
  const {
    across,
    up,
    top = 0,
  } = readFields('wedge', input, { ...rectangular, top: { ...length, optional: true as const } });
  below('wedge', [['top', top, across, 'across']]);
  const end: PlanePoint[] =
    top === 0
      ? [[0, up]]
      : [
          [top, up],
          [0, up],
        ];
  return { outline: metres([[0, 0], [across, 0], ...end]) };
}

/**
 * A round section: a cylinder, of one bent panel.
 *
 * @validity sides that turn by at most 15°; the area is that of the circle
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry
 * @example cylinder({ diameter: '300 mm' }).bent?.length // 1
 */
export function cylinder(input: { readonly diameter: LengthInput }): Section {
  const { diameter } = readFields('cylinder', input, { diameter: length });
  const radius = diameter / 2;
  const quarter = arcCorners({ centre: [0, 0], radius, from: 0, to: Math.PI / 2 }).length - 1;
  // Turned by half a side, so that no corner leaves the square around the circle.
  const from = Math.PI / (4 * quarter);
  const round = [0, 1, 2, 3].flatMap((n) => {
    const turn = from + (n * Math.PI) / 2;
    return arcCorners({ centre: [radius, radius], radius, from: turn, to: turn + Math.PI / 2 }).slice(0, -1);
  });
  return { outline: metres(round), bent: [{ first: 0, count: round.length }] };
}

/**
 * A section for the corner of a room: its two walls at right angles, and a straight front or a quarter round.
 *
 * @validity the quarter round has the area of that of the circle
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry
 * @example corner({ across: '500 mm', up: '500 mm' }).outline.length // 3
 */
export function corner(input: { readonly across: LengthInput; readonly up: LengthInput }): Section {
  const { across, up } = readFields('corner', input, rectangular);
  return {
    outline: metres([
      [0, up],
      [across, 0],
      [across, up],
    ]),
  };
}

/**
 * The same with a round front.
 *
 * @validity the area is that of the quarter circle
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry
 * @example quarterRound({ radius: '500 mm' }).bent?.length // 1
 */
export function quarterRound(input: { readonly radius: LengthInput }): Section {
  const { radius } = readFields('quarterRound', input, { radius: length });
  const arc = arcCorners({ centre: [radius, radius], radius, from: Math.PI, to: 1.5 * Math.PI });
  // Its ends stand at the walls, so that no corner leaves the square around it. The others are far enough out for the area to be right.
  const turn = Math.PI / 2 / (arc.length - 1);
  const inner = (arc.length - 3) * Math.sin(turn);
  const out = (Math.sqrt(Math.sin(turn) ** 2 + (inner * Math.PI) / 2) - Math.sin(turn)) / inner;
  const round = arc.map((_, i): PlanePoint => {
    const [angle, by] = [i * turn, i === 0 || i === arc.length - 1 ? 1 : out];
    return [radius * (1 - by * Math.cos(angle)), radius * (1 - by * Math.sin(angle))];
  });
  return { outline: metres([...round, [radius, radius]]), bent: [{ first: 0, count: round.length - 1 }] };
}

/**
 * The section of a box under a seat: low in front, where the seat is, and behind it as high as there is room.
 *
 * @validity `front` less than `up`, `step` less than `across`
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`
 * @source own geometry
 * @example underSeat({ across: '600 mm', up: '420 mm', front: '200 mm', step: '380 mm' }).outline.length // 6
 */
export function underSeat(input: {
  readonly across: LengthInput;
  readonly up: LengthInput;
  /** Height in front, and how far it reaches. */
  readonly front: LengthInput;
  readonly step: LengthInput;
}): Section {
  const { across, up, front, step } = readFields('underSeat', input, { ...rectangular, front: length, step: length });
  below('underSeat', [
    ['front', front, up, 'up'],
    ['step', step, across, 'across'],
  ]);
  return {
    outline: metres([
      [0, 0],
      [across, 0],
      [across, up],
      [step, up],
      [step, front],
      [0, front],
    ]),
  };
}

/**
 * The section of a box over a wheel arch: a rectangle whose far lower corner gives way to an arc about that corner.
 *
 * @validity `arch` less than `across` and `up`; the arc has the area of that of the circle
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`
 * @source own geometry
 * @example wheelArch({ across: '450 mm', up: '500 mm', arch: '300 mm' }).bent?.length // 1
 */
export function wheelArch(input: {
  readonly across: LengthInput;
  readonly up: LengthInput;
  /** Radius of the arch about the corner. */
  readonly arch: LengthInput;
}): Section {
  const { across, up, arch } = readFields('wheelArch', input, { ...rectangular, arch: length });
  below('wheelArch', [
    ['arch', arch, across, 'across'],
    ['arch', arch, up, 'up'],
  ]);
  const round = arcCorners({ centre: [across, 0], radius: arch, from: Math.PI, to: Math.PI / 2 });
  return { outline: metres([[0, 0], ...round, [across, up], [0, up]]), bent: [{ first: 1, count: round.length - 1 }] };
}
