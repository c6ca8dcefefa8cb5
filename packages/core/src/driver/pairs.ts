import type { Law } from '../network/index.js';

/** The kernel of a law that takes its numbers from pairs that a model fills at one frequency. */
export type Pairs = (values: Float64Array, w: number, out: Float64Array) => void;

/** Takes the pair at `place` of what `pairs` fills for each frequency. */
export const column =
  (length: number, pairs: Pairs, place: number): Law['fill'] =>
  (values, at, frequencies, { re, im }) => {
    const own = values.subarray(at, at + length);
    const out = new Float64Array(2 * (length + 1));
    for (let i = 0; i < frequencies.length; i++) {
      pairs(own, 2 * Math.PI * frequencies[i]!, out);
      re[i] = out[2 * place]!;
      im[i] = out[2 * place + 1]!;
    }
  };

/** The slopes of a law from pairs: by ln f first, then by each parameter. */
export const sloped = (length: number, pairs: Pairs): Pick<Law, 'slope' | 'parameterSlope'> => {
  const columns = Array.from({ length: length + 1 }, (_, place) => column(length, pairs, place));
  return {
    slope: columns[0] as Law['fill'],
    parameterSlope: (parameter, ...rest) => columns[parameter + 1]?.(...rest),
  };
};
