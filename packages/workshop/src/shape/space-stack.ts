import { type Fault, isInputError, refuse } from '@airspring/core/fault';
import { NANOMETRE, si } from '@airspring/core/quantity';
import type { ShapeChoice, SpaceShape } from '@airspring/core/space';
import { outlineField, type PlanePoint } from '../outline/index.js';
import { faultOf, told } from '../words/told.js';
import { type Along, axesOf } from './box-shape.js';
import { drawnOut, type Space } from './drawn-out.js';

const axes = ['width', 'height', 'depth'] as const;

/** A layer as it comes from a brief, m. */
interface StackLayer {
  readonly corners: readonly PlanePoint[];
  readonly length?: number;
}

/** Where a stack begins, by its axis. */
const BEGINS = { width: 'from the left', height: 'from the bottom', depth: 'from the front' } as const;

/** What is wrong with the lengths of the layers, or with the cuboid around them. */
function faultsOf(along: Along, layers: readonly StackLayer[], { outer, panelThickness }: Space): Fault[] {
  const [across, up, axis] = axesOf[along];
  const faults: Fault[] = [];
  const open = layers.filter(({ length }) => length === undefined).length;
  if (open !== 1) {
    faults.push({
      code: open === 0 ? 'conflict' : 'empty',
      path: 'stack.layers',
      got: open === 0 ? 'a length for every layer' : `${open} layers without a length`,
      expected: 'exactly one layer without a length: it is as long as the wanted air needs',
      remedy: open === 0 ? 'Leave out the length of one layer.' : 'Give the others a length.',
    });
  }
  const fixed = layers.reduce((sum, { length = 0 }) => sum + length, 0);
  if (fixed + panelThickness >= outer[axis]!) {
    const fault = faultOf({
      code: 'inconsistent',
      path: 'stack.layers',
      got: told`${fixed} for the layers that have a length`,
      expected: told`less than space.${axes[axis]!}, ${outer[axis]!}, so that the open layer and its panel have room`,
      remedy: 'Make these layers shorter, or the space longer.',
    });
    faults.push(fault);
  }
  for (const k of [0, 1] as const) {
    const edge = k === 0 ? across : up;
    const all = layers.flatMap(({ corners }) => corners.map((corner) => corner[k]));
    const [least, most] = [Math.min(...all), Math.max(...all)];
    if (least === 0 && Math.abs(most - outer[edge]!) < NANOMETRE) continue;
    const fault = faultOf({
      code: 'inconsistent',
      path: 'stack.layers',
      got: told`${least} to ${most}`,
      expected: told`corners of all layers together from ${0} to space.${axes[edge]!}, ${outer[edge]!}`,
      remedy: 'Move the corners, or change the space.',
    });
    faults.push(fault);
  }
  layers.forEach(({ corners }, i) => {
    outlineField.read(faults, corners, `stack.layers[${i}].corners`);
  });
  return faults;
}

/** The faults of a box by the fields of a brief. */
function asWritten<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (!isInputError(error)) throw error;
    const path = (from: string) => from.replace(/^box\.outer/, 'stack.layers').replace(/\.outline$/, '.corners');
    return refuse(error.faults.map((fault) => ({ ...fault, path: path(fault.path) }))) as never;
  }
}

/** Sections that stand on each other: a box with a step that no single section has. */
export const stackSpace: ShapeChoice = {
  name: 'stack',
  what: 'several sections on each other, each within the next one or around it; a panel closes the larger one where they meet; one of them is open in its length',
  fields: {
    along: {
      takes: 'choice',
      of: axes,
      what: 'the edge along which they stand on each other; along the width the sections are drawn with depth and height, along the height with width and depth, along the depth with width and height',
    },
    layers: {
      takes: 'records',
      what: 'the layers in their order, from the left, the bottom or the front',
      of: {
        corners: {
          takes: 'corners',
          what: 'the corners of its section in order; all layers together reach all four sides of the space',
          example: [
            ['0 mm', '0 mm'],
            ['400 mm', '0 mm'],
            ['400 mm', '340 mm'],
            ['0 mm', '340 mm'],
          ],
        },
        length: {
          takes: 'length',
          what: 'its outer length along the stack; left out for the one layer that is as long as the air needs',
          example: '120 mm',
          optional: true,
        },
      },
    },
  },
  shape: (fields, space) => {
    const { along, layers } = fields as { readonly along: Along; readonly layers: readonly StackLayer[] };
    refuse(faultsOf(along, layers, space));
    const drawn = layers.map(({ corners, length }) => ({
      section: { outline: corners.map(([x, y]) => [si('length', x), si('length', y)] as const) },
      length,
    }));
    const told = layers.flatMap(({ corners, length }, i): SpaceShape['called'] => [
      `${i === 0 ? '' : ', then '}${corners.length} sides over `,
      ...(length === undefined ? ['the rest'] : [[length, 'length'] as const]),
    ]);
    const called: SpaceShape['called'] = [
      `a stack of ${layers.length} sections along its ${along}, ${BEGINS[along]}: `,
      ...told,
    ];
    return asWritten(() => drawnOut(drawn, along, called, space));
  },
};
