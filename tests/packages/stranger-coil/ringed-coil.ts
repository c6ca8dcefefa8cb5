import { type CoilModel, coilOverFrequency } from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import { type CoilChoice, plainNumber, quantity } from 'airspring';
import * as v from 'valibot';

/**
 * A coil over a copper cap that the field leaves only slowly: K √(jω), in parallel with a resistance R. What a stranger's package
 * adds, in one file: the model, and how a brief asks for it.
 */
export const ringedCoil = (K: number, R: number): CoilModel =>
  coilOverFrequency({
    name: 'ringed coil',
    parameters: { K, R },
    sources: ['my bench, 2026'],
    impedance: (values, w, out) => {
      // 1/Z = 1/R + (1 − j)/(K √(2ω))
      const half = 1 / (values[0]! * Math.sqrt(2 * w));
      const conductance = 1 / values[1]! + half;
      const size = conductance ** 2 + half ** 2;
      out[0] = conductance / size;
      out[1] = half / size;
    },
    scaled: (impedance, time) => ringedCoil(K * impedance * Math.sqrt(time), R * impedance),
  });

const fields = {
  K: v.pipe(plainNumber(1e-6, 10, 0.05), v.description('size, Ω at 1 rad/s')),
  R: v.pipe(quantity('resistance', { least: 0.1, greatest: 1000, unit: 'Ω' }), v.description('of the copper cap')),
};

export const ringed: CoilChoice<typeof fields> = {
  name: 'ringed',
  what: 'a coil over a copper cap',
  fields,
  model: ({ K, R }) => ringedCoil(K, si('resistance', R)),
};
