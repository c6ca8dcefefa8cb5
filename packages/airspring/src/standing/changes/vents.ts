import { NANOMETRE } from '@airspring/core/quantity';
import type { Phrase } from '../../kind/phrase.js';
import { inWords } from '../../kind/wording.js';
import type { Holds } from '../row.js';
import { othersOf, type Standing, type StandingVent, withVent } from '../standing.js';
import { airTaken } from '../tube.js';
import { type Bore, boresFor, lengthOrNone, stanceOf } from '../tube-change.js';
import { which } from '../tube-steps.js';
import { tubeWork } from '../tube-work.js';
import { type Change, type Made, type Now, type Proposed, refused, rowOf } from './change.js';

const MM = 1e-3;

/** The name of a change of one vent: where there are several, it says which. */
const named = ({ vents }: Standing, { index }: StandingVent, alone: string, ofSeveral: string): string =>
  vents.length > 1 ? `${ofSeveral} ${index + 1}` : alone;

/** The row of a tube in the place of a vent. */
export function tubeRow(
  now: Now,
  change: string,
  vent: StandingVent,
  holds: readonly Holds[],
  touches: Proposed['touches'],
  what?: Phrase,
): Made {
  const { standing } = now;
  const after = withVent(standing, vent);
  const work = tubeWork(standing, after);
  const head = { change, holds, what: what ?? work.what[0] ?? [] };
  const bored = work.steps.some(({ does }) => does === 'drill');
  const touched = [...touches, ...(bored ? (['holes'] as const) : [])];
  if (work.way && !touched.some((one) => standing.keep.has(one))) {
    const { needed, free } = work.way;
    const { diameter, wall } = vent;
    const because: Phrase =
      free <= standing.panelThickness
        ? [
            'A tube of ',
            [diameter + 2 * wall, 'length'],
            ' outer diameter does not stand clear of the panels and drivers around its hole.',
          ]
        : [
            'It needs ',
            [needed, 'length'],
            ' inwards from the outside of its panel; there is room for ',
            [free, 'length'],
            ' at most.',
          ];
    // With a further change it may fit.
    return { ...refused(head, because, { way: work.way }), after };
  }
  return rowOf(now, {
    ...head,
    after,
    fitting: work.fitting === 'fits' ? 'fits' : 'measure',
    bends: work.bends,
    effort: work.effort,
    steps: work.steps,
    touches: touched,
  });
}

const ORDINALS = ['second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'] as const;

/** Which of several things at hand is meant, as they rise in width; nothing where there is one. */
function ofSize(i: number, count: number): string {
  if (count === 1) return '';
  if (count === 2) return i === 0 ? 'smaller ' : 'larger ';
  if (i === 0) return 'smallest ';
  return i === count - 1 ? 'largest ' : `${ORDINALS[i - 1] ?? `${i + 1}th`} smallest `;
}

/** How each tube that is wider than the vent gets to its place, in words: no two are called the same. */
function placesOf(wider: readonly Bore[]): readonly string[] {
  const sort = ({ fixed, passage: { how } }: Bore) => (fixed ? 'pipe' : how);
  return wider.map((one) => {
    const alike = wider.filter((other) => sort(other) === sort(one)).sort((a, b) => a.bore - b.bore);
    const size = ofSize(alike.indexOf(one), alike.length);
    if (sort(one) === 'pipe') return `made of the ${size}pipe`;
    if (sort(one) === 'joined inside') return 'glued behind the hole';
    return sort(one) === 'as it is' ? 'through the hole as it is' : `in a hole cut with the ${size}saw`;
  });
}

/** The widest printed tube that needs less work than another: it passes the hole as it is, or a narrower one. */
const widestOfLessWork = (bores: readonly Bore[], { fixed, passage }: Bore): number =>
  Math.max(
    0,
    ...bores.flatMap((one) => {
      const { how, hole } = one.passage;
      const less =
        passage.how === 'joined inside' ? how === 'as it is' : how !== 'joined inside' && hole < passage.hole;
      return less && !fixed && !one.fixed ? [one.bore] : [];
    }),
  );

/** The widest tube of the same tuning for each hole that it may pass: straight, and with a bend. */
export const widerVent: Change = (now) => now.standing.vents.flatMap((vent) => widerThan(now, vent));

