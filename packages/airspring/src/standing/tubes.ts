import { NANOMETRE } from '@airspring/core/quantity';
import { type Account, accountOf } from './account.js';
import { glanced, shortfall } from './shortfall.js';
import { type Standing, type StandingVent, withVent } from './standing.js';
import { soundingOf, stateOf } from './state.js';
import { outerOf, sectionTaken } from './tube.js';
import { type Bore, boresFor, type Passage, stanceOf } from './tube-change.js';

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
const COLLAR = 0.01;
/** What a pipe is thicker by where the ring with its rim is glued over it, on the radius, m (common practice). */
const PIPE_COLLAR = 0.0031;
/** Tubes that differ by less are one. */
const APART = 0.01;
/** The loudest tube may reach this much less deep than the deepest one, as a ratio, where none reaches deep enough. */
const THIRD_OF_AN_OCTAVE = 2 ** (1 / 3);

/** A set of tubes for one flange in each hole: as it is, and made larger by each saw; and for each pipe that passes one; none that a printer is too narrow for. */
export function tubeSets(standing: Standing): TubeSet[] {
  if (standing.keep.has('tuning')) return [];
  const { workshop } = standing;
  return standing.vents.flatMap((vent) => {
    if (vent.count > 1) return [];
    const holds = ({ passage: { how } }: Bore) =>
      how === 'as it is' || (how === 'enlarged' && !standing.keep.has('holes'));
    const bores = boresFor(standing, vent).filter(holds);
    return bores
      .map((bore, i) =>
        i === 0 && bore.bore < vent.diameter ? { ...bore, bore: vent.diameter, wall: vent.wall } : bore,
      )
      .filter(
        (bore) =>
          bore.fixed || outerOf({ ...bore, diameter: bore.bore }) + 2 * COLLAR <= workshop.printer.width + NANOMETRE,
      )
      .map((bore) => setOf(standing, vent, bore));
  });
}

/** Whether tubes of these diameters are cut from a pipe at hand. */
export const isPipe = ({ workshop }: Standing, diameter: number, outerDiameter: number): boolean =>
  workshop.pipes.some(
    ({ inner, outer }) => Math.abs(inner - diameter) < NANOMETRE && Math.abs(outer - outerDiameter) < NANOMETRE,
  );

/** The box with a tube of a set in its hole. */
export function filledWith(
  standing: Standing,
  set: Pick<TubeSet, 'vent' | 'hole' | 'diameter' | 'outerDiameter'>,
  { length }: Pick<TubeOption, 'length'>,
) {
  const vent = standing.vents.find(({ index }) => index === set.vent)!;
  const {
    diameter,
    outerDiameter,
    hole: { hole },
  } = set;
  const tube = { ...vent, diameter, wall: (outerDiameter - diameter) / 2, hole, length };
  const state = stateOf(withVent(standing, tube));
  return { tube, state, sounding: soundingOf(standing, state) };
}

function setOf(standing: Standing, vent: StandingVent, { bore, wall, passage }: Bore): TubeSet {
  const section = { ...vent, diameter: bore, wall, hole: passage.hole };
  const outerDiameter = outerOf(section);
  const head = { vent: vent.index, hole: passage, diameter: bore, outerDiameter };
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
    flangeDiameter: outerDiameter + 2 * COLLAR + (isPipe(standing, bore, outerDiameter) ? 2 * PIPE_COLLAR : 0),
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
