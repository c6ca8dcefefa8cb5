/** An alignment type as a stranger writes it, from public imports alone: the deepest box whose group delay keeps a limit. */
import type { Alignment } from '@airspring/core/alignment';
import { logarithmicGrid } from '@airspring/core/quantity';
import { cutoff, respond } from '@airspring/core/response';

const grid = logarithmicGrid(10, 200, 80);

export const delayAtMost = (seconds: number): Alignment => ({
  name: `delay of ${1000 * seconds} ms`,
  order: 4,
  parameters: { seconds },
  sources: ['own'],
  target: {
    least: (system) => {
      const reach = cutoff(system);
      const excess = Math.max(...respond(system, grid).groupDelay) / seconds - 1;
      return (reach.ok ? reach.frequency : 1000) * (1 + 20 * Math.max(0, excess));
    },
  },
});
