import { type Fault, type Impossible, refuse } from '@airspring/core/fault';
import { type Length, NANOMETRE, si } from '@airspring/core/quantity';
import type { ShapeChoice, SpaceShape } from '@airspring/core/space';
import { outlineField, type PlanePoint } from '../outline/index.js';
import { faultOf, told } from '../words/told.js';
import { type Along, axesOf } from './box-shape.js';
import { drawnOut, type Space } from './drawn-out.js';
import { corner, cylinder, quarterRound, underSeat, wedge, wheelArch } from './makers.js';
import { stackSpace } from './space-stack.js';

type Called = SpaceShape['called'];
const axes = ['width', 'height', 'depth'] as const;

const metres = (length: number): Length => si('length', length);

/** Refuses a space whose edges a round shape cannot fill. */
function alike(name: string, shape: string, one: 0 | 1 | 2, other: 0 | 1 | 2, outer: Space['outer']): void {
  if (Math.abs(outer[one] - outer[other]) < NANOMETRE) return;
  const fault = faultOf({
    code: 'inconsistent',
    path: name,
    got: told`${axes[one]} ${outer[one]}, ${axes[other]} ${outer[other]}`,
    expected: `space.${axes[one]} and space.${axes[other]} of the same length, since ${shape}`,
    remedy: 'Give both the smaller one.',
  });
  refuse([fault]);
}

/** Lengths that a shape asks for, as they come from a brief. */
type Lengths<Name extends string> = Readonly<Record<Name, number>>;

const length = (what: string, example: string) => ({ takes: 'length', what, example }) as const;

/** A wedge, or a box with one slanted side: its back leans forwards. */
const wedgeSpace: ShapeChoice = {
  name: 'wedge',
  what: 'upright in front, with a back that leans forwards; its width is open',
  fields: {
    top: { ...length('outer depth at the top; default none, so that it ends in an edge', '150 mm'), optional: true },
  },
  shape: (fields, space) => {
    const { top } = fields as Partial<Lengths<'top'>>;
    const [, height, depth] = space.outer;
    const section = wedge({
      across: metres(depth),
      up: metres(height),
      ...(top !== undefined && { top: metres(top) }),
    });
    const called: Called =
      top === undefined ? ['a wedge that ends in an edge'] : ['a wedge, ', [top, 'length'], ' deep at the top'];
    return drawnOut([{ section }], 'width', called, space);
  },
};

const cylinderSpace: ShapeChoice = {
  name: 'cylinder',
  what: 'an upright cylinder, as wide as it is deep; parts stand on its top or bottom; its height is open',
  fields: {},
  shape: (_, space) => {
    alike('cylinder', 'a cylinder is as deep as it is wide', 0, 2, space.outer);
    return drawnOut(
      [{ section: cylinder({ diameter: metres(space.outer[0]) }) }],
      'height',
      ['an upright cylinder'],
      space,
    );
  },
};

/** What stands in a corner has the walls of the room behind two of its panels: nothing plays through them. */
const inCorner = (shape: SpaceShape | Impossible): SpaceShape | Impossible =>
  'faces' in shape ? { ...shape, faces: shape.faces.filter((face) => face !== 'right' && face !== 'back') } : shape;

const cornerSpace: ShapeChoice = {
  name: 'corner',
  what: 'for the corner of a room, with its walls behind the back and on the right, and a straight front across; parts stand on its top or bottom; its height is open',
  fields: {},
  shape: (_, space) => {
    const [width, , depth] = space.outer;
    const section = corner({ across: metres(width), up: metres(depth) });
    return inCorner(drawnOut([{ section }], 'height', ['a box for a corner, with a straight front'], space));
  },
};

