import type { CoilCurve, Spring } from './curve.js';

/** What does not change with displacement. */
export const constant: CoilCurve = {
  name: 'constant',
  sources: [],
  reach: Infinity,
  at: (_, out) => {
    out[0] = 1;
    out[1] = 0;
  },
};

/** A suspension of one stiffness. */
export const linearSpring: Spring = {
  name: 'linear',
  sources: [],
  reach: Infinity,
  energy: (x) => x ** 2 / 2,
  at: (x, out) => {
    out[0] = x;
    out[1] = 1;
  },
  between: (from, to, out) => {
    out[0] = (from + to) / 2;
    out[1] = 0.5;
  },
};
