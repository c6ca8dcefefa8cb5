import type { DriverGroup } from '@airspring/core/driver';
import { currentLimit, heatLimit, type Limit, travelLimit, voltageLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';

/** Every limit of a box: of the drivers, of its own parts such as vents, and of the amplifier. */
export const limitsOf = ({ amplifier }: Job, drivers: DriverGroup, own: readonly Limit[]): Limit[] => [
  ...travelLimit(drivers),
  ...heatLimit(drivers),
  ...own,
  voltageLimit(si('voltageRms', amplifier.voltage)),
  ...(amplifier.current < Infinity ? [currentLimit(si('currentRms', amplifier.current))] : []),
];

/** Names of the limits of every box, as nouns: 'the first limit it reaches is …'. */
export const GIVES_OUT: Readonly<Record<string, string>> = {
  travel: 'the travel of the cone (Xmax)',
  heat: 'the heat of the voice coil (Pe)',
  'amplifier voltage': 'the voltage of the amplifier',
  'amplifier current': 'the current of the amplifier',
};

/** The same for the parts of a box that stands, which is of no kind. */
export const PARTS_GIVE_OUT: Readonly<Record<string, string>> = {
  vent: 'the air speed in the vent',
  'quiet vent': 'an onset of noise in the vent',
  'radiator travel': 'the travel of the passive radiators (Xmax)',
};
