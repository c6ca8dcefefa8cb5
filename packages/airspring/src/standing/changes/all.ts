import { type Made, type Now, refused } from './change.js';
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
export const allChanges = (now: Now): Made[] => [...changes.flatMap((change) => change(now)), ...unlikeVents(now)];

/** Vents that differ: no change of one of them is worked out, and that is told. */
function unlikeVents({ standing: { vents } }: Now): Made[] {
  if (vents.length < 2) return [];
  const head = { change: 'another vent', what: ['One of the vents changed'], holds: [] };
  return [
    refused(head, [
      'The vents differ, and a change of one of them is not worked out. Vents alike are one vent with a count.',
    ]),
  ];
}
