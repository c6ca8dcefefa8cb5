import type { Chain } from './line-chain.js';
import { chainKernel, type LineAir, lineKernel, lineRoom, mostNepers } from './line-kernel.js';
import type { LineSection } from './line-section.js';

const room = lineRoom();

/** The product of the chain matrices of sections of one length each, the nearest first. Unchecked. */
export function chainOfSteps(sections: readonly LineSection[], length: number, medium: LineAir): Chain {
  const steps = sections.length;
  return (frequencies, { A, B, C, D }) => {
    for (let i = 0; i < frequencies.length; i++) {
      const omega = 2 * Math.PI * frequencies[i]!;
      let [ar, ai, br, bi, cr, ci, dr, di] = [1, 0, 0, 0, 0, 0, 1, 0];
      for (let n = 0; n < steps; n++) {
        const { area, layer } = sections[n]!;
        if (n === 0 || area !== sections[n - 1]!.area) {
          lineKernel(area, layer, medium, omega, room);
          chainKernel(length, mostNepers / steps, room);
        }
        const tr = room[4]!;
        const ti = room[5]!;
        const ur = room[6]!;
        const ui = room[7]!;
        const vr = room[8]!;
        const vi = room[9]!;
        [ar, ai, br, bi] = [
          ar * tr - ai * ti + br * vr - bi * vi,
          ar * ti + ai * tr + br * vi + bi * vr,
          ar * ur - ai * ui + br * tr - bi * ti,
          ar * ui + ai * ur + br * ti + bi * tr,
        ];
        [cr, ci, dr, di] = [
          cr * tr - ci * ti + dr * vr - di * vi,
          cr * ti + ci * tr + dr * vi + di * vr,
          cr * ur - ci * ui + dr * tr - di * ti,
          cr * ui + ci * ur + dr * ti + di * tr,
        ];
      }
      A.re[i] = ar;
      A.im[i] = ai;
      B.re[i] = br;
      B.im[i] = bi;
      C.re[i] = cr;
      C.im[i] = ci;
      D.re[i] = dr;
      D.im[i] = di;
    }
  };
}
