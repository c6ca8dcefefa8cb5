import { NANOMETRE } from '@airspring/core/quantity';
import type { Phrase } from '../kind/phrase.js';
import { type Account, accountOf } from './account.js';
import { glanced, shortfall } from './shortfall.js';
import { type Standing, type StandingVent, withVent } from './standing.js';
import { soundingOf, stateOf } from './state.js';
import { outerOf, sectionTaken } from './tube.js';
import { type Bore, boresFor, flangeAround, type Passage, stanceOf } from './tube-change.js';

/** A tube of one length in the flange, and what it does. */
export interface TubeOption {
  readonly length: number;
  readonly fitting: 'fits' | 'measure' | 'does not fit';
  readonly bent: boolean;
  readonly account: Account;
}

/** Tubes for one flange in one hole, of one diameter and many lengths. */
export interface TubeSet {
  /** Of the vents that stand, the one whose hole it is. */
  readonly vent: number;
  /** The hole, and how it is made. */
  readonly hole: Passage;
  readonly diameter: number;
  readonly outerDiameter: number;
  /** Radius at both ends; that of a pipe is 0. */
  readonly rounding: number;
  readonly flangeDiameter: number;
  /** From the shortest to the longest. */
  readonly options: readonly TubeOption[];
  /** Places in `options` of the tubes that are worth printing, each with what it is for. */
  readonly proposed: readonly { readonly option: number; readonly purpose: Purpose }[];
}

/** Nearest to the level and the reach that are wanted; deepest with calm air; loudest without losing reach. */
export type Purpose = 'nearest' | 'deep' | 'loud';

const LENGTHS = 24;
const MM = 1e-3;
/** What a pipe is thicker by where the ring with its rim is glued over it, on the radius, m (common practice). */
const PIPE_COLLAR = 0.0031;
/** Tubes that differ by less are one. */
const APART = 0.01;
/** The loudest tube may reach this much less deep than the deepest one, as a ratio, where none reaches deep enough. */
const THIRD_OF_AN_OCTAVE = 2 ** (1 / 3);

/** Sets of tubes for one flange, and a sentence for each that there might have been and is not. */
export interface TubeSets {
  readonly sets: readonly TubeSet[];
  readonly leftOut: readonly Phrase[];
}

/** A set of tubes for one flange in each hole: as it is, and made larger by each saw; and for each pipe that passes one. */
export function tubeSets(standing: Standing): TubeSets {
  if (standing.vents.length > 0 && standing.keep.has('tuning'))
    return { sets: [], leftOut: [['Each tube of a set has a tuning of its own, and you want to keep the tuning.']] };
  const found = standing.vents.map((vent) => setsOf(standing, vent));
  return { sets: found.flatMap(({ sets }) => sets), leftOut: found.flatMap(({ leftOut }) => leftOut) };
}

function setsOf(standing: Standing, vent: StandingVent): TubeSets {
  if (vent.count > 1) {
    const equal = `A set is for one hole, and ${vent.count} equal vents are told as one. List them one by one (standing.vents) to have a set for each hole.`;
    return { sets: [], leftOut: [[equal]] };
  }
  const { width } = standing.workshop.printer;
  const leftOut: Phrase[] = [];
  const sets = boresFor(standing, vent).flatMap((given): TubeSet[] => {
    const { how, hole } = given.passage;
    if (how !== 'as it is' && how !== 'enlarged') return [];
    if (how === 'enlarged' && standing.keep.has('holes')) {
      leftOut.push(['Tubes for a hole of ', [hole, 'length'], ': you want to keep the holes.']);
      return [];
    }
    const rounding = given.fixed ? 0 : vent.rounding;
    // The tube that stands in the hole passes it, however tight.
    const asItStands = how === 'as it is' && !given.fixed && outerOf(vent) + 2 * rounding <= hole + NANOMETRE;
    const bore =
      asItStands && given.bore < vent.diameter
        ? { ...given, bore: vent.diameter, wall: vent.wall }
        : { ...given, bore: given.bore - 2 * rounding };
    // A tube slides in from outside: its rounded inner end passes the hole too.
    if (rounding > 0 && bore.bore < vent.diameter - NANOMETRE) {
      leftOut.push([
        'Tubes for a hole of ',
        [hole, 'length'],
        ': a tube as wide as yours does not slide through it with its rounded inner end.',
      ]);
      return [];
    }
    const set = setOf(standing, { ...vent, rounding }, bore);
    const tubes: Phrase = ['Tubes of ', [set.diameter, 'length'], ': '];
    if (set.flangeDiameter > width + NANOMETRE) {
      const wide: Phrase = [
        'their flange is ',
        [set.flangeDiameter, 'length'],
        ' wide, and your printer takes parts up to ',
      ];
      leftOut.push([...tubes, ...wide, [width, 'length'], ' wide.']);
      return [];
    }
    if (set.options.every(({ fitting }) => fitting === 'does not fit'))
      leftOut.push([...tubes, 'none of them fits behind the hole.']);
    return [set];
  });
  return { sets, leftOut };
}

