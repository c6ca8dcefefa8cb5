import type { Made, Now } from './change.js';
import { isobaricPair, oneDriver, otherWiring } from './drivers.js';
import { highPass, lessLevel } from './playing.js';
import { radiatorInstead } from './radiator.js';
import { slot } from './slot.js';
import { otherLength, secondVent, ventClosed, widerVent } from './vents.js';

const changes = [
  widerVent,
  secondVent,
  slot,
  otherLength,
  oneDriver,
  isobaricPair,
  otherWiring,
  radiatorInstead,
  highPass,
  lessLevel,
  ventClosed,
];

/** Everything that could be done to the box, each change alone. */
export const allChanges = (now: Now): Made[] => changes.flatMap((change) => change(now));
