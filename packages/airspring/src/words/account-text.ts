import { LEAST_OF_NOMINAL } from '../job/load.js';
import { GIVES_OUT, PARTS_GIVE_OUT } from '../record/limits.js';
import type { Account } from '../standing/account.js';
import type { Retrofit } from '../standing/retrofit.js';
import { bandsSentence } from './bands-text.js';
import { bareReach, type Phrasing } from './phrasing.js';
import { ventSentences } from './vent-text.js';

const LIMITS = { ...GIVES_OUT, ...PARTS_GIVE_OUT };
const limitName = (binding: string): string => LIMITS[binding] ?? binding;

const tuningText = ({ fb, fc, Qtc }: Account, say: Phrasing): string =>
  fb !== undefined
    ? `It is tuned to ${say.hertz(fb)}.`
    : `It is closed, with a resonance of ${say.hertz(fc ?? 0)} and Qtc ${(Qtc ?? 0).toFixed(2)}.`;

/** What the box does now, a paragraph each. */
export function nowSentences(answer: Retrofit, say: Phrasing): string[] {
  const { account, tuning } = answer.now;
  const { asked } = answer;
  const ranges = bandsSentence(answer, say);
  const {
    netVolume,
    reach,
    endOfSearch,
    reachUnfiltered,
    unfilteredEndOfSearch,
    loudest,
    wanted,
    flat,
    lowestSafe,
    leastLoad,
    nominalLoad,
    noise,
    compression,
  } = account;
  const band = `from ${say.edge(asked.safeFrom ?? asked.lowest)} to ${say.edge(asked.highest)}`;
  const deep =
    reach === undefined
      ? `At ${say.edge(asked.highest)} the response has already fallen by more than ${say.decibels(asked.fall)}.`
      : endOfSearch
        ? `The response reaches at least down to ${say.hertz(reach)}, the lowest tone that is searched.`
        : `The response reaches down to ${say.hertz(reach)}, where it has fallen by ${say.decibels(asked.fall)}.`;
  const loud = `It plays a steady tone of ${say.decibels(loudest.level)} at any frequency ${band}, at 1 m in half space; you want ${say.decibels(asked.level)}. When it plays louder, the first limit it reaches is ${limitName(loudest.binding)}, at ${say.hertz(loudest.frequency)}.`;
  const speed = wanted.airSpeed;
  const air =
    speed === undefined
      ? ''
      : ` At the wanted level the air in the vent moves at ${say.speed(speed.value)} (peak) at ${say.edge(speed.frequency)}; your limit is ${say.speed(asked.airSpeedPeak)} (peak).`;
  const safe =
    lowestSafe === undefined
      ? ''
      : ` Below ${say.hertz(lowestSafe)}, the drive that gives the wanted level (${say.volts(flat.drive)} rms) pushes the cone beyond its travel.`;
  const nominal =
    nominalLoad === undefined ? '' : `, so for the amplifier it counts as a load of ${say.ohms(nominalLoad)}`;
  const takes =
    asked.leastLoad === undefined
      ? ''
      : ` Your amplifier takes loads of ${say.ohms(asked.leastLoad)} or more${leastLoad.value < LEAST_OF_NOMINAL * asked.leastLoad ? ': this load is too low for it' : ''}.`;
  const load = `Its least impedance is ${say.ohms(leastLoad.value)}, at ${say.hertz(leastLoad.frequency)}${nominal}.${takes}`;
  const watts =
    wanted.power === undefined || nominalLoad === undefined
      ? ''
      : ` At the wanted level it needs ${say.volts(wanted.drive.value)} rms at ${say.edge(wanted.drive.frequency)}, which is ${say.watts(wanted.power)} into ${say.ohms(nominalLoad)}.`;
  const filtered =
    asked.filter === undefined
      ? ''
      : ` Your existing filter is included: ${asked.filter}.${reachUnfiltered === undefined ? '' : ` Without it the response would reach ${unfilteredEndOfSearch ? 'at least ' : ''}down to ${say.hertz(reachUnfiltered)}.`}`;
  return [
    `${tuningText(account, say)} It holds ${say.volume(netVolume)} of air. ${deep}${filtered}`,
    `${loud}${air}${safe}`,
    ...(noise && compression
      ? [ventSentences({ called: 'the vent', noise, compression, ...(tuning && { tuning }) }, asked.quiet, say)]
      : []),
    `${load}${watts}`,
    ...(ranges === undefined ? [] : [ranges]),
  ];
}

/** How deep a box reaches; `undefined` where its response has fallen at the end of the band. */
export const reachText = ({ reach, endOfSearch }: Account, say: Phrasing): string | undefined =>
  reach === undefined ? undefined : say.reach(reach, endOfSearch);

/** Tuning, reach, level, air speed and the level up to which the vent is quiet, in Hz, dB and m/s: what boxes are compared by. */
export const glanceNumbers = ({ fb, fc, reach, endOfSearch, loudest, wanted, noise }: Account): string[] => [
  (fb ?? fc ?? 0).toFixed(1),
  reach === undefined ? '' : bareReach(reach, endOfSearch),
  loudest.level.toFixed(1),
  wanted.airSpeed?.value.toFixed(1) ?? '',
  noise?.quiet.level.toFixed(1) ?? '',
];

/** The same, with the travel in its unit and the least impedance in Ω. */
export const numbersOf = (account: Account, say: Phrasing): string[] => [
  ...glanceNumbers(account),
  say.travel(account.wanted.travel.value).replace(` ${say.travelUnit}`, ''),
  account.leastLoad.value.toFixed(1),
];
