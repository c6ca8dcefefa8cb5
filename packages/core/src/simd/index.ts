/** How are polynomials swept by the vector unit of the processor? */
export { type SimdSweep, simdSweep } from './simd-sweep.js';
