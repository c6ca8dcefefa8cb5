import { type Fault, refuse } from '@airspring/core/fault';
import {
  count,
  type Field,
  type Fields,
  type Frequency,
  type Length,
  type LengthInput,
  nested,
  oneOf,
  optional,
  positive,
  readFields,
  si,
} from '@airspring/core/quantity';
import { type BeamShapes, beamShapes, type EdgeHold } from './beam-shapes.js';
import { type Board, boardField, mdf } from './board.js';
import { lowestValues, square } from './symmetric-eigen.js';

/** A brace that stands on a panel along a line from edge to edge. */
export interface BraceOnPanelInput {
  /** Which edge of the panel it divides. A brace across the width runs along the height. */
  readonly across: 'width' | 'height';
  /** Its middle, from the left or the lower edge. */
  readonly at: LengthInput;
  /** The part of it that stands on the panel, as a bar that bends with the panel. Left out: the line cannot move. */
  readonly bar?:
    | { /** Away from the panel. */ readonly depth: LengthInput; readonly thickness: LengthInput }
    | undefined;
}

/** How the four edges of a panel are held, as it is seen. */
export type PanelEdges = Readonly<Record<'left' | 'right' | 'bottom' | 'top', EdgeHold>>;

/** A panel as a thin plate. */
export interface PlateInput {
  /** Clear sizes between the panels around it. */
  readonly width: LengthInput;
  readonly height: LengthInput;
  /** As measured. */
  readonly thickness: LengthInput;
  /** Default: `mdf`. */
  readonly board?: Board | undefined;
  /** Along which of its sizes the grain runs. Default: its height. */
  readonly grain?: 'width' | 'height' | undefined;
  /** Default: 'simple' on all four. */
  readonly edges?: EdgeHold | PanelEdges | undefined;
  readonly braces?: readonly BraceOnPanelInput[] | undefined;
  /** How many resonances are wanted; default 4. */
  readonly count?: number | undefined;
}

const length = positive('length');
const hold = oneOf<EdgeHold>('simple', 'clamped');
const eachHold = nested({ left: hold, right: hold, bottom: hold, top: hold });
const edgesField: Field<EdgeHold | PanelEdges> = {
  optional: false,
  read: (faults, value, path) => (typeof value === 'string' ? hold : eachHold).read(faults, value, path),
};
const braceField = nested({
  across: oneOf('width', 'height'),
  at: length,
  bar: optional(nested({ depth: length, thickness: length })),
});
type ReadBrace = { readonly across: 'width' | 'height'; readonly at: Length } & {
  readonly bar?: { readonly depth: Length; readonly thickness: Length };
};
/** Most braces on one panel. */
const MOST_BRACES = 6;
const bracesField: Field<readonly ReadBrace[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value) && value.length <= MOST_BRACES) {
      const read = value.map((one, i) => braceField.read(faults, one, `${path}[${i}]`));
      return read.includes(undefined) ? undefined : (read as ReadBrace[]);
    }
    const expected = `a list of at most ${MOST_BRACES} braces`;
    faults.push({ code: 'out-of-range', path, got: value, expected, remedy: 'Give a list, or leave it out.' });
    return undefined;
  },
};

/** The greatest number of resonances: for higher ones the shapes are too coarse. */
const MOST = 6;
export const plateShape = {
  width: length,
  height: length,
  thickness: length,
  board: optional(boardField),
  grain: optional(oneOf('width', 'height')),
  edges: optional(edgesField),
  braces: optional(bracesField),
  count: optional(count(MOST)),
};
export type ReadPlate = Fields<typeof plateShape>;

/** A plate that is read: at least four times as long as thick, with its braces inside of its edges. */
export function readPlate(input: PlateInput): ReadPlate {
  const plate = readFields('panel', input, plateShape);
  const faults: Fault[] = [];
  const shorter = Math.min(plate.width, plate.height);
  if (plate.thickness > shorter / 4) {
    const expected = `at most a quarter of the shorter side, ${shorter / 4} m`;
    const remedy = 'A block bends in another way than a thin plate. Give the clear sizes of the panel.';
    faults.push({ code: 'inconsistent', path: 'panel.thickness', got: plate.thickness, expected, remedy });
  }
  (plate.braces ?? []).forEach(({ across, at }, i) => {
    if (at > BESIDE * plate[across] && at < (1 - BESIDE) * plate[across]) return;
    const expected = `between ${BESIDE * plate[across]} m and ${(1 - BESIDE) * plate[across]} m: inside of both edges`;
    faults.push({ code: 'inconsistent', path: `panel.braces[${i}].at`, got: at, expected, remedy: 'Move the brace.' });
  });
  refuse(faults);
  return plate;
}

/** Nearer to an edge, in parts of the side, a brace is that edge. */
const BESIDE = 0.02;
/** Shapes along each side; of panels with braces, as many again. */
const SHAPES = 5;

/** Stiffness of a board as a plate, N m: along the two sides, and against twisting with what it shares. */
function stiffnessOf({ thickness, board = mdf, grain = 'height' }: ReadPlate) {
  const { modulusAlong, modulusAcross, shearModulus, poissonRatio } = board;
  const cube = thickness ** 3 / 12;
  const shared = 1 - poissonRatio ** 2 * (modulusAcross / modulusAlong);
  const along = (modulusAlong * cube) / shared;
  const across = (modulusAcross * cube) / shared;
  const twist = poissonRatio * across + 2 * shearModulus * cube;
  return grain === 'width' ? { x: along, y: across, twist } : { x: across, y: along, twist };
}

