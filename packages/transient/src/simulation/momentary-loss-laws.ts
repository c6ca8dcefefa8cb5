import type { LawResult } from '@airspring/core/laws';
import type { MomentaryLoss } from './momentary-loss.js';
import { filled, first, slopeFault, tried } from './trial.js';

/**
 * The laws of every loss at an instant, ours and a stranger's: it gives no energy, loses no less at a greater flow, nothing in still
 * air, and its slope is that of its pressure.
 *
 * @validity flows up to 1 m³/s either way
 * @neglects whether the loss describes a real opening
 * @returns one result for each law
 * @source own (definitions)
 * @example momentaryLossLaws(quadraticVentLoss({ area: '60 cm²', outward: 1.5 })).every(({ holds }) => holds)
 */
export function momentaryLossLaws(loss: MomentaryLoss): readonly LawResult[] {
  const sizes = Array.from({ length: 61 }, (_, i) => 10 ** (-6 + i / 10));
  const flows = [...sizes.map((size) => -size).reverse(), 0, ...sizes];
  const extent = `${flows.length} flows`;
  const pressure = (flow: number) => filled(loss.at, flow)[0];
  return [
    tried('is finite', extent, () =>
      first(flows, (flow) => (filled(loss.at, flow).every(Number.isFinite) ? undefined : `at ${flow} m³/s`)),
    ),
    tried('gives no energy', extent, () =>
      first(flows, (flow) =>
        pressure(flow) * flow >= 0
          ? undefined
          : `${pressure(flow)} Pa at ${flow} m³/s push on what they should hold back`,
      ),
    ),
    tried('takes nothing in still air', 'once', () => (Math.abs(pressure(0)) === 0 ? undefined : `${pressure(0)} Pa`)),
    tried('loses no less at a greater flow', extent, () =>
      first(flows.slice(1), (flow) => {
        const before = flows[flows.indexOf(flow) - 1]!;
        return pressure(flow) >= pressure(before) ? undefined : `it falls from ${before} to ${flow} m³/s`;
      }),
    ),
    tried('its slope is that of its pressure', extent, () =>
      first([...sizes, ...sizes.map((size) => -size)], (flow) =>
        slopeFault(pressure, filled(loss.at, flow)[1], flow, 1e-5 * Math.abs(flow)),
      ),
    ),
  ];
}
