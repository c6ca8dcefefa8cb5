import type { Face } from '@airspring/core/space';
import type { Pointing } from '../drawing/index.js';
import type { Piece } from '../panel/index.js';

/** A vent with an elbow, or a straight one. */
interface Turned {
  readonly count: number;
  /** What its hole is called on a drawing; default 'vent'. */
  readonly opening?: string;
  readonly bend?: { readonly from: Face; readonly towards: Face };
  /** Set where it begins behind its panel, so that nothing of it is seen from outside. */
  readonly behind?: boolean;
}

/** The vents whose elbow begins behind a panel, as arrows on the drawing of it. */
export const elbowsBehind = (
  { face }: Pick<Piece, 'face'>,
  { vents }: { readonly vents: readonly Turned[] },
): Pointing[] => {
  const bends = vents.flatMap(({ bend, opening = 'vent' }): Pointing[] =>
    bend && bend.from === face
      ? [{ part: opening, towards: bend.towards, says: `inside, the arm points to the ${bend.towards}` }]
      : [],
  );
  return [...new Map(bends.map((one) => [`${one.part} ${one.towards}`, one])).values()];
};

/** How the pieces of a bent vent are marked before they are joined, so that the turn of its arm is seen from outside. */
export const markingText = (many: boolean): string =>
  `Push the pieces of ${many ? 'each' : 'the'} vent together dry, and draw a pencil line along the tube, from the arm of the elbow to the rim of the flange: it tells from outside which way the arm points. Take them apart again.`;

/** How the arm of an elbow is turned; `drawn` where the drawings of panels have an arrow. */
export function turningText(vents: readonly Turned[], drawn = true): string {
  const bends = vents.flatMap(({ bend, count, behind }) => (bend ? [{ bend, count, behind }] : []));
  const [first] = bends;
  if (first === undefined) return '';
  const many = bends.length > 1 || first.count > 1;
  const where = [
    ...new Set(
      bends.map(
        ({ bend: { from, towards } }) =>
          `the ${towards} panel${drawn ? `, as the arrow on the drawing of the ${from} shows` : ''}`,
      ),
    ),
  ].join('; ');
  if (bends.every(({ behind }) => behind))
    return `Turn ${many ? 'each tube' : 'the tube'} until its arm points to ${where}. `;
  return `Turn ${many ? 'each vent' : 'the vent'} until the line, and so the arm, points to ${where}. `;
}
