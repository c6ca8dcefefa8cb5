import type { Account } from './account.js';
import type { Made, Now } from './changes/change.js';
import { markedSets } from './marked-tubes.js';
import type { ChangedBox } from './row.js';
import { glanced, LEAST, shortfall } from './shortfall.js';
import type { TubeSet } from './tubes.js';
import type { ChangedDesign } from './whole.js';
import type { NewHole } from './work.js';

/** Nobody saws for less: dB. */
const WORTH = 1;

/** What keeps a vent quieter than the change to make first, and gives no less of what is wanted. */
export interface Quieter {
  readonly what: 'change' | 'design' | 'tube';
  /** As reports name it: the number of a change, the letter of a design, the mark of a tube. */
  readonly name: string;
  readonly account: Account;
  readonly tubes: ChangedBox['tubes'];
  /** Diameters of the holes that are cut or made larger for it, m. */
  readonly holes: readonly number[];
  /** The clear distance that a straight tube needs behind the panel, m. */
  readonly clearance: number;
  /** Whether the longest inner edge of the box is as long, or that of a cube where its sizes are not known; `true` where places are known and it fits. */
  readonly roomy: boolean;
  readonly sizesKnown: boolean;
}

/** The clear distance that straight tubes need behind the panel, m: to their inner ends, and as much again as they are wide. */
export const clearanceOf = (
  tubes: readonly Pick<ChangedBox['tubes'][number], 'length' | 'diameter'>[],
  panelThickness: number,
): number => Math.max(0, ...tubes.map(({ length, diameter }) => length - panelThickness + diameter));

const circles = (holes: readonly NewHole[]): number[] =>
  holes.flatMap((hole) => (hole.form === 'circle' ? [hole.diameter] : []));

/**
 * The choices that keep a vent quiet up to a higher level than the change to make first: the quietest of those that have room in a
 * usual box, and the quietest of all, where that is another one.
 */
export function quieterThan(
  now: Now,
  first: Made | undefined,
  others: {
    readonly numbered: readonly (readonly [number: number, made: Made])[];
    readonly designs: readonly ChangedDesign[];
    readonly tubeSets: readonly TubeSet[];
  },
): Quieter[] {
  const { standing } = now;
  const { job, panelThickness: t } = standing;
  const edge = standing.inner ? Math.max(...standing.inner) : Math.cbrt(standing.airBeforeVents);
  const sizesKnown = standing.inner !== undefined;
  if (!first?.row.ok || first.row.account.noise === undefined) return [];
  const asked = glanced(first.row.account);
  // Once it is quiet at the wanted level, nothing is gained.
  if (asked.quiet >= job.wanted.level) return [];
  const most = shortfall(job, asked) + LEAST;
  const choice = (
    one: Pick<Quieter, 'what' | 'name' | 'account' | 'tubes' | 'holes'> & { readonly fitting: string },
  ): Quieter => {
    const { fitting, ...rest } = one;
    const clearance = clearanceOf(one.tubes, t);
    return { ...rest, clearance, sizesKnown, roomy: fitting === 'fits' || clearance <= edge };
  };
  const tubed = ({ account, tubes }: Pick<Quieter, 'account' | 'tubes'>) =>
    account.noise !== undefined && tubes.length > 0 && shortfall(job, glanced(account)) <= most;
  const all = [
    ...others.numbered.flatMap(([number, { row, done }]) =>
      row.ok && done && row.box.level === undefined && tubed({ account: row.account, tubes: row.box.tubes })
        ? [
            choice({
              what: 'change',
              name: String(number),
              account: row.account,
              tubes: row.box.tubes,
              holes: circles(done.steps.flatMap(({ holes = [] }) => holes)),
              fitting: row.fitting,
            }),
          ]
        : [],
    ),
    ...others.designs.flatMap(({ name, account, box: { tubes }, holes, fitting }) =>
      tubed({ account, tubes })
        ? [choice({ what: 'design', name, account, tubes, holes: circles(holes), fitting })]
        : [],
    ),
    ...markedSets(others.tubeSets).flatMap(({ tubes: set, proposed }) =>
      proposed.flatMap(({ mark, option: { length, account, fitting } }) => {
        const stays = now.standing.vents
          .filter(({ index }) => index !== set.vent)
          .map(({ index, diameter, length: long, count }) => ({ vent: index, diameter, length: long, count }));
        const tubes = [{ vent: set.vent, diameter: set.diameter, length, count: 1 }, ...stays];
        const holes = set.hole.how === 'enlarged' ? [set.hole.hole] : [];
        return tubed({ account, tubes }) ? [choice({ what: 'tube', name: mark, account, tubes, holes, fitting })] : [];
      }),
    ),
  ];
  const quiet = ({ account }: Quieter) => account.noise?.quiet.level ?? 0;
  const best = (list: readonly Quieter[]) =>
    list
      .filter((one) => quiet(one) >= asked.quiet + WORTH)
      .reduce<Quieter | undefined>((a, b) => (a && quiet(a) >= quiet(b) ? a : b), undefined);
  const [roomy, quietest] = [best(all.filter((one) => one.roomy)), best(all)];
  const further = quietest && (!roomy || quiet(quietest) >= quiet(roomy) + WORTH) ? [quietest] : [];
  return [...(roomy ? [roomy] : []), ...further];
}
