import { type Fault, refuse } from '@airspring/core/fault';
import { count, type LengthInput, nested, optional, positive, readFields } from '@airspring/core/quantity';
import type { Drawing, Shape } from '../drawing/index.js';
import type { Mesh } from '../mesh/index.js';
import { faultOf, told } from '../words/told.js';
import { centreLine } from './centre-line.js';
import { around, sidesOf } from './cross-section.js';
import { ringBores } from './screws.js';
import { sweptMesh } from './swept.js';

/** Bolts through a frame and what lies under it. */
export interface FrameBoltsInput {
  /** 2 to 24. */
  readonly count: number;
  /** Diameter of the circle through their middles. */
  readonly circle: LengthInput;
  /** Diameter of the holes. */
  readonly hole: LengthInput;
}

/** What a gasket lies between. */
export interface DriverGasketInput {
  /** Of the cutout in the panel. */
  readonly inner: LengthInput;
  /** Of the frame of the driver. */
  readonly outer: LengthInput;
  /** Default: 2 mm, before it is pressed. */
  readonly thickness?: LengthInput | undefined;
  readonly bolts?: FrameBoltsInput | undefined;
  /** Default: 0.01 mm. */
  readonly fineness?: LengthInput | undefined;
}

/** A gasket, to print and to cut. */
export interface DriverGasket {
  readonly mesh: Mesh;
  /** Its outline and its holes, to cut it from a sheet of foam. */
  readonly drawing: Drawing;
}

const shape = {
  inner: positive('length'),
  outer: positive('length'),
  thickness: optional(positive('length')),
  bolts: optional(nested({ count: count(24), circle: positive('length'), hole: positive('length') })),
  fineness: optional(positive('length')),
};

/** Before it is pressed, m; and how far a flat may be from its curve, m (common practice). */
const [usualThickness, usualFineness] = [2e-3, 1e-5];

/**
 * The gasket under the frame of a driver: a flat ring with the holes of its bolts. It is printed of a soft filament, or cut from foam.
 *
 * @validity round frames, with bolts on one circle
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `inconsistent` where the frame is no wider than the cutout, or leaves no room for the bolts
 * @source own geometry of a ring; thickness by common practice
 * @example driverGasket({ inner: '186 mm', outer: '210 mm', bolts: { count: 6, circle: '198 mm', hole: '5 mm' } }).mesh
 */
export function driverGasket(input: DriverGasketInput): DriverGasket {
  const read = readFields('gasket', input, shape);
  const { inner, outer, thickness = usualThickness, bolts, fineness = usualFineness } = read;
  const faults: Fault[] = [];
  if (outer <= inner) {
    const expected = told`wider than the cutout, ${inner}`;
    const remedy = 'Measure the frame.';
    faults.push(faultOf({ code: 'inconsistent', path: 'gasket.outer', got: told`${outer}`, expected, remedy }));
  }
  refuse(faults);
  const reach = (outer - inner) / 2;
  const section = { form: 'round', diameter: inner } as const;
  const screws = bolts && { count: bolts.count, diameter: bolts.hole, circle: bolts.circle };
  const bores = screws
    ? ringBores({ section, from: 0, reach, thickness, fineness }, screws, 'gasket.bolts', 'frame')
    : [];
  const mesh = sweptMesh({
    profile: [
      [0, 0],
      [thickness, 0],
      [thickness, reach],
      [0, reach],
    ],
    around: around(section, sidesOf(outer / 2, fineness)),
    line: centreLine(thickness, []),
    step: 1,
    bores,
  });
  const circle = (purpose: Shape['purpose'], radius: number, centre: readonly [number, number] = [0, 0]): Shape => ({
    purpose,
    form: 'circle',
    centre,
    radius,
  });
  return {
    mesh,
    drawing: {
      title: 'gasket of a driver',
      subtitle: '',
      description: 'A ring with the holes of its bolts.',
      shapes: [
        circle('cut', outer / 2),
        circle('cut', inner / 2),
        ...bores.map(({ at }) => circle('drill', bolts!.hole / 2, at)),
      ],
      dimensions: [],
      labels: [],
      callouts: [],
    },
  };
}