function widerThan(now: Now, vent: StandingVent): Made[] {
  const { standing, account } = now;
  if (account.fb === undefined) return [];
  const fb = account.fb;
  const others = othersOf(standing, vent);
  const change = named(standing, vent, 'a wider vent', 'a wider tube for vent');
  const tubeOf = ({ bore, wall, passage, fixed }: Bore): StandingVent | undefined => {
    // A pipe is cut square.
    const rounding = fixed ? 0 : vent.rounding;
    const section = { ...vent, diameter: bore, wall, rounding, hole: Math.max(vent.hole, passage.hole) };
    const length = lengthOrNone(standing, section, fb, others);
    return length === undefined ? undefined : { ...section, length };
  };
  const bores = boresFor(standing, vent);
  const wider = bores.filter(({ bore }) => bore > vent.diameter + NANOMETRE);
  const places = placesOf(wider);
  return wider.flatMap((widest, i): Made[] => {
    const called = `${change} ${places[i]}`;
    const rows: Made[] = [];
    let first: StandingVent | undefined;
    let bent = false;
    const least = Math.max(vent.diameter, widestOfLessWork(bores, widest));
    for (let bore = widest.bore; bore > least + NANOMETRE; bore -= MM) {
      const tube = tubeOf({ ...widest, bore });
      if (tube !== undefined) {
        first ??= tube;
        const stance = stanceOf(withVent(standing, tube), vent, tube);
        const stands = stance.fitting !== 'does not fit';
        if (stands && !(stance.bent && bent)) {
          rows.push(tubeRow(now, `${called}, ${stance.bent ? 'with one bend' : 'straight'}`, tube, ['tuning'], []));
          bent = stance.bent;
        }
        // A narrower one that bends is no gain.
        if (stands && !stance.bent) break;
      }
      // A pipe has one width.
      if (widest.fixed) break;
    }
    const tried = rows.some(({ row }) => row.ok && row.box.tubes.some(({ diameter }) => diameter === first?.diameter));
    return first && !tried ? [...rows, tubeRow(now, called, first, ['tuning'], [])] : rows;
  });
}

/** A tube as wide as now, for a lower and for a higher tuning. */
export const otherLength: Change = (now) => {
  const { standing, account } = now;
  if (account.fb === undefined) return [];
  const fb = account.fb;
  return standing.vents.flatMap((vent) =>
    (
      [
        ['longer', 2 ** (-1 / 4)],
        ['shorter', 2 ** (1 / 4)],
      ] as const
    ).flatMap(([how, ratio]) => {
      const length = lengthOrNone(standing, vent, fb * ratio, othersOf(standing, vent));
      if (length === undefined || length === vent.length) return [];
      const change = named(standing, vent, `a ${how} vent`, `a ${how} tube for vent`);
      return [tubeRow(now, change, { ...vent, length }, [], ['tuning'])];
    }),
  );
};

/** A second vent like the first, and two of the tuning as it is. */
export const secondVent: Change = (now) => {
  const { standing, account } = now;
  if (account.fb === undefined) return [];
  const fb = account.fb;
  return standing.vents.flatMap((vent): Made[] => {
    if (vent.count > 3) return [];
    const twice = { ...vent, count: 2 * vent.count };
    const beside = tubeRow(
      now,
      vent.count > 1
        ? named(standing, vent, 'twice as many vents', 'twice as many tubes for vent')
        : named(standing, vent, 'a second vent beside the first', 'a second vent beside vent'),
      twice,
      ['length'],
      ['tuning'],
      [
        vent.count > 1 ? `${vent.count} more tubes like those that stand: ` : 'A second tube like the first: ',
        [vent.diameter, 'length'],
        ' × ',
        [vent.length, 'length'],
      ],
    );
    const length = lengthOrNone(standing, twice, fb, othersOf(standing, vent));
    if (length === undefined) return [beside];
    const number = inWords(twice.count);
    const change = named(
      standing,
      vent,
      `${number} vents of the same tuning`,
      `${number} tubes of the same tuning for vent`,
    );
    return [beside, tubeRow(now, change, { ...twice, length }, ['tuning'], [])];
  });
};

/** A vent closed with a plug; its tube stays where it is and keeps the air that it took. */
export const ventClosed: Change = (now) => {
  const { standing, state } = now;
  const { panelThickness: t } = standing;
  if (standing.vents.length === 1) {
    const taken = standing.airBeforeVents - now.account.netVolume;
    const { effort, steps } = tubeWork(standing, { ...standing, vents: [] });
    return [
      rowOf(now, {
        change: 'the vent closed',
        what: ['The vent closed with a tight plug: a closed box'],
        holds: ['volume'],
        state: { ...state, airBeforeVents: state.airBeforeVents - taken, vents: [] },
        fitting: 'fits',
        effort,
        steps: steps.map(({ ofTubes: _, ...step }) => step),
        touches: ['tuning'],
      }),
    ];
  }
  return standing.vents.map((vent) => {
    const after = {
      ...standing,
      airBeforeVents: standing.airBeforeVents - airTaken(vent, t),
      vents: othersOf(standing, vent),
      plugged: [...(standing.plugged ?? []), vent],
    };
    const { effort, steps } = tubeWork(standing, after);
    return rowOf(now, {
      change: `vent ${vent.index + 1} closed`,
      what: ['One vent closed with a tight plug', ...which(standing, vent)],
      holds: ['volume'],
      after,
      fitting: 'fits',
      effort,
      steps,
      touches: ['tuning'],
    });
  });
};
