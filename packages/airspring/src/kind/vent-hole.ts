import { NANOMETRE } from '@airspring/core/quantity';
import type { DesignVent } from './build-record.js';
import type { Phrase } from './phrase.js';

/** Free room kept around each tube, for glue and an inexact print, m. */
export const PLAY = 0.002;

/** Free room between a tube and its hole, all round, at least; how far a flange covers the panel beside it, m (common practice). */
const [LEAST_PLAY, COVER] = [0.5e-3, 5e-3];

/** The hole that a tube passes in its panel, and whether a saw at hand makes it. */
export interface VentHole {
  readonly diameter: number;
  readonly sawn: boolean;
}

/** The narrowest hole that a saw at hand makes, that a mouth passes and its flange covers; or one that is cut freehand. */
export function ventHole(holeSaws: readonly number[], mouth: number, flangeDiameter: number): VentHole {
  const [least, most] = widths(mouth, flangeDiameter);
  const fitting = holeSaws.filter((saw) => saw >= least - NANOMETRE && saw <= most + NANOMETRE);
  if (fitting.length === 0) return { diameter: mouth + 2 * PLAY, sawn: false };
  return { diameter: Math.min(...fitting), sawn: true };
}

const widths = (mouth: number, flangeDiameter: number) => [mouth + 2 * LEAST_PLAY, flangeDiameter - 2 * COVER] as const;

/** How the hole of a vent is made, where the brief lists saws. */
export function ventHoleWords(
  { count, flangeDiameter }: Pick<DesignVent, 'count' | 'flangeDiameter'>,
  mouth: number,
  { diameter, sawn }: VentHole,
): Phrase {
  const hole = count > 1 ? 'The hole for each vent' : 'The hole for the vent';
  if (sawn)
    return [
      `${hole} is made with the `,
      [diameter, 'length'],
      ' saw: the tube passes it, and the flange covers its edge.',
    ];
  const [least, most] = widths(mouth, flangeDiameter);
  const range: Phrase =
    most > least
      ? [
          'None of your saws makes a hole between ',
          [least, 'length'],
          ', which the tube passes, and ',
          [most, 'length'],
          ', which its flange covers.',
        ]
      : [
          'No saw fits: the flange must reach at least ',
          [LEAST_PLAY + COVER, 'length'],
          ' beyond the tube (vent.collar), or it does not cover the edge of a hole.',
        ];
  return [
    ...range,
    ` ${hole} is cut `,
    [diameter, 'length'],
    ' wide, with a jigsaw, or with a router on a circle jig.',
  ];
}
