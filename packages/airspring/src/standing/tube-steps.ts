import type { Phrase } from '../kind/phrase.js';
import type { Legs, Standing, StandingVent } from './standing.js';
import { outerOf } from './tube.js';
import { LEAST_LEG, type Passage, sawn } from './tube-change.js';
import type { Step } from './work.js';

/** A hole that is wider than its tube by more is no joint for glue alone, m (common practice). */
const LOOSE = 2e-3;

/** Which of several vents is meant. */
export const which = ({ vents }: Standing, { index, diameter, length }: StandingVent): Phrase =>
  vents.length > 1 ? [` (vent ${index + 1}, now `, [diameter, 'length'], ' × ', [length, 'length'], ')'] : [];

/** Further holes beside one that is there. */
export const drilling = ({ workshop: { holeSaws } }: Standing, hole: number, count: number): Step => ({
  does: 'drill',
  says: [
    count > 1 ? `Cut ${count} more holes of ` : 'Cut a second hole of ',
    [hole, 'length'],
    `, ${count > 1 ? 'each ' : ''}at least one tube diameter away from the first. `,
    holeSaws.length > 0 && !sawn(holeSaws, hole)
      ? `None of your saws makes a hole of this size: rout ${count > 1 ? 'them' : 'it'} along a template. `
      : '',
    'Wear eye protection and a dust mask.',
  ],
  caution: 'dust',
  holes: [{ what: 'vent', form: 'circle', diameter: hole }],
});

/** A hole made as wide as a tube needs it. */
export const enlarging = (before: Standing, was: StandingVent, { hole, how }: Passage): Step => ({
  does: 'drill',
  says:
    how === 'enlarged'
      ? [
          'Enlarge the hole',
          ...which(before, was),
          ' with the ',
          [hole, 'length'],
          ' saw. A hole saw has nothing to centre on in an open hole: clamp a board with a hole of that size over it as a guide, and wear eye protection and a dust mask.',
        ]
      : [
          'None of your saws makes the hole that it needs, ',
          [hole, 'length'],
          '. Rout the hole along a template. Wear eye protection and a dust mask.',
        ],
  caution: 'dust',
  holes: [{ what: 'vent', form: 'circle', diameter: hole }],
  ...(how === 'enlarged' && {
    parts: [
      {
        what: 'guide board, with a hole',
        made: 'cut',
        count: 1,
        size: ['of ', [hole, 'length']],
        board: { guides: hole },
      },
    ],
  }),
});

/** A vent as short as its panel is a hole: there is no tube in it. */
export function takingOut({ panelThickness, vents }: Standing, { count, length, index }: StandingVent): Step[] {
  if (!(length > panelThickness)) return [];
  const which = vents.length > 1 ? ` of vent ${index + 1}` : '';
  return [{ does: 'take out', says: [`Take the old ${count > 1 ? 'tubes' : 'tube'}${which} out.`] }];
}

/** How tubes get into their holes. */
export function fitting(
  { panelThickness: t, drivers }: Standing,
  { hole, how }: Passage,
  {
    outer,
    rounding,
    added,
    several,
  }: { readonly outer: number; readonly rounding: number; readonly added: boolean; readonly several: boolean },
): Step {
  const { cutoutDiameter = 0 } = drivers.driver;
  const widest = outer + 2 * rounding;
  const gap = hole - outer;
  const closed: Phrase =
    gap > LOOSE
      ? [
          ` ${several ? 'The holes are' : 'The hole is'} `,
          [gap, 'length'],
          ` wider than the ${several ? 'tubes' : 'tube'}: close the gap all round with a flange on ${several ? 'each' : 'the'} tube, or with a ring of board.`,
        ]
      : [];
  const says: Phrase =
    how === 'joined inside'
      ? [
          `Take a driver out, bring the ${several ? 'tubes' : 'tube'} in through the cutout, and glue ${several ? 'each' : 'it'} to the inside of the panel around ${several ? 'its' : 'the'} hole. The hole itself is the first `,
          [t, 'length'],
          ' of the vent.',
          rounding > 0
            ? ` Round the outer ${several ? 'edges of the holes' : 'edge of the hole'} like the old one.`
            : '',
        ]
      : [
          added
            ? `Push the new ${several ? 'tubes' : 'tube'} through the new ${several ? 'holes' : 'hole'}, and glue ${several ? 'them' : 'it'} in, airtight.`
            : several
              ? `Push the new tubes through their holes, and glue them in, airtight.`
              : `The new tube fits through the ${how === 'as it is' ? 'existing' : 'enlarged'} hole. Glue it in, airtight.`,
          ...closed,
          rounding > 0 && widest > hole
            ? ` The rounded inner ${several ? 'ends are' : 'end is'} wider than the hole: print ${several ? 'each' : 'it'} as a piece of its own, ${cutoutDiameter >= widest ? 'take a driver out' : 'take a panel off'}, and glue ${several ? 'them' : 'it'} on from inside.`
            : '',
        ];
  return { does: 'fit', says };
}

/** How bent tubes are joined. */
export function elbow({ drivers }: Standing, vent: StandingVent, several: boolean, legs?: Legs): Step {
  const { cutoutDiameter = 0 } = drivers.driver;
  const shape: Phrase = legs
    ? [
        `${several ? 'Each tube runs straight' : 'Straight'} for `,
        [legs.first, 'length'],
        ' from the outside of the panel, an elbow of ',
        [legs.arc, 'length'],
        ` along its middle towards the ${legs.towards}`,
        ...(legs.second > LEAST_LEG ? ([', and straight for ', [legs.second, 'length']] as const) : []),
        '. ',
      ]
    : [];
  const [them, are] = several ? ['the elbows', 'The elbows are'] : ['the elbow', 'The elbow is'];
  if (cutoutDiameter === 0) {
    const says = `Join ${them} inside: take a driver out. If its cutout does not pass ${several ? 'an elbow' : 'it'}, take a panel off.`;
    return { does: 'fit', says: [...shape, says] };
  }
  return {
    does: 'fit',
    says:
      outerOf(vent) <= cutoutDiameter
        ? [
            ...shape,
            `Join ${them} inside: take a driver out, and pass ${them} through its cutout, which is `,
            [cutoutDiameter, 'length'],
            ' wide.',
          ]
        : [...shape, `${are} wider than the cutouts: take a panel off to put ${several ? 'them' : 'it'} in.`],
  };
}
