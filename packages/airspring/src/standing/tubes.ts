import { type Account, accountOf } from './account.js';
import type { Standing, StandingVent, Tube } from './standing.js';
import { soundingOf, stateOf, ventOf } from './state.js';
import { boreFor, outerOf, sectionTaken, stanceOf } from './tube-change.js';

/** A tube of one length in the flange, and what it does. */
export interface TubeOption {
  readonly length: number;
  readonly fitting: 'fits' | 'measure' | 'does not fit';
  readonly bent: boolean;
  readonly account: Account;
}

/** Tubes for one flange, of one diameter and many lengths. */
export interface TubeSet {
  readonly diameter: number;
  readonly outerDiameter: number;
  readonly flangeDiameter: number;
  /** From the shortest to the longest. */
  readonly options: readonly TubeOption[];
  /** Places in `options` of the tubes that are worth printing, each with what it is for. */
  readonly proposed: readonly { readonly option: number; readonly purpose: Purpose }[];
}

export type Purpose = 'deep' | 'loud' | 'quickest to print';

const LENGTHS = 48;
const MM = 1e-3;
const COLLAR = 0.01;
/** Tubes that differ by less are one. */
const APART = 0.01;

/** The set of tubes for one flange in the hole of the first vent: as wide as the hole lets a tube be. */
export function tubeSet(standing: Standing): TubeSet | undefined {
  const [vent, ...others] = standing.vents;
  if (vent === undefined || others.length > 0 || standing.keep.has('tuning')) return undefined;
  const wall = vent.wall;
  const diameter = Math.max(vent.diameter, boreFor(vent.hole, wall));
  const shortest = standing.panelThickness + 5 * MM;
  const longest = Math.min(longestOf(standing, vent), shortest + 0.6);
  const options: TubeOption[] = [];
  for (let i = 0; i < LENGTHS; i++) {
    const length = Math.round((shortest * (longest / shortest) ** (i / (LENGTHS - 1))) / MM) * MM;
    if (options.at(-1)?.length === length) continue;
    const tube: Tube = { ...vent, diameter, wall, length };
    const state = { ...stateOf(standing), vents: [ventOf(tube)] };
    const sounding = soundingOf(standing, state);
    if (!sounding.ok) continue;
    const stance = stanceOf(standing, vent, tube);
    const bent = stance.fitting !== 'does not fit' && stance.bent;
    options.push({ length, fitting: stance.fitting, bent, account: accountOf(standing.job, state, sounding) });
  }
  const tube = { diameter, wall };
  return {
    diameter,
    outerDiameter: outerOf(tube),
    flangeDiameter: outerOf(tube) + 2 * COLLAR,
    options,
    proposed: proposedOf(standing, options),
  };
}

/** No longer than the air of the box makes sense of: the tube takes at most a third of it. */
const longestOf = ({ airBeforeVents }: Standing, vent: StandingVent): number => airBeforeVents / 3 / sectionTaken(vent);

/** The deepest tube that keeps the air speed at the wanted level, the loudest, and the shortest within a decibel of it. */
function proposedOf({ airSpeedPeak }: Standing, options: readonly TubeOption[]): TubeSet['proposed'] {
  const able = options.map((one, option) => ({ ...one, option })).filter(({ fitting }) => fitting !== 'does not fit');
  const calm = able.filter(({ account }) => (account.wanted.airSpeed?.value ?? 0) <= airSpeedPeak);
  const least = (list: typeof able, of: (one: (typeof able)[number]) => number) =>
    list.reduce<(typeof able)[number] | undefined>(
      (best, one) => (best && of(best) <= of(one) ? best : one),
      undefined,
    );
  const deep = least(calm.length > 0 ? calm : able, ({ account }) => account.reach ?? Infinity);
  const loud = least(able, ({ account }) => -account.loudest.level);
  const simple =
    loud &&
    least(
      able.filter(({ account }) => account.loudest.level > loud.account.loudest.level - 1),
      (one) => one.length,
    );
  const chosen: { option: number; purpose: Purpose; length: number }[] = [];
  for (const [one, purpose] of [
    [deep, 'deep'],
    [loud, 'loud'],
    [simple, 'quickest to print'],
  ] as const) {
    if (one === undefined || chosen.some(({ length }) => Math.abs(length - one.length) < APART)) continue;
    chosen.push({ option: one.option, purpose, length: one.length });
  }
  return chosen.map(({ option, purpose }) => ({ option, purpose }));
}
