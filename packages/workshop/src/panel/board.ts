import { type Fault, InputError } from '@airspring/core/fault';
import {
  type Density,
  type DensityInput,
  type ElasticModulus,
  type ElasticModulusInput,
  type Field,
  given,
  optional,
  positive,
  type RatioInput,
  readFieldsInto,
  si,
} from '@airspring/core/quantity';

/** The material of panels, as a value. The numbers of one's own board are used as ours are. */
export interface Board {
  readonly name: string;
  /** Whether it has a grain, which a cut list must keep. */
  readonly grained: boolean;
  readonly density: Density;
  /** Lowest and highest density in use, over `density`. */
  readonly densityRange: readonly [low: number, high: number];
  /** Modulus of elasticity in bending, with the span along the grain and across it. */
  readonly modulusAlong: ElasticModulus;
  readonly modulusAcross: ElasticModulus;
  /** Least and greatest modulus in use, over the typical one. */
  readonly modulusRange: readonly [low: number, high: number];
  /** Modulus of shear in the plane of the board. */
  readonly shearModulus: ElasticModulus;
  /** Poisson's ratio: how much it contracts across the grain where it is stretched along it. */
  readonly poissonRatio: number;
  /** Where the numbers come from, in words for the reader. */
  readonly basis: string;
  readonly sources: readonly string[];
}

/** A board of one's own. What is left out is that of a board that is alike in all directions. */
export interface BoardInput {
  readonly name: string;
  readonly density: DensityInput;
  readonly modulusAlong: ElasticModulusInput;
  /** Default: as along. */
  readonly modulusAcross?: ElasticModulusInput | undefined;
  /** Default: that of a board alike in all directions, with the geometric mean of both moduli. */
  readonly shearModulus?: ElasticModulusInput | undefined;
  /** Default: 0.25. */
  readonly poissonRatio?: RatioInput | undefined;
  /** Default: whether the moduli differ. */
  readonly grained?: boolean | undefined;
  /** Default: 1 to 1. */
  readonly densityRange?: readonly [number, number] | undefined;
  /** Default: 1 to 1. */
  readonly modulusRange?: readonly [number, number] | undefined;
  readonly basis?: string | undefined;
  readonly sources?: readonly string[] | undefined;
}

/** A text that is not empty. */
export const words: Field<string> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'string' && value.trim() !== '') return value;
    faults.push({ code: 'empty', path, got: value, expected: 'a text', remedy: 'Give it a name.' });
    return undefined;
  },
};

const shape = {
  name: words,
  density: positive('density'),
  modulusAlong: positive('elasticModulus'),
  modulusAcross: optional(positive('elasticModulus')),
  shearModulus: optional(positive('elasticModulus')),
  poissonRatio: optional(positive('ratio')),
  grained: optional(given<boolean>()),
  densityRange: optional(given<readonly [number, number]>()),
  modulusRange: optional(given<readonly [number, number]>()),
  basis: optional(given<string>()),
  sources: optional(given<readonly string[]>()),
};

function boardInto(faults: Fault[], path: string, input: unknown): Board | undefined {
  const read = readFieldsInto(faults, path, input, shape);
  if (read === undefined) return undefined;
  const { modulusAlong, modulusAcross = modulusAlong, poissonRatio = 0.25, grained, ...board } = read;
  // A plate that gave energy instead of taking it when bent both ways would have ν₁₂ν₂₁ ≥ 1.
  const most = Math.sqrt(modulusAlong / modulusAcross);
  if (poissonRatio >= Math.min(most, 1)) {
    const expected = `less than ${Math.min(most, 1)}, 1 or the root of the ratio of the moduli`;
    const remedy = 'Give that of the stiffer direction.';
    faults.push({ code: 'inconsistent', path: `${path}.poissonRatio`, got: poissonRatio, expected, remedy });
    return undefined;
  }
  const shear = Math.sqrt(modulusAlong * modulusAcross) / (2 * (1 + poissonRatio));
  return {
    shearModulus: si('elasticModulus', shear),
    densityRange: [1, 1],
    modulusRange: [1, 1],
    basis: 'as given',
    sources: [],
    ...board,
    modulusAlong,
    modulusAcross,
    poissonRatio,
    grained: grained ?? modulusAlong !== modulusAcross,
  };
}

/** Reads a board, ours or one's own. */
export const boardField: Field<Board> = {
  optional: false,
  read: (faults, value, path) => boardInto(faults, path, value),
};

/**
 * A board of one's own, from its data sheet.
 *
 * $$ G = \frac{\sqrt{E_1 E_2}}{2(1 + \nu)} $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $G$ | Pa | `shearModulus`, where it is left out |
 * | $E_1$, $E_2$ | Pa | `modulusAlong` and `modulusAcross` |
 * | $\nu$ | 1 | `poissonRatio` |
 *
 * @validity boards that are even over their thickness, or whose bending modulus was measured
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`
 * @source own derivation: elasticity of a plate with three planes of symmetry; the shear modulus that is left out as a mean
 * @example board({ name: 'bamboo board', density: '700 kg/m³', modulusAlong: '9 GPa' })
 */
export function board(input: BoardInput): Board {
  const faults: Fault[] = [];
  const read = boardInto(faults, 'board', input);
  if (read === undefined) throw new InputError(faults);
  return read;
}

/** Medium-density fibreboard of 12 to 22 mm. */
export const mdf: Board = board({
  name: 'MDF',
  density: '730 kg/m³',
  densityRange: [0.82, 1.1],
  modulusAlong: '3 GPa',
  modulusRange: [0.73, 1.33],
  basis:
    'density 600 to 800 kg/m³ read in print; modulus 3 GPa (2.2 to 4) and Poisson’s ratio from memory; a standard asks for 2.2 GPa at least',
  sources: [],
});

/** Birch plywood of 12 to 24 mm, all plies birch. */
export const birchPlywood: Board = board({
  name: 'birch plywood',
  density: '685 kg/m³',
  densityRange: [0.97, 1.03],
  modulusAlong: '10 GPa',
  modulusAcross: '7 GPa',
  modulusRange: [0.75, 1.25],
  shearModulus: '620 N/mm²',
  poissonRatio: 0.1,
  basis: 'density of an 18 mm board read in print; moduli, good to a quarter, from memory',
  sources: [],
});

/** Particle board of type P2, 15 to 18 mm. */
export const particleBoard: Board = board({
  name: 'particle board',
  density: '650 kg/m³',
  densityRange: [0.92, 1.08],
  modulusAlong: '1.6 GPa',
  modulusRange: [1, 1.6],
  basis: 'least modulus of the standard read in print, boards are 20 to 60 % stiffer; density from memory',
  sources: [],
});
