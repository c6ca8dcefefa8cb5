import { type Fault, refuse } from '@airspring/core/fault';
import {
  count,
  type Length,
  type LengthInput,
  NANOMETRE,
  nested,
  optional,
  positive,
  readFields,
  si,
  type Volume,
} from '@airspring/core/quantity';
import type { Mesh } from '../mesh/index.js';
import { faultOf, told } from '../words/told.js';
import { centreLine } from './centre-line.js';
import { around, sidesOf } from './cross-section.js';
import { BESIDE, ringBores } from './screws.js';
import { type Bore, sweptMesh } from './swept.js';

/** A cup that is sunk into a panel, with binding posts in its floor. All sizes have a usual value (common practice). */
export interface TerminalCupInput {
  /** Clear diameter; default 56 mm. */
  readonly diameter?: LengthInput | undefined;
  /** From the outer face of the flange to the floor; default 24 mm. */
  readonly depth?: LengthInput | undefined;
  /** Default: 2.4 mm. */
  readonly wall?: LengthInput | undefined;
  /** Default: 4 mm. */
  readonly floor?: LengthInput | undefined;
  readonly flange?:
    | {
        /** How far it reaches beyond the wall of the cup; default 11 mm. */
        readonly reach?: LengthInput | undefined;
        /** Default: 4 mm. */
        readonly thickness?: LengthInput | undefined;
        /** Screws through it; default four holes of 4 mm. */
        readonly screws?: { readonly count: number; readonly diameter: LengthInput } | undefined;
      }
    | undefined;
  /** Default: two holes of 8 mm, 19 mm apart, as for plugs in pairs. */
  readonly posts?: { readonly hole: LengthInput; readonly apart: LengthInput } | undefined;
  /** Play of the cup in the hole of the panel, on the diameter; default 1 mm. */
  readonly play?: LengthInput | undefined;
  /** Default: 0.01 mm. */
  readonly fineness?: LengthInput | undefined;
}

/** A cup for terminals. It stands on the outer face of its flange, which is how it is printed. */
export interface TerminalCup {
  readonly mesh: Mesh;
  /** Diameter of the hole in the panel. */
  readonly hole: Length;
  readonly flangeDiameter: Length;
  /** From the outer surface of the panel to the back of its floor. */
  readonly reach: Length;
  /** Air that it takes from a box: what is behind a panel of this thickness. */
  readonly displaced: (panelThickness: Length) => Volume;
}

const length = positive('length');
const shape = {
  diameter: optional(length),
  depth: optional(length),
  wall: optional(length),
  floor: optional(length),
  flange: optional(
    nested({
      reach: optional(length),
      thickness: optional(length),
      screws: optional(nested({ count: count(24), diameter: length })),
    }),
  ),
  posts: optional(nested({ hole: length, apart: length })),
  play: optional(length),
  fineness: optional(length),
};

const usual = {
  diameter: 0.056,
  depth: 0.024,
  wall: 2.4e-3,
  floor: 4e-3,
  flange: { reach: 0.011, thickness: 4e-3, screws: { count: 4, diameter: 4e-3 } },
  posts: { hole: 8e-3, apart: 0.019 },
  play: 1e-3,
  fineness: 1e-5,
} as const;

/**
 * A cup for the terminals: recessed, with a flange outside of the panel, and closed but for the holes of two binding posts and of the
 * screws in its flange.
 *
 * @validity round cups; it is airtight as far as its walls are, and once the posts are sealed
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `inconsistent` where posts or screws have no room, or the cup is no deeper than its flange is thick
 * @source own geometry: a profile led around one axis; sizes by common practice
 * @example terminalCup().hole
 */
export function terminalCup(input: TerminalCupInput = {}): TerminalCup {
  const read = readFields('cup', input, shape);
  const { diameter, depth, wall, floor, posts, play, fineness } = { ...usual, ...read };
  const { reach: beyond, thickness, screws } = { ...usual.flange, ...read.flange };
  const faults: Fault[] = [];
  const least = (path: string, got: number, than: number, what: string, remedy: string) => {
    if (got >= than - NANOMETRE) return;
    const expected = told`at least ${than}: ${what}`;
    faults.push(faultOf({ code: 'inconsistent', path: `cup.${path}`, got, expected, remedy }));
  };
  const beside = 2 * BESIDE;
  least('depth', depth, thickness, 'the flange', 'Deepen the cup.');
  least(
    'diameter',
    diameter,
    posts.apart + posts.hole + beside,
    'the posts',
    'Widen the cup, or bring the posts together.',
  );
  least('posts.apart', posts.apart, posts.hole + beside, 'plastic between the holes', 'Bring the posts further apart.');
  refuse(faults);
  const section = { form: 'round', diameter } as const;
  const reach = wall + beyond;
  const bores = ringBores({ section, from: wall, reach, thickness, fineness }, screws, 'cup.flange.screws', 'flange');
  const [from, to] = [depth, depth + floor];
  const ofPosts = [1, -1].map((side): Bore => {
    const radius = posts.hole / 2;
    const at = [(side * posts.apart) / 2, 0] as const;
    const radii = [[from, radius] as const, [to, radius] as const];
    return { at, offset: posts.apart / 2 - diameter / 2, radii, sides: sidesOf(radius, 5 * fineness) };
  });
  const middle = -diameter / 2;
  const mesh = sweptMesh({
    profile: [
      [0, 0],
      [from, 0],
      [from, middle],
      [to, middle],
      [to, wall],
      [thickness, wall],
      [thickness, reach],
      [0, reach],
    ],
    around: around(section, sidesOf(diameter / 2 + reach, fineness)),
    line: centreLine(to, []),
    step: 1,
    bores: [...bores, ...ofPosts],
  });
  const outer = diameter + 2 * wall;
  return {
    mesh,
    hole: si('length', outer + play),
    flangeDiameter: si('length', diameter + 2 * reach),
    reach: si('length', to - thickness),
    displaced: (panel) => si('volume', (Math.PI / 4) * outer ** 2 * Math.max(0, to - thickness - panel)),
  };
}