const quarterSpace: ShapeChoice = {
  name: 'quarterRound',
  what: 'for the corner of a room, with its walls behind the back and on the right, and a round front; parts stand on its top or bottom; its height is open',
  fields: {},
  shape: (_, space) => {
    alike('quarterRound', 'a quarter round is as deep as it is wide', 0, 2, space.outer);
    const section = quarterRound({ radius: metres(space.outer[0]) });
    return inCorner(drawnOut([{ section }], 'height', ['a box for a corner, with a round front'], space));
  },
};

const underSeatSpace: ShapeChoice = {
  name: 'underSeat',
  what: 'low in front, under a seat, and high behind it; its width is open',
  fields: {
    front: length('outer height of the low part', '200 mm'),
    step: length('how far the low part reaches from the front', '380 mm'),
  },
  shape: (fields, space) => {
    const { front, step } = fields as Lengths<'front' | 'step'>;
    const [, height, depth] = space.outer;
    const sizes = { front: metres(front), step: metres(step) };
    const section = underSeat({ across: metres(depth), up: metres(height), ...sizes });
    const called: Called = [
      'a box under a seat, ',
      [front, 'length'],
      ' high for the first ',
      [step, 'length'],
      ' of its depth',
    ];
    return drawnOut([{ section }], 'width', called, space);
  },
};

const wheelArchSpace: ShapeChoice = {
  name: 'wheelArch',
  what: 'over a wheel arch, which takes a quarter of a circle from its lower corner at the back; its width is open',
  fields: { arch: length('radius of the arch', '300 mm') },
  shape: (fields, space) => {
    const { arch } = fields as Lengths<'arch'>;
    const [, height, depth] = space.outer;
    const section = wheelArch({ across: metres(depth), up: metres(height), arch: metres(arch) });
    return drawnOut([{ section }], 'width', ['a box over a wheel arch of ', [arch, 'length'], ' radius'], space);
  },
};

const outlineSpace: ShapeChoice = {
  name: 'outline',
  what: 'any section of straight sides, drawn out along one edge of the space',
  fields: {
    along: {
      takes: 'choice',
      of: axes,
      what: 'the edge that is open; along the width the section is drawn with depth and height, along the height with width and depth, along the depth with width and height',
    },
    corners: {
      takes: 'corners',
      what: 'its corners in order, which reach all four sides of the space',
      example: [
        ['0 mm', '0 mm'],
        ['400 mm', '0 mm'],
        ['150 mm', '340 mm'],
        ['0 mm', '340 mm'],
      ],
    },
  },
  shape: ({ along, corners }, space) => {
    const points = corners as readonly PlanePoint[];
    const [across, up] = axesOf[along as Along];
    const faults = ([0, 1] as const).flatMap((k): Fault[] => {
      const axis = k === 0 ? across : up;
      const [least, most] = [
        Math.min(...points.map((point) => point[k])),
        Math.max(...points.map((point) => point[k])),
      ];
      if (least === 0 && Math.abs(most - space.outer[axis]!) < NANOMETRE) return [];
      const expected = told`corners from ${0} to space.${axes[axis]!}, ${space.outer[axis]!}`;
      return [
        faultOf({
          code: 'inconsistent',
          path: 'outline.corners',
          got: told`${least} to ${most}`,
          expected,
          remedy: 'Move the corners, or change the space.',
        }),
      ];
    });
    if (faults.length === 0) outlineField.read(faults, points, 'outline.corners');
    refuse(faults);
    const section = { outline: points.map(([x, y]) => [metres(x), metres(y)] as const) };
    return drawnOut(
      [{ section }],
      along as Along,
      [`a prism: a section of ${points.length} sides, drawn out along its ${along}`],
      space,
    );
  },
};

/** The shapes that a brief may ask for in `space.shape`, as `design(brief, { shapes: standardShapes })` takes them. */
export const standardShapes: readonly ShapeChoice[] = [
  wedgeSpace,
  cylinderSpace,
  cornerSpace,
  quarterSpace,
  underSeatSpace,
  wheelArchSpace,
  outlineSpace,
  stackSpace,
];