/**
 * The lowest natural frequencies of a panel as a thin plate of even thickness, by the method of Ritz. Each shape is a product of
 * shapes of a strip along each side.
 *
 * $$ \omega^2 \rho t \int w^2 = \int \left(D_x w_{xx}^2 + D_y w_{yy}^2 + 2 H w_{xy}^2\right) + \sum EI \int w_{ss}^2 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $w$ | | m | how far the panel bends; 0 along its edges and along a line that cannot move |
 * | $\rho, t$ | `board`, `thickness` | kg/m³, m | density and thickness |
 * | $D_x, D_y$ | `board` | N m | stiffness in bending, $E_1 t^3 / 12(1 - \nu^2 E_2/E_1)$ along the grain, $E_2 t^3 / 12(1 - \nu^2 E_2/E_1)$ across it |
 * | $H$ | `board` | N m | $\nu D_2 + G t^3/6$ |
 * | $EI$ | `braces[].bar` | N m² | stiffness of a bar about its own middle, which has a mass as well |
 *
 * A simply supported edge may turn, a clamped one may not. A glued edge lies between them.
 *
 * @validity thin plates: the shorter side is at least ten times the thickness; bars of the same board
 * @neglects the air on both sides, holes and what is fitted into them, shear through the thickness (which lowers the first frequency by 1 to 2 % where the shorter side is 15 times the thickness), the twist of bars, and that a glued bar is stiffer than one about its own middle
 * @returns frequencies, the lowest first; upper bounds of the exact ones: the first within 0.1 %, the fourth within 0.5 %
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `empty`, `inconsistent` for a panel that is a block, and for a brace at an edge
 * @source own derivation: thin-plate theory by the method of Ritz; harris2002 table of thin flat plates
 * @example plateResonances({ width: '300 mm', height: '400 mm', thickness: '18 mm', edges: 'clamped' }).frequencies[0]
 */
export function plateResonances(input: PlateInput): { readonly frequencies: readonly Frequency[] } {
  const plate = readPlate(input);
  return { frequencies: resonancesOf(plate, plate.count ?? 4) };
}

/** Shapes of strips that are known already: those of a length of 1 are shared by plates of any size. */
export type Strips = Map<string, BeamShapes>;

function shapesOf(strip: Parameters<typeof beamShapes>[0], strips: Strips): BeamShapes {
  const key = JSON.stringify(strip);
  const shapes = strips.get(key) ?? beamShapes(strip, SHAPES);
  strips.set(key, shapes);
  return shapes;
}

/** The same, of a plate that was read. */
export function resonancesOf(plate: ReadPlate, wanted: number, strips: Strips = new Map()): Frequency[] {
  const { width, height, thickness, board = mdf, edges = 'simple', braces = [] } = plate;
  const held = typeof edges === 'string' ? { left: edges, right: edges, bottom: edges, top: edges } : edges;
  const strip = (across: 'width' | 'height', ends: readonly [EdgeHold, EdgeHold]): [BeamShapes, ReadBrace[]] => {
    const own = braces.filter((one) => one.across === across);
    const bars = own.filter(({ bar }) => bar !== undefined);
    const placed = (list: readonly ReadBrace[]) => list.map(({ at }) => at / plate[across]);
    const lines = placed(own.filter(({ bar }) => bar === undefined));
    return [shapesOf({ edges: ends, lines, bars: placed(bars) }, strips), bars];
  };
  const [x, barsAcross] = strip('width', [held.left, held.right]);
  const [y, barsUp] = strip('height', [held.bottom, held.top]);
  const { x: Dx, y: Dy, twist } = stiffnessOf(plate);
  const K = square(x.count * y.count);
  const M = square(x.count * y.count);
  // Sizes of the panel, and of a bar along a side, go into each term once.
  const [w2, h2] = [width ** 2, height ** 2];
  const bendX = Dx / w2 ** 2;
  const bendY = Dy / h2 ** 2;
  const twisted = (2 * twist) / (w2 * h2);
  const barTerms = (bars: readonly ReadBrace[], across: number, along4: number) =>
    bars.map(({ bar }) => {
      const area = bar!.depth * bar!.thickness;
      const modulus = board.modulusAlong;
      return {
        stiff: (modulus * area * bar!.depth ** 2) / 12 / (across * along4),
        mass: (board.density * area) / across,
      };
    });
  const onWidth = barTerms(barsAcross, width, h2 ** 2);
  const onHeight = barTerms(barsUp, height, w2 ** 2);
  for (let i = 0; i < x.count; i++) {
    for (let k = 0; k < x.count; k++) {
      for (let j = 0; j < y.count; j++) {
        for (let l = 0; l < y.count; l++) {
          const [sameX, sameY] = [i === k ? 1 : 0, j === l ? 1 : 0];
          let stiff = bendX * x.curvatures[i]![k]! * sameY + bendY * sameX * y.curvatures[j]![l]!;
          stiff += twisted * x.slopes[i]![k]! * y.slopes[j]![l]!;
          let mass = board.density * thickness * sameX * sameY;
          for (const [n, bar] of onWidth.entries()) {
            const at = x.atBars[n]![i]! * x.atBars[n]![k]!;
            stiff += bar.stiff * at * y.curvatures[j]![l]!;
            mass += bar.mass * at * sameY;
          }
          for (const [n, bar] of onHeight.entries()) {
            const at = y.atBars[n]![j]! * y.atBars[n]![l]!;
            stiff += bar.stiff * at * x.curvatures[i]![k]!;
            mass += bar.mass * at * sameX;
          }
          K[i * y.count + j]![k * y.count + l] = stiff;
          M[i * y.count + j]![k * y.count + l] = mass;
        }
      }
    }
  }
  return lowestValues(K, M, wanted).map((value) => si('frequency', Math.sqrt(value) / (2 * Math.PI)));
}
