import { type Air, air, customAir } from '@airspring/core/air';
import { read, type UnitOf } from '@airspring/core/quantity';
import { airSpeedCustoms } from '@airspring/core/vent';
import { type Brief, unitsOf } from 'airspring';

/** What the page says about a brief, in SI units. */
export interface BriefFacts {
  readonly lowest: number;
  readonly highest: number;
  readonly level: number;
  readonly fall: number;
  readonly airSpeedPeak: number;
  readonly air: Air;
  readonly length: UnitOf<'length'>;
  readonly volume: UnitOf<'volume'>;
  readonly drivers: ReadonlyMap<string, { readonly Xmax: number; readonly depth: number }>;
}

const HALF_POWER = 10 * Math.log10(2);

/** Reads a brief that `design` has taken already: nothing is judged a second time. */
export function briefFacts(brief: Brief): BriefFacts {
  const { wanted, vent = {}, air: around = {}, drivers } = brief;
  return {
    lowest: read('frequency', wanted.lowest),
    highest: read('frequency', wanted.highest),
    level: read('level', wanted.level),
    fall: wanted.fall === undefined ? HALF_POWER : read('level', wanted.fall),
    airSpeedPeak:
      vent.airSpeed === undefined ? airSpeedCustoms.usual.airSpeedPeak : read('airSpeedPeak', vent.airSpeed),
    air:
      'density' in around
        ? customAir(around as Parameters<typeof customAir>[0])
        : air(around as Parameters<typeof air>[0]),
    ...unitsOf(brief),
    drivers: new Map(
      drivers.map(({ name, Xmax, depth }) => [
        name,
        { Xmax: read('displacementPeak', Xmax), depth: read('length', depth) },
      ]),
    ),
  };
}