/** Whether tubes of these diameters are cut from a pipe at hand. */
export const isPipe = ({ workshop }: Standing, diameter: number, outerDiameter: number): boolean =>
  workshop.pipes.some(
    ({ inner, outer }) => Math.abs(inner - diameter) < NANOMETRE && Math.abs(outer - outerDiameter) < NANOMETRE,
  );

/** The box with a tube of a set in its hole. */
export function filledWith(
  standing: Standing,
  set: Pick<TubeSet, 'vent' | 'hole' | 'diameter' | 'outerDiameter' | 'rounding'>,
  { length }: Pick<TubeOption, 'length'>,
) {
  const vent = standing.vents.find(({ index }) => index === set.vent)!;
  const {
    diameter,
    outerDiameter,
    rounding,
    hole: { hole },
  } = set;
  const tube = { ...vent, diameter, wall: (outerDiameter - diameter) / 2, rounding, hole, length };
  const state = stateOf(withVent(standing, tube));
  return { tube, state, sounding: soundingOf(standing, state) };
}

function setOf(standing: Standing, vent: StandingVent, { bore, wall, passage }: Bore): TubeSet {
  const section = { ...vent, diameter: bore, wall, hole: passage.hole };
  const outerDiameter = outerOf(section);
  const head = { vent: vent.index, hole: passage, diameter: bore, outerDiameter, rounding: vent.rounding };
  const shortest = standing.panelThickness + 5 * MM;
  const longest = Math.max(2 * shortest, Math.min(standing.airBeforeVents / 3 / sectionTaken(section), shortest + 0.6));
  const lengths = Array.from(
    { length: LENGTHS },
    (_, i) => Math.round((shortest * (longest / shortest) ** (i / (LENGTHS - 1))) / MM) * MM,
  );
  // A tube is no shorter than the rounding of both its ends.
  const round = [...new Set(lengths)].filter((length) => length >= 2 * vent.rounding);
  const options = round.flatMap((length): TubeOption[] => {
    const { tube, state, sounding } = filledWith(standing, head, { length });
    if (!sounding.ok) return [];
    const stance = stanceOf(standing, vent, tube);
    const bent = stance.fitting !== 'does not fit' && stance.bent;
    return [{ length, fitting: stance.fitting, bent, account: accountOf(standing.job, state, sounding) }];
  });
  return {
    ...head,
    flangeDiameter: flangeAround(
      isPipe(standing, bore, outerDiameter) ? { ...section, wall: wall + PIPE_COLLAR } : section,
      passage.hole,
    ),
    options,
    proposed: proposedOf(standing, options),
  };
}

function proposedOf({ job, airSpeedPeak }: Standing, options: readonly TubeOption[]): TubeSet['proposed'] {
  const able = options.map((one, option) => ({ ...one, option })).filter(({ fitting }) => fitting !== 'does not fit');
  type Able = (typeof able)[number];
  const least = (list: readonly Able[], of: (one: Able) => number) =>
    list.reduce<Able | undefined>((best, one) => (best && of(best) <= of(one) ? best : one), undefined);
  const reach = ({ account }: Able) => account.reach ?? Infinity;
  const calm = able.filter(({ account }) => (account.wanted.airSpeed?.value ?? 0) <= airSpeedPeak);
  const deepest = Math.min(...able.map(reach));
  const deepEnough = Math.max(job.wanted.lowest, deepest <= job.wanted.lowest ? 0 : deepest * THIRD_OF_AN_OCTAVE);
  const chosen: { option: number; purpose: Purpose; length: number }[] = [];
  for (const [one, purpose] of [
    // The list rises in length: of equal ones the shortest is taken.
    [least(able, ({ account }) => Math.round(10 * shortfall(job, glanced(account)))), 'nearest'],
    [least(calm, reach), 'deep'],
    [
      least(
        able.filter((tube) => reach(tube) <= deepEnough),
        ({ account }) => -account.loudest.level,
      ),
      'loud',
    ],
  ] as const) {
    if (one === undefined || chosen.some(({ length }) => Math.abs(length - one.length) < APART)) continue;
    chosen.push({ option: one.option, purpose, length: one.length });
  }
  return chosen.map(({ option, purpose }) => ({ option, purpose }));
}
