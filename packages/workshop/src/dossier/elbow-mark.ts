import type { Pointing } from '../drawing/index.js';
import type { Piece } from '../panel/index.js';
import type { Work, WorkVent } from './work.js';

/** The vents whose elbow begins behind a panel, as arrows on the drawing of it. */
export const elbowsBehind = ({ face }: Pick<Piece, 'face'>, { vents }: Pick<Work, 'vents'>): Pointing[] => {
  const bends = vents.flatMap(({ bend }) => (bend && bend.from === face ? [bend.towards] : []));
  return [...new Set(bends)].map((towards) => ({
    part: 'vent',
    towards,
    says: `inside, the arm points to the ${towards}`,
  }));
};

/** How the arm of an elbow is turned, and how its builder sees that from outside. */
export function turningText(vents: readonly WorkVent[]): string {
  const bends = vents.flatMap(({ bend, count }) => (bend ? [{ bend, count }] : []));
  const [first] = bends;
  if (first === undefined) return '';
  const many = bends.length > 1 || first.count > 1;
  const where = [
    ...new Set(
      bends.map(
        ({ bend: { from, towards } }) => `the ${towards} panel, as the arrow on the drawing of the ${from} shows`,
      ),
    ),
  ].join('; ');
  return `Before you join the pieces of ${many ? 'a' : 'the'} vent, draw a pencil line along ${many ? 'each' : 'the'} tube, from the arm of the elbow to the rim of the flange: it tells from outside which way the arm points. Turn ${many ? 'each vent' : 'the vent'} until the line, and so the arm, points to ${where}. `;
}
