import { driversOf, type MixedBoxSpec } from '../enclosure/index.js';
import type { AirSpeedRmsInput } from '../quantity/index.js';
import { airSpeedLimit, heatLimit, type Limit, travelLimit } from './limit.js';

/** The same limit for one of several parts, by name: it reads the probe `coneVelocity left` and is called 'travel of left'. */
const ofPart = (limit: Limit, part: string): Limit => ({
  ...limit,
  name: `${limit.name} of ${part}`,
  ...(limit.probe !== undefined && { probe: `${limit.probe} ${part}` }),
  ...(limit.exponents && {
    exponents: Object.fromEntries(Object.entries(limit.exponents).map(([name, power]) => [`${name} ${part}`, power])),
  }),
});

/**
 * Limits on travel and heat of each driver of a mixed box and, where an air speed is given, on the air speed in each vent of
 * known area: 'travel of left', 'heat of left', 'vent of low'. A value that a driver does not state sets no limit.
 *
 * @validity as `travelLimit`, `heatLimit` and `airSpeedLimit`
 * @neglects what they neglect
 * @returns limits for `greatestLevel`, in the order of the drivers, vents last
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range` for the air speed
 * @source small1972direct electro-mechano-acoustical circuit, one for each driver
 * @example greatestLevel(box, limitsOfEach(box.spec, { airSpeedRms: '12 m/s' }), grid).binding // 'travel of low', …
 */
export function limitsOfEach(
  { drivers, chambers }: MixedBoxSpec,
  { airSpeedRms }: { readonly airSpeedRms?: AirSpeedRmsInput } = {},
): readonly Limit[] {
  const cones = driversOf(drivers).flatMap(({ name, driver }) =>
    [...travelLimit(driver), ...heatLimit(driver)].map((limit) => ofPart(limit, name)),
  );
  if (airSpeedRms === undefined) return cones;
  const speed = airSpeedLimit(airSpeedRms);
  const vents = Object.entries(chambers).flatMap(([name, chamber]) =>
    'ventArea' in chamber && chamber.ventArea !== undefined ? [ofPart(speed, name)] : [],
  );
  return [...cones, ...vents];
}
