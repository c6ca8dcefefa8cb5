import { inWords, listOf } from '../kind/wording.js';
import type { Account } from '../standing/account.js';
import { clearanceOf, type Quieter } from '../standing/quieter.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { RowDone } from '../standing/row.js';
import { reachText } from './account-text.js';
import type { Phrasing } from './phrasing.js';

/** Less than this is not told as a cost: Hz. */
const LEAST_HERTZ = 0.5;

/** Its mark, and where a reader who meets it for the first time finds it. */
const called = ({ what, name }: Quieter): string => {
  if (what === 'change') return `number ${name} of the changes below`;
  return what === 'tube' ? `tube ${name} of the sets below` : `design ${name} below`;
};

/** The sizes of its tubes; one that is called a tube already is not called so again. */
const sizesOf = ({ what, tubes }: Quieter, say: Phrasing): string =>
  listOf(
    tubes.map(({ count, diameter, length }, i) => {
      const many = count > 1 ? `${inWords(count)} tubes ` : what === 'tube' && i === 0 ? '' : 'a tube ';
      return `${many}${say.length(diameter)} wide and ${say.length(length)} long`;
    }),
  );

/** What one such choice costs beside the change to make first. */
function costOf({ holes, clearance, account }: Quieter, first: Account, before: number, say: Phrasing): string {
  const [largest] = [...holes].sort((a, b) => b - a);
  const [reach, fb] = [account.reach, account.fb];
  const shallower = reach !== undefined && first.reach !== undefined && reach - first.reach > LEAST_HERTZ;
  return listOf([
    ...(largest === undefined
      ? []
      : [`${holes.length > 1 ? `${inWords(holes.length)} holes` : 'a hole'} of ${say.length(largest)} to saw`]),
    `a clear distance of ${say.length(clearance)} behind the panel${before > 0 ? ` instead of ${say.length(before)}` : ''}`,
    ...(fb !== undefined && first.fb !== undefined && Math.abs(fb - first.fb) > LEAST_HERTZ
      ? [`another tuning, ${say.hertz(fb)}`]
      : []),
    ...(shallower ? [`a reach of ${reachText(account, say)} instead of ${reachText(first, say)}`] : []),
  ]);
}

/** Which choices keep the vent quieter than the change to make first, and what they cost; empty where there is none. */
export function quieterText({ quieter, panelThickness }: Retrofit, first: RowDone, say: Phrasing): string {
  const before = clearanceOf(first.box.tubes, panelThickness);
  return quieter
    .map((one, i) => {
      const quiet = say.decibels(one.account.noise?.quiet.level ?? 0);
      const head = one.roomy
        ? `Of what has room and leaves level and reach as near to what you want, the quietest vent is ${called(one)}`
        : `${i === 0 ? 'Of all that leaves level and reach as near to what you want, the quietest' : 'The quietest of all'}, room or not, is ${called(one)}`;
      const narrow = one.sizesKnown
        ? `No inner edge of the box is ${say.length(one.clearance)} long, so it has to bend`
        : `A cubic box of this volume is not ${say.length(one.clearance)} wide inside`;
      const unsure = one.roomy ? '' : ` ${narrow}: measure first.`;
      return `${head}, ${sizesOf(one, say)}: quiet up to ${quiet}. It costs ${costOf(one, first.account, before, say)}.${unsure}`;
    })
    .join(' ');
}
