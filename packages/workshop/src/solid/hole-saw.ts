import { type Fault, type Impossible, refuse } from '@airspring/core/fault';
import {
  type Field,
  type Length,
  type LengthInput,
  NANOMETRE,
  notNegative,
  optional,
  positive,
  readFields,
  readInto,
  si,
} from '@airspring/core/quantity';
import { reasonOf, told } from '../words/told.js';

export interface HoleBySawInput {
  /** Diameter of what goes through the hole. */
  readonly through: LengthInput;
  /** Diameters of the hole saws, circle cutters or router templates at hand. */
  readonly saws: readonly LengthInput[];
  /** Least play between part and hole on the diameter; default 0.5 mm (common practice). */
  readonly play?: LengthInput | undefined;
  /** How far a flange covers the panel beyond the edge of the hole, at least; default 5 mm (common practice). */
  readonly cover?: LengthInput | undefined;
}

/** A hole that one of the saws makes. */
export interface HoleBySaw {
  readonly ok: true;
  /** Of the saw, and of the hole. */
  readonly diameter: Length;
  /** Gap around the part, on the radius. */
  readonly gap: Length;
  /** Least diameter of a flange that covers the edge. */
  readonly flangeDiameter: Length;
}

/** A list of lengths. */
const lengths: Field<readonly number[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value) || value.length === 0 || value.length > MOST_SAWS) {
      const expected = `a list of 1 to ${MOST_SAWS} diameters`;
      faults.push({ code: 'empty', path, got: value, expected, remedy: 'List the diameters of the saws.' });
      return undefined;
    }
    return value.map((saw, i) => readInto(faults, 'length', saw, `${path}[${i}]`) ?? Number.NaN);
  },
};

const MOST_SAWS = 1000;

/** Read by the two-part vent as well. */
export const sawsField = lengths;

const shape = {
  through: positive('length'),
  saws: lengths,
  play: optional(notNegative('length')),
  cover: optional(notNegative('length')),
};

export const usualPlay = 5e-4;
export const usualCover = 5e-3;

/**
 * The narrowest hole that a saw at hand makes and a part goes through, and the flange that covers its edge.
 *
 * @validity round holes
 * @returns a hole, or why there is none: `no-saw-wide-enough`
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source own derivation: the least of the diameters that leave the play; play and cover are common practice
 * @example holeBySaw({ through: '76 mm', saws: ['68 mm', '76 mm', '83 mm'] }) // diameter 0.083, flangeDiameter 0.093
 */
export function holeBySaw(input: HoleBySawInput): HoleBySaw | Impossible {
  const faults: Fault[] = [];
  const { through, saws, play = usualPlay, cover = usualCover } = readFields('', input, shape);
  refuse(faults);
  const wide = saws.filter((saw) => saw >= through + play - NANOMETRE);
  if (wide.length === 0) {
    const words = told`The hole must be ${through + play} wide, but the widest saw makes ${Math.max(...saws)}. Use a jigsaw or a router.`;
    return { ok: false, because: [reasonOf('no-saw-wide-enough', words, 4)] };
  }
  const diameter = Math.min(...wide);
  return {
    ok: true,
    diameter: si('length', diameter),
    gap: si('length', (diameter - through) / 2),
    flangeDiameter: si('length', diameter + 2 * cover),
  };
}
