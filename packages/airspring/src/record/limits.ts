import { currentLimit, heatLimit, type Limit, travelLimit, voltageLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import type { Point, Variant } from '../kind/box-kind.js';

/** Every limit of a box: of the driver, of the kind's own parts, and of the amplifier. */
export const limitsOf = ({ amplifier }: Job, { choice, limits }: Variant, point: Point): Limit[] => [
  ...travelLimit(choice.drivers),
  ...heatLimit(choice.drivers),
  ...limits(point),
  voltageLimit(si('voltageRms', amplifier.voltage)),
  ...(amplifier.current < Infinity ? [currentLimit(si('currentRms', amplifier.current))] : []),
];
