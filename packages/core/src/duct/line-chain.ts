import { type Air, readAir, standardAir } from '../air/index.js';
import type { ChainColumns } from '../network/index.js';
import { given, type LengthInput, positive, readFields } from '../quantity/index.js';
import { chainKernel, lineAir, lineKernel, lineRoom, mostNepers } from './line-kernel.js';
import type { LineSection } from './line-section.js';

/** A kernel that fills the chain matrix of a line over frequency, for use as an element of a network. */
export type Chain = (frequencies: Float64Array, out: ChainColumns) => void;

export interface UniformLineInput {
  readonly section: LineSection;
  readonly length: LengthInput;
}

const shape = { section: given<LineSection>(), length: positive('length') };

/**
 * Compiles the chain matrix of a uniform line over frequency, for use as an element of a network. The matrix gives pressure and
 * volume flow at the near end from those at the far end.
 *
 * $$ \begin{bmatrix} A & B\\ C & D \end{bmatrix} = \begin{bmatrix} \cosh\Gamma L & Z\sinh\Gamma L\\
 *    Z^{-1}\sinh\Gamma L & \cosh\Gamma L \end{bmatrix} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `length` | m | length |
 * | $\Gamma, Z$ | `section` | 1/m, Pa·s/m³ | see {@link lineConstants} |
 *
 * @validity as {@link lineConstants}, without warnings; an attenuation above 300 Np counts as 300 Np.
 * @neglects what {@link lineConstants} neglects, and the ends.
 * @returns a kernel: A and D without unit, B in Pa·s/m³, C in m³/(Pa·s)
 * @throws InputError when it is compiled: `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source zwikker1949 line constants
 * @example compileLine({ section: roundSection({ diameter: '75 mm' }), length: '20 cm' })(frequencies, out)
 */
export function compileLine(input: UniformLineInput, air: Air = standardAir): Chain {
  readAir(air);
  const { section, length } = readFields('line', input, shape);
  return lineChain(section, length, air);
}

/** {@link compileLine} for unchecked SI numbers; the length may be 0. */
export function lineChain(section: LineSection, length: number, air: Air): Chain {
  const medium = lineAir(air);
  const room = lineRoom();
  return (frequencies, { A, B, C, D }) => {
    for (let i = 0; i < frequencies.length; i++) {
      lineKernel(section.area, section.layer, medium, 2 * Math.PI * frequencies[i]!, room);
      chainKernel(length, mostNepers, room);
      A.re[i] = D.re[i] = room[4]!;
      A.im[i] = D.im[i] = room[5]!;
      B.re[i] = room[6]!;
      B.im[i] = room[7]!;
      C.re[i] = room[8]!;
      C.im[i] = room[9]!;
    }
  };
}
