import { capital, inWords } from '../kind/wording.js';
import type { MarkedSet } from '../standing/marked-tubes.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { Purpose, TubeOption, TubeSet } from '../standing/tubes.js';
import { numbersOf } from './account-text.js';
import type { Phrasing } from './phrasing.js';

/** What a tube is for, in one plain sentence. */
export function purposeText({ account }: TubeOption, purpose: Purpose, { asked }: Retrofit, say: Phrasing): string {
  const { reach, loudest, wanted } = account;
  const deep = reach !== undefined && reach <= asked.lowest + 0.05;
  const loud = loudest.level >= asked.level - 0.05;
  if (purpose === 'deep') return 'For the deepest bass that keeps the air below its limit at the wanted level.';
  if (purpose === 'loud') {
    return deep
      ? `For the loudest steady tones that still reach down to ${say.edge(asked.lowest)}.`
      : 'For the loudest steady tones at a small cost in depth.';
  }
  if (deep && loud) return 'For what you want: it is deep enough and loud enough, and it is the shortest that is.';
  const shorts = [
    ...(deep || reach === undefined ? [] : [`reaches only ${say.hertz(reach)}`]),
    ...(loud ? [] : [`is ${say.decibels(asked.level - loudest.level)} short in level`]),
  ];
  const fast =
    wanted.airSpeed !== undefined && wanted.airSpeed.value > asked.airSpeedPeak && loud ? '; its air is fast' : '';
  return `For the nearest to what you want; it ${shorts.join(' and ')}${fast}.`;
}

/** The tubes that are worth printing, in numbers; the units stand in the second row. */
export function tubeRows({ proposed }: MarkedSet, answer: Retrofit, say: Phrasing): (readonly string[])[] {
  const rows = proposed.map(({ mark, option, purpose }) => {
    const numbers = numbersOf(option.account, say).slice(0, 6);
    return [mark, say.bareLength(option.length), ...numbers, purposeText(option, purpose, answer, say)];
  });
  return [
    ['tube', 'length', 'tuned', 'reach', 'level', 'air', 'quiet', 'travel', ''],
    ['', say.lengthUnit, 'Hz', 'Hz', 'dB', 'm/s', 'dB', say.travelUnit, 'what it is for'],
    ...rows,
  ];
}

/** Why some sets, or all, are left out; empty where none is. */
export const leftOutText = ({ tubeSets, tubeSetsLeftOut }: Retrofit, say: Phrasing): string =>
  tubeSetsLeftOut.length === 0
    ? ''
    : `${tubeSets.length > 0 ? 'Left out:' : 'There is none.'} ${tubeSetsLeftOut.map(say.phrase).join(' ')}`;

/** The hole of a set of tubes. */
export const holeText = ({ hole, diameter, vent }: TubeSet, { tubeSets, now }: Retrofit, say: Phrasing): string => {
  const several = new Set(tubeSets.map((set) => set.vent)).size > 1 || now.box.tubes.length > 1;
  const which = several ? ` of vent ${vent + 1}` : '';
  return hole.how === 'enlarged'
    ? `the hole${which} enlarged to ${say.length(hole.hole)}, tubes of ${say.length(diameter)}`
    : `the hole${which} as it is, tubes of ${say.length(diameter)}`;
};

/** How the tubes of a set are put in. */
export function flangeText({ hole, diameter, outerDiameter, flangeDiameter }: TubeSet, say: Phrasing): string {
  const first =
    hole.how === 'enlarged'
      ? `Enlarge the hole with the saw of ${say.length(hole.hole)}, behind a board with a hole of that size as a guide, and wear eye protection and a dust mask. Then glue`
      : 'Glue';
  return `${first} one flange of ${say.length(flangeDiameter)} onto the panel around the hole, once. Tubes of ${say.length(diameter)} inner and ${say.length(outerDiameter)} outer diameter slide into it, and you change the tuning by changing the tube. The length of a tube counts from its outer end, which is flush with the flange, to its inner end. What tube and flange take from the air is counted.`;
}

/** How a set of tubes is used, before and after its table. */
export function tubeSentences(set: TubeSet, say: Phrasing): readonly [before: string, after: string] {
  const { options, proposed } = set;
  const one = proposed.length === 1;
  const open = options.some(({ fitting }) => fitting === 'measure');
  return [
    `${flangeText(set, say)} ${capital(inWords(proposed.length))} ${one ? 'length is' : 'lengths are'} worth printing:`,
    open
      ? 'Behind the hole, each needs a clear distance of its own length, less the panel, plus one tube diameter. Measure before you print.'
      : '',
  ];
}
