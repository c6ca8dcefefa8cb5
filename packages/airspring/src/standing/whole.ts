import { logarithmicGrid } from '@airspring/core/quantity';
import { referenceLevel, respond } from '@airspring/core/response';
import type { Job } from '../job/job.js';
import { passedBy } from '../job/passed.js';
import type { Phrase } from '../kind/phrase.js';
import { amplifierOf, travels } from '../record/assemble.js';
import { cautionsOf } from '../record/cautions.js';
import { PARTS_GIVE_OUT } from '../record/limits.js';
import type { Played } from '../record/played.js';
import { soundOf } from '../record/sound.js';
import type { Account } from './account.js';
import { marginsOf } from './changed-margins.js';
import type { Now } from './changes/change.js';
import type { Chain, Leaning } from './combinations.js';
import { type ChangedBox, type Holds, type RowDone, withBends } from './row.js';
import type { StandingVent } from './standing.js';
import type { Sounding, State } from './state.js';
import { inOrder, type NewHole, type Part, type Step } from './work.js';

/** A box that stands, changed in two or three ways at once: everything to do, and how it then plays. */
export interface ChangedDesign extends Played {
  /** A, B, C …: its name in reports. */
  readonly name: string;
  readonly leaning: Leaning;
  /** Its changes as nouns. */
  readonly changes: readonly string[];
  /** What it will be, a sentence for each change. */
  readonly what: readonly Phrase[];
  readonly holds: readonly Holds[];
  readonly box: ChangedBox;
  readonly account: Account;
  readonly fitting: RowDone['fitting'];
  /** How much work it is, as metres of vent to print. */
  readonly effort: number;
  readonly drivers: Played['drivers'] & {
    readonly name: string;
    readonly count: number;
    readonly series: number;
    readonly parallel: number;
    readonly isobaric: boolean;
  };
  /** What to do, in order. */
  readonly steps: readonly Step[];
  /** What to make or to buy, and the holes to cut. */
  readonly parts: readonly Part[];
  readonly holes: readonly NewHole[];
}

/** The vents that change, as nouns. */
function tubeNouns({ standing, account }: Now, after: readonly StandingVent[], fb: number | undefined): string[] {
  const several = standing.vents.length > 1;
  const tuned =
    fb === undefined || account.fb === undefined || Math.abs(fb / account.fb - 1) < 0.01
      ? ''
      : `, tuned ${fb > account.fb ? 'higher' : 'lower'}`;
  const nouns = standing.vents.flatMap((was) => {
    const vent = after.find(({ index }) => index === was.index);
    if (vent === undefined) return [`vent ${was.index + 1} closed`];
    const compared = (name: 'diameter' | 'length', more: string, less: string) =>
      vent[name] > was[name] ? [more] : vent[name] < was[name] ? [less] : [];
    const how = [...compared('diameter', 'wider', 'narrower'), ...compared('length', 'longer', 'shorter')];
    if (how.length === 0 && vent.count === was.count) return [];
    const number = several ? ` for vent ${was.index + 1}` : '';
    if (how.length === 0)
      return [`${vent.count - was.count > 1 ? 'more vents' : 'a second vent'} beside the first${number}`];
    const noun = several ? 'tube' : 'vent';
    return [
      `${vent.count > 1 ? `${vent.count} ` : 'a '}${how.join(', ')} ${noun}${vent.count > 1 ? 's' : ''}${number}`,
    ];
  });
  return nouns.length === 0 ? [] : [...nouns.slice(0, -1), `${nouns.at(-1)}${tuned}`];
}

/** How a state plays, as far as a box that stands is told to. */
export function soundOfState(
  job: Job,
  { drivers, filter }: State,
  sounding: Sounding,
  { reach }: Pick<Account, 'reach'>,
): ReturnType<typeof soundOf> {
  const { wanted } = job;
  const band = logarithmicGrid(wanted.lowest, wanted.highest, 200);
  const passed = passedBy(filter, band);
  const rise =
    Math.max(...respond(sounding.system, band).levelHalfSpace.map((level, i) => level + 20 * Math.log10(passed[i]!))) -
    referenceLevel(sounding.system);
  const playing = {
    system: sounding.system,
    drivers,
    limits: sounding.own,
    own: [],
    largeSignal: job.choices[0]?.largeSignal,
    cutoff: reach ?? wanted.highest,
    rise: Math.max(0, rise),
  };
  return soundOf(job, playing, PARTS_GIVE_OUT);
}

/** A design from a chain of changes, worked out from the box as it stands. */
export function wholeOf(
  now: Now,
  { made, row, done, tubes, effort }: Chain,
  name: string,
  leaning: Leaning,
): ChangedDesign {
  const { standing } = now;
  const { state, sounding } = done;
  const { account } = row;
  const after = made.at(-1)?.after;
  const others = made.filter((one) => one.done?.steps.some(({ ofTubes }) => !ofTubes));
  const otherRows = others.flatMap(({ row: one }) => (one.ok ? [one] : []));
  const steps = inOrder([
    ...others.flatMap((one) => one.done?.steps.filter(({ ofTubes }) => !ofTubes) ?? []),
    ...(tubes?.steps ?? []),
  ]);
  const filter = state.filter;
  const { filter: _, ...amplifier } = standing.job.amplifier;
  const job = { ...standing.job, amplifier: { ...amplifier, ...(filter && { filter }) } };
  const { wanted } = job;
  const { series, parallel, isobaric, count, driver } = state.drivers;

  const sound = soundOfState(job, state, sounding, account);
  const speed = sound.atWantedLevel.airSpeedPeak;
  const atWantedLevel = {
    ...sound.atWantedLevel,
    ...(speed && {
      own: {
        what: 'air speed in the vent, peak',
        meaning: 'airSpeed',
        at: speed,
        limit: standing.airSpeedPeak,
      } as const,
    }),
  };
  const highPass = made.map(({ row: one }) => one.ok && one.box.highPass).find(Boolean);
  const printed = steps.some(({ does }) => does === 'print');
  return {
    name,
    leaning,
    changes: [...(after ? tubeNouns(now, after.vents, account.fb) : []), ...otherRows.map(({ change }) => change)],
    what: [...(tubes?.what ?? []), ...otherRows.map(({ what }) => what)],
    holds: (['tuning', 'length', 'volume'] as const).filter((one) =>
      made.every(({ row: { holds } }) => holds.includes(one)),
    ),
    box: { ...withBends(row.box, tubes?.bends ?? []), ...(highPass && { highPass }) },
    account,
    fitting: steps.some(({ does }) => does === 'measure') ? 'measure' : 'fits',
    effort,
    told: { playing: [], ...(account.fb !== undefined && { dip: { of: 'the tuning', at: [account.fb] } }) },
    drivers: {
      name: standing.job.choices[0]?.name ?? '',
      count,
      series,
      parallel,
      isobaric,
      ...(driver.Xmax !== undefined && { Xmax: driver.Xmax }),
      ...(driver.Pe !== undefined && { Pe: driver.Pe }),
    },
    steps,
    parts: steps.flatMap(({ parts = [] }) => parts),
    holes: steps.flatMap(({ holes = [] }) => holes),
    ...sound,
    atWantedLevel,
    amplifier: { ...amplifierOf(job), ...(filter && !standing.filter && { filterIsNew: true as const }) },
    margins: marginsOf(now, account, atWantedLevel, driver),
    cautions: cautionsOf(Math.max(wanted.level, sound.loudness.level), {
      printed,
      travels: driver.Xmax === undefined || travels(sound.protection) || travels(sound.protection.atFullVoltage),
    }),
  };
}
