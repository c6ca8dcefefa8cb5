import { putProduct, startProduct, timesStep } from './chain-product.js';
import type { Chain } from './line-chain.js';
import { chainKernel, type LineAir, lineKernel, lineRoom, mostNepers } from './line-kernel.js';
import type { LineSection } from './line-section.js';

const room = lineRoom();
const product = /* @__PURE__ */ new Float64Array(8);

/** The product of the chain matrices of sections of one length each, the nearest first. Unchecked. */
export function chainOfSteps(sections: readonly LineSection[], length: number, medium: LineAir): Chain {
  const steps = sections.length;
  return (frequencies, out) => {
    for (let i = 0; i < frequencies.length; i++) {
      const omega = 2 * Math.PI * frequencies[i]!;
      startProduct(product);
      for (let n = 0; n < steps; n++) {
        const { area, layer } = sections[n]!;
        if (n === 0 || area !== sections[n - 1]!.area) {
          lineKernel(area, layer, medium, omega, room);
          chainKernel(length, mostNepers / steps, room);
        }
        const tr = room[4]!;
        const ti = room[5]!;
        timesStep(product, tr, ti, room[6]!, room[7]!, room[8]!, room[9]!, tr, ti);
      }
      putProduct(product, out, i);
    }
  };
}
