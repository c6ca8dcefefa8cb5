import { compileBodiesFit, type Layout } from '@airspring/core/space';
import type { Variant } from './box-kind.js';

/** What a variant says of its parts when it has none that must find room beside its drivers and radiators. */
export function noParts(
  layout: Omit<Layout, 'vent'>,
): Pick<Variant, 'geometric' | 'wishes' | 'parts' | 'room' | 'roomKey'> {
  const fits = compileBodiesFit(layout);
  return {
    geometric: [],
    wishes: [],
    parts: (_, out) => {
      out.extent = 0;
      out.taken = 0;
      out.effort = 0;
      return true;
    },
    room: (width, height, depth) => (fits(width, height, depth) ? 0 : -1),
    roomKey: JSON.stringify(layout),
  };
}
