import { type OpenBaffleSpec, openBaffleFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { fit } from '@airspring/core/space';
import { type DriverChoice, type Job, SHORTEST_BAND } from '../job/job.js';
import { acousticsOf, type BoxKind, type Variant } from './box-kind.js';
import { driverLayout, driverRoom, leastFor } from './drivers.js';
import { acrossFront, onFront } from './front-alone.js';
import { noParts } from './no-parts.js';
import { metres, outerSizes } from './placing.js';
import type { Point } from './point.js';

/**
 * A board whose sides are folded back, as a box without its back. A point is the air within its sides and the path from the rear of the
 * cone around the nearest edge. The sides count as width: the path is half the board, up to the nearer edge, and the depth of the sides.
 */
function variantOf(job: Job, choice: DriverChoice): Variant {
  const { panelThickness: t } = job.space;
  const layout = driverLayout(job, choice);
  const none = noParts(layout);
  // Half of the outer edge; the sides reach as far back as a back panel would.
  const pathIn = (width: number, height: number, depth: number) => Math.min(width, height) / 2 + 2 * t + depth;
  const spec = ([, path = 0]: Point): OpenBaffleSpec => ({
    drivers: choice.drivers,
    path: si('length', path),
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });
  const { speedOfSound } = job.air;
  const { lowest, highest } = job.wanted;
  /** Above it the shape of the board decides, and not the formula. */
  const validTo = (path: number) => speedOfSound / (4 * path);
  const least = leastFor(job, choice);
  const shortest = pathIn(...least);
  const longest = Math.max(shortest, validTo(highest));
  return {
    kind: openBaffle,
    choice,
    acoustic: [
      {
        name: 'path',
        from: shortest,
        to: longest,
        ratio: 1.05,
        unit: 1e-3,
        // A band that yields must keep some breadth.
        beyond: Math.max(1, validTo(SHORTEST_BAND * lowest) / longest),
      },
    ],
    // Its air does not decide its sound.
    contents: 0,
    least,
    reference: 'maximum',
    limits: () => [],
    ...acousticsOf(openBaffleFamily, job, spec),
    ...none,
    wishes: [
      {
        path: 'wanted.highest',
        what: 'frequency up to which the formula of the baffle holds',
        quantity: 'frequency',
        unit: 'Hz',
        allowed: highest,
        sense: 'at least',
        needed: ([, path = 0]) => validTo(path),
      },
    ],
    parts: ([, path = 0], out) => {
      out.extent = path;
      out.taken = 0;
      out.effort = 0;
      return true;
    },
    room: (width, height, depth, point) =>
      none.room(width, height, depth, point) < 0 ? -1 : pathIn(width, height, depth),
    roomAtMost: (width, height, depth) => pathIn(width, height, depth),
    settle: (airBefore, _point, inner) => {
      return airBefore > 0 ? [airBefore, pathIn(...inner)] : undefined;
    },
    place: (edges) =>
      fit({
        outer: outerSizes(edges),
        thickness: metres(t),
        driver: driverRoom(choice),
        cutoutMargin: metres(job.space.cutoutPlay),
      }),
    record: ({ point: [, path = 0] }) => {
      return {
        holes: [],
        open: ['back'],
        summary: [
          'It has no back. The sound from the rear of the cone goes ',
          [path, 'length'],
          ' around the nearest edge, and cancels more of the front the lower a tone is: below ',
          [speedOfSound / (6 * path), 'frequency'],
          ' it is weaker than in a wall.',
        ],
        brief: ['no back'],
        building: [
          [
            'Build the box without a back, and put nothing into it. Its outline and its depth decide how deep it plays.',
          ],
          [
            'Keep its back at least 1 m away from a wall (common practice): a wall behind it sends the rear sound back.',
          ],
        ],
        playing: [
          [
            'The formula is that of low tones. Up to ',
            [validTo(path), 'frequency'],
            ' it holds; above, the shape of the board decides.',
          ],
        ],
        numbers: [
          { what: 'path around the nearest edge', value: [[path, 'length']] },
          { what: 'as loud as in a wall at', value: [[speedOfSound / (6 * path), 'frequency']] },
        ],
        assumed: [
          [
            'It is assumed that the drivers stand around the middle of the board, that the box stands on a floor, and that its sides count as width. This is common practice.',
          ],
        ],
        margins: [],
        warnings: [],
        givesOut: {},
        printed: false,
      };
    },
  };
}

/** Drivers in an open baffle: a board with its sides folded back, open behind. */
export const openBaffle: BoxKind<Record<never, never>> = {
  name: 'open-baffle',
  called: 'an open baffle',
  byName: true,
  fields: {},
  across: acrossFront('open-baffle'),
  variants: (job, choice) => {
    const front = onFront(choice);
    return front ? [variantOf(job, front)] : [];
  },
};
