import type { StandingVent } from '../standing.js';
import type { Step } from '../work.js';

/** The holes of vents that are given up. */
export function holeClosed(vents: readonly StandingVent[]): Step {
  const count = vents.reduce((sum, vent) => sum + vent.count, 0);
  const widest = Math.max(...vents.map(({ hole }) => hole));
  return {
    does: 'fit',
    says: [
      count > 1
        ? 'Close the holes of the vents, each with a glued board.'
        : 'Close the hole of the vent with a glued board.',
    ],
    parts: [
      {
        what: 'board over the hole of a vent',
        made: 'cut',
        count,
        size: ['wider than ', [widest, 'length']],
        board: { covers: widest },
      },
    ],
  };
}
