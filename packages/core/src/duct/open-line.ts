import { type Air, readAir, standardAir } from '../air/index.js';
import { complexColumn } from '../numeric/index.js';
import type { Opening } from './end-correction.js';
import type { Chain } from './line-chain.js';
import type { Radiation } from './radiation.js';

/** One end of an open line, in plain SI numbers. */
export interface LineEnd {
  readonly opening: Opening;
  readonly radiation: Radiation;
}

export interface OpenLine {
  readonly chain: Chain;
  readonly inner: LineEnd;
  readonly outer: LineEnd;
  /** Number of equal lines side by side; default 1. */
  readonly count?: number;
}

/** Fills the real and imaginary part of an admittance at frequencies in Hz. */
export type AdmittanceKernel = (frequencies: Float64Array, re: Float64Array, im: Float64Array) => void;

/** Number of frequencies in one block. */
const block = 64;

/**
 * Compiles the admittance of a line that is open at both ends, seen from the air at its inner end, with all loads included.
 * Use it to fill a law of a network from the box to `ground`.
 *
 * $$ Y = n\left[Z_{inner} + \frac{A\,Z_{outer} + B}{C\,Z_{outer} + D}\right]^{-1} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A, B, C, D$ | `chain` | | chain matrix of the line |
 * | $Z_{inner}, Z_{outer}$ | `inner`, `outer` | Pa·s/m³ | radiation impedances of the ends |
 * | $n$ | `count` | 1 | lines side by side |
 *
 * @validity those of the line and of the radiation, without warnings.
 * @neglects what one end radiates onto the other; neighbours.
 * @returns a kernel that fills real and imaginary part, m³/(Pa·s)
 * @source zwikker1949 line constants; fletcher1998 terminated lines
 * @example compileOpenLine({ chain, inner, outer })(frequencies, re, im)
 */
export const compileOpenLine = (line: OpenLine, air: Air = standardAir): AdmittanceKernel =>
  openLine(line, readAir(air), false);

/**
 * Compiles the transfer admittance of such a line: the ratio of the flow at its outer end to the pressure at its inner end.
 * The line stores air, so this flow differs from the flow at the inner end. Near the first standing wave the two have opposite
 * signs.
 *
 * $$ Y_{mouth} = n\left[(C\,Z_{outer} + D)\,Z_{inner} + A\,Z_{outer} + B\right]^{-1} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A, B, C, D$ | `chain` | | chain matrix of the line |
 * | $Z_{inner}, Z_{outer}$ | `inner`, `outer` | Pa·s/m³ | radiation impedances of the ends |
 * | $n$ | `count` | 1 | lines side by side |
 *
 * @validity those of the line and of the radiation, without warnings.
 * @neglects what one end radiates onto the other; neighbours.
 * @returns a kernel that fills real and imaginary part, m³/(Pa·s)
 * @source zwikker1949 line constants; fletcher1998 terminated lines
 * @example compileOpenLineMouth({ chain, inner, outer })(frequencies, re, im)
 */
export const compileOpenLineMouth = (line: OpenLine, air: Air = standardAir): AdmittanceKernel =>
  openLine(line, readAir(air), true);

function openLine(line: OpenLine, air: Air, mouth: boolean): AdmittanceKernel {
  const { chain, inner, outer, count = 1 } = line;
  const columns = {
    A: complexColumn(block),
    B: complexColumn(block),
    C: complexColumn(block),
    D: complexColumn(block),
  };
  const { A, B, C, D } = columns;
  const perHertz = (2 * Math.PI) / air.speedOfSound;
  const scale = ({ opening }: LineEnd) => (air.density * air.speedOfSound) / (Math.PI * opening.radius ** 2);
  const [innerScale, outerScale] = [scale(inner), scale(outer)];
  const room = new Float64Array(2);
  return (frequencies, re, im) => {
    for (let offset = 0; offset < frequencies.length; offset += block) {
      const part = frequencies.subarray(offset, offset + block);
      chain(part, columns);
      for (let i = 0; i < part.length; i++) {
        const k = perHertz * part[i]!;
        outer.radiation(outer.opening, k, room);
        const zr = outerScale * room[0]!;
        const zi = outerScale * room[1]!;
        const topRe = A.re[i]! * zr - A.im[i]! * zi + B.re[i]!;
        const topIm = A.re[i]! * zi + A.im[i]! * zr + B.im[i]!;
        const lowRe = C.re[i]! * zr - C.im[i]! * zi + D.re[i]!;
        const lowIm = C.re[i]! * zi + C.im[i]! * zr + D.im[i]!;
        inner.radiation(inner.opening, k, room);
        // Z = top/low + inner, so that Y = low/(top + inner·low): one division.
        const wr = innerScale * room[0]!;
        const wi = innerScale * room[1]!;
        const a = topRe + wr * lowRe - wi * lowIm;
        const b = topIm + wr * lowIm + wi * lowRe;
        const size = Math.hypot(a, b);
        const unit = count / size;
        const c = a / size;
        const d = b / size;
        re[offset + i] = (mouth ? c : lowRe * c + lowIm * d) * unit;
        im[offset + i] = (mouth ? -d : lowIm * c - lowRe * d) * unit;
      }
    }
  };
}
