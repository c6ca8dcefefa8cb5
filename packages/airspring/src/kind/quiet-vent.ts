import type { Air } from '@airspring/core/air';
import { type Limit, quietLimits } from '@airspring/core/limit';
import type { Frequency } from '@airspring/core/quantity';
import type { VentInput } from '@airspring/core/vent';

/** Limits on the fastest of several vents, so that each of them stays quiet by every published onset. */
export function quietVents(
  vents: readonly VentInput[],
  shares: readonly number[],
  air: Air,
  from: Frequency,
): readonly Limit[] {
  const each = vents.flatMap((vent, i) =>
    quietLimits(vent, { air, from }).map((limit) => ({ ...limit, greatestRms: limit.greatestRms / shares[i]! })),
  );
  return [true, undefined].flatMap((integrated) => {
    const alike = each.filter((limit) => limit.integrated === integrated);
    const least = Math.min(...alike.map(({ greatestRms }) => greatestRms));
    return alike.filter(({ greatestRms }) => greatestRms === least).slice(0, 1);
  });
}
