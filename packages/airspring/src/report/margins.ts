import { format, type Kind, type UnitOf } from '@airspring/core/quantity';
import type { Design, Margin } from '../answer.js';
import type { Build } from '../box/build.js';
import { reachOf } from '../box/candidate.js';
import type { Job } from '../brief/job.js';
import { type Excess, wishes } from '../search/wishes.js';

/** How one wish is said: its value allowed, its kind and unit, and in which words. */
export function wishValue(job: Job, index: number) {
  const { wanted, space, vent, printer, amplifier, units } = job;
  const said = <K extends Kind>(what: string, kind: K, allowed: number, unit: UnitOf<K>) => ({
    what,
    kind: kind as Kind,
    allowed,
    unit: unit as string,
    text: (value: number) => format(kind, value, unit, 4),
  });
  const all = [
    said('cut-off of the response', 'frequency', wanted.lowest, 'Hz'),
    said('level by cone and coil', 'level', wanted.level, 'dB'),
    said('rise of the response', 'level', wanted.rise, 'dB'),
    said('outer width', 'length', space.width, units.length),
    said('outer height', 'length', space.height, units.length),
    said('outer depth', 'length', space.depth, units.length),
    said('outer volume', 'volume', space.volume, units.volume),
    said('air speed in the vent, peak', 'airSpeedPeak', vent.airSpeedPeak, 'm/s'),
    said('inner diameter of the vent', 'length', vent.largest, units.length),
    said('widest printed part', 'length', printer.width, units.length),
    said('drive', 'voltageRms', amplifier.voltage, 'V'),
    said('current', 'currentRms', amplifier.current, 'A'),
  ];
  return all[index] as ReturnType<typeof said>;
}

/** What a build needs of a wish, in SI: from its excess, which is a logarithm of needed over allowed (levels apart). */
export function needed(job: Job, index: number, excess: Excess): number {
  const { kind, allowed } = wishValue(job, index);
  const over = excess[index] as number;
  const decibels = (20 / Math.LN10) * over;
  if (kind !== 'level') return allowed * Math.exp(over);
  // The level that travel and heat leave falls as the excess rises; a rise is counted in dB as it is.
  return wishes[index]?.path === 'wanted.level' ? allowed - decibels : allowed + decibels;
}

/** How near a build is to each thing that the brief limits. */
export function marginsOf(job: Job, { excess, kin }: Build): Margin[] {
  return wishes.flatMap(({ path }, i): Margin[] => {
    const { what, allowed, text } = wishValue(job, i);
    const ofVent = path.startsWith('vent') || path.startsWith('printer');
    if (!(allowed < Infinity) || (ofVent && kin.family === 'closed')) return [];
    const sense = path === 'wanted.level' ? ('at least' as const) : ('at most' as const);
    const relative = Math.expm1(excess[i] as number);
    return [{ path, what, value: text(needed(job, i, excess)), limit: text(allowed), sense, relative }];
  });
}

/** A limit that is no wish: what the driver and the printer themselves allow. */
function plainMargin<K extends Kind>(
  path: string,
  what: string,
  [kind, unit]: readonly [K, UnitOf<K>],
  value: number,
  limit: number,
  sense: Margin['sense'] = 'at most',
): Margin[] {
  if (!(limit < Infinity)) return [];
  const text = (number: number) => format(kind, number, unit, 4);
  return [
    {
      path,
      what,
      value: text(value),
      limit: text(limit),
      sense,
      relative: sense === 'at most' ? value / limit - 1 : limit / value - 1,
    },
  ];
}

/** How near a build comes to what its driver and the printer take; `spare` is the room left behind the driver. */
export function partMargins(
  { units, printer }: Job,
  { kin: { offer } }: Build,
  { displacementPeak, heat }: Design['atWantedLevel'],
  spare: number,
  vent: Design['vent'],
): Margin[] {
  const path = `drivers[${offer.driverIndex}]`;
  const { Xmax = Infinity, Pe = Infinity } = offer.drivers.driver;
  const reach = reachOf(offer.drivers);
  const length = ['length', units.length] as const;
  return [
    ...plainMargin(`${path}.Xmax`, 'cone travel, peak', ['displacementPeak', 'mm'], displacementPeak.value, Xmax),
    ...plainMargin(`${path}.Pe`, 'heat in each voice coil', ['power', 'W'], heat.value, Pe),
    ...plainMargin(`${path}.depth`, 'depth for the driver', length, reach + spare, reach, 'at least'),
    ...(vent
      ? plainMargin('printer.height', 'longest printed piece', length, Math.max(...vent.pieces), printer.height)
      : []),
  ];
}
