import { capital } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import type { Guard } from '../record/design-parts.js';
import type { Design } from '../record/design-record.js';
import type { BetweenVas } from '../record/estimate.js';
import type { At } from '../record/load.js';
import type { Played } from '../record/played.js';
import { cautionOf } from './build-text.js';
import { paragraph, table } from './layout.js';
import { mechanicalSentences } from './mechanical-text.js';
import { nonlinearTravelSentences } from './nonlinear-travel-text.js';
import type { Phrasing } from './phrasing.js';
import { heardAtWanted, ventSentences } from './vent-text.js';

/** The band that the brief asks for. */
export const bandOf = ({ loudness }: Played) => ({
  lowest: loudness.stretches[0]?.from ?? loudness.frequency,
  highest: loudness.stretches.at(-1)?.to ?? loudness.frequency,
});

/** What is heard of the vents at the wanted level; empty where they are quiet there. */
export function ventAtWanted({ opening }: Played, say: Phrasing): string {
  if (opening === undefined) return '';
  const { noise, called, wanted } = opening;
  return heardAtWanted(noise, wanted, noise.quiet.where ?? called, say);
}

const limitOf = ({ margins }: Played, path: string): string | undefined =>
  margins.find((margin) => margin.path === path)?.limit;

/** A limit of the design as a noun; a limit without a noun goes by its own name. */
const limitName = ({ loudness }: Played, binding: string): string => loudness.givesOut[binding] ?? binding;

/** How deep it plays at the wanted level. */
export const deepest = ({ response }: Played, say: Phrasing): string =>
  response.endOfSearch
    ? `It reaches at least down to ${say.hertz(response.depth)}, the lowest tone that is searched.`
    : `It reaches down to ${say.hertz(response.depth)}.`;

/** What is uncertain because the sheet of the driver does not give Vas. */
export function uncertainText({ uncertain, vent }: Pick<Design, 'uncertain' | 'vent'>, say: Phrasing): string[] {
  if (uncertain === undefined) return [];
  const { f3, level, ventLength } = uncertain;
  // Each end is told with the Vas that gives it.
  const ends = ({ from, to, Vas }: BetweenVas, words: (value: number) => string) =>
    `between ${words(from)} (Vas ${say.volume(Vas.from)}) and ${words(to)} (Vas ${say.volume(Vas.to)})`;
  const deep = f3 ? `f3 lies ${ends(f3, say.hertz)}, and ` : '';
  const [least, greatest] = [say.decibels(level.from), say.decibels(level.to)];
  const loud = least === greatest ? `the level stays ${least}` : `the level ${ends(level, say.decibels)}`;
  const tube =
    ventLength && vent
      ? ` The best vent for this box is ${ends(ventLength, (length) => say.length(Math.round(length * 1e3) / 1e3))} long. Make the vent long at first. Measure the driver, and then cut the vent to length.`
      : '';
  return [
    paragraph(
      `The sheet of the driver does not give Vas; see the end of this report. With drivers at both ends of the assumed range, in this same box, ${deep}${loud}.${tube}`,
    ),
  ];
}

/** The high-pass before the amplifier as a noun. */
export const filterName = ({ filterIsNew }: Played['amplifier']): string =>
  filterIsNew ? 'the new high-pass filter' : 'your existing high-pass filter';

/** What the high-pass before the amplifier does to the response. */
export function filterText({ amplifier, response }: Played, say: Phrasing): string[] {
  const { f3, cutoff, cutoffEndOfSearch, unfiltered } = response;
  if (amplifier.filter === undefined || unfiltered === undefined) return [];
  const at = (fallen: number | undefined, reaches: number | undefined, endOfSearch: boolean | undefined) =>
    `the response has fallen by 3 dB ${fallen === undefined ? 'nowhere in the band' : `at ${say.hertz(fallen)}`}${reaches === undefined ? '' : ` and reaches ${endOfSearch ? 'at least ' : ''}down to ${say.hertz(reaches)}`}`;
  return [
    paragraph(
      `${capital(filterName(amplifier))} is included: ${amplifier.filter}. With it ${at(f3, cutoff, cutoffEndOfSearch)}. Without it ${at(unfiltered.f3, unfiltered.cutoff, unfiltered.endOfSearch)}.`,
    ),
  ];
}

/** Which limit stops the box before its response does. */
export function belowText(design: Played, say: Phrasing): string[] {
  const { depth, below, cutoffEndOfSearch } = design.response;
  if (below === undefined || depth - below.frequency < 0.1 || (!below.load && below.times < 1.05)) return [];
  const at = say.hertz(below.frequency);
  const asked = below.load
    ? `${below.load.subject} would reach ${say.quantity(below.load.value, below.load.meaning)} (peak)`
    : `it would need ${below.times.toFixed(1)} times what that limit allows`;
  return [
    paragraph(
      `When it plays more softly, it reaches ${cutoffEndOfSearch ? 'at least ' : ''}down to ${at}. At the wanted level it stops at ${say.hertz(depth)}, where it reaches the limit on ${limitName(design, below.binding)}. If it played that level at ${at}, ${asked}.`,
    ),
  ];
}

/** Where the wants of the brief are judged. */
const placeText = ({ heard }: Played, say: Phrasing): string =>
  heard?.wantedAt === 'listener' ? `at the listener, ${say.metres(heard.distance)} away` : 'at 1 m in half space';

/** How loud it plays, and which limit it reaches first. */
export function loudest(design: Played, say: Phrasing): string {
  const { level, frequency, binding } = design.loudness;
  const { lowest, highest } = bandOf(design);
  const wanted = limitOf(design, 'wanted.level');
  return `It can play a steady tone of ${say.decibels(level)} at any frequency from ${say.edge(lowest)} to ${say.edge(highest)}, ${placeText(design, say)}${wanted === undefined ? '' : ` (wanted: ${wanted})`}. If it plays louder, the first limit it reaches is ${limitName(design, binding)}, at ${say.hertz(frequency)}.`;
}

/** The first limit reached in each stretch of the band. */
export const stretches = (design: Played, say: Phrasing): string =>
  table('ll', [
    ['frequencies', 'first limit reached'],
    ...design.loudness.stretches.map(({ from, to, binding }) => {
      const [low, high] = [say.edge(from), say.edge(to)];
      return [low === high ? `at ${low}` : `${low} to ${high}`, limitName(design, binding)];
    }),
  ]);

/** What the wanted level demands, each quantity at its worst frequency. */
function atWanted(design: Played, say: Phrasing): string {
  const { driveVoltageRms, currentRms, displacementPeak, heat, power, own } = design.atWantedLevel;
  const { current } = design.amplifier;
  const { Xmax, Pe } = design.drivers;
  const row = (what: string, { value, frequency }: At, text: (value: number) => string, limit?: string) => [
    what,
    text(value),
    say.edge(frequency),
    limit ?? '',
  ];
  return table('lrrr', [
    ['at the wanted level', 'greatest', 'at', 'limit'],
    row('drive, rms', driveVoltageRms, say.volts, say.volts(design.amplifier.voltage)),
    ...(power ? [row(`that is, as power into ${say.ohms(design.impedance.load.nominal!)}`, power, say.watts)] : []),
    row('current, rms', currentRms, say.amperes, current === undefined ? undefined : say.amperes(current)),
    row('cone travel, peak', displacementPeak, say.travel, Xmax === undefined ? undefined : say.travel(Xmax)),
    row('heat in each voice coil', heat, say.watts, Pe === undefined ? undefined : say.watts(Pe)),
    ...(own
      ? [row(own.what, own.at, (value) => say.quantity(value, own.meaning), say.quantity(own.limit, own.meaning))]
      : []),
  ]);
}

/** Where a drive gives the wanted level without an equaliser. */
export const flatWhere = ({ response }: Played): string =>
  response.reference === 'maximum' ? 'where the response is greatest' : 'where the response is flat';

/** Whether the amplifier lacks the drive that gives the wanted level where the response is flat. */
export const tooMuch = ({ protection, amplifier }: Played): boolean => protection.driveVoltageRms > amplifier.voltage;

export const loudText = (design: Played, say: Phrasing): string[] => [
  paragraph(loudest(design, say)),
  stretches(design, say),
  atWanted(design, say),
  paragraph(
    `Without an equaliser, ${say.volts(design.protection.driveVoltageRms)} rms ${tooMuch(design) ? `would give the wanted level ${flatWhere(design)}, which is more than the amplifier gives` : `gives the wanted level ${flatWhere(design)}, and less where it has fallen`}. An equaliser can raise all tones of the band to the wanted level. The table shows what the most demanding of them then needs.`,
  ),
  ...(design.opening ? [paragraph(ventSentences(design.opening, false, say))] : []),
  ...design.told.playing.map((phrase) => paragraph(say.phrase(phrase))),
  ...cautionOf(design, cautions.hearing),
  ...cautionOf(design, cautions.hearingThere),
];

/** What a high-pass takes at the lowest tone, and its coefficients where the brief asks for them. */
export function costOfHighPass(highPass: NonNullable<Guard['highPass']>, lowest: number, say: Phrasing): string {
  const { costAtLowest, delayAtLowest, riseOfF3, fallenUpTo, sampleRate, sections = [] } = highPass;
  const level = costAtLowest < 0.05 ? 'less than 0.1 dB' : say.decibels(costAtLowest);
  const delay = `${(1000 * delayAtLowest).toFixed(1)} ms`;
  const rise = Math.abs(riseOfF3) < 0.05 ? 'leaves f3 where it is' : `raises f3 by ${say.hertz(riseOfF3)}`;
  const breaks =
    fallenUpTo === undefined
      ? ''
      : ` With it the response falls by more than the brief allows up to ${say.hertz(fallenUpTo)}.`;
  const cost = `It lowers the level at ${say.edge(lowest)} by ${level}, delays it by ${delay}, and ${rise}.${breaks}`;
  const digital = sections.map(({ b0, b1, b2, a1, a2 }) => `b0 ${b0}, b1 ${b1}, b2 ${b2}, a1 ${a1}, a2 ${a2}`);
  const coefficients =
    sampleRate === undefined
      ? ''
      : ` Its coefficients at ${sampleRate} Hz, for y[n] = b0 x[n] + b1 x[n−1] + b2 x[n−2] − a1 y[n−1] − a2 y[n−2]: ${digital.join('; then ')}.`;
  return `${cost}${coefficients}`;
}

/** A high-pass as a noun. */
export const highPassName = ({ order, corner }: NonNullable<Guard['highPass']>, say: Phrasing): string =>
  `a Butterworth of order ${order} at ${say.hertz(corner)}`;

/** One drive: the frequency down to which it is safe, and what keeps the cone safe below that. */
function guardText(
  { driveVoltageRms, lowestSafeFrequency, lowestWithoutFilter, neverSafe, highPass }: Guard,
  which: string,
  { lowest, filter, cone }: { readonly lowest: number; readonly filter?: string; readonly cone: string },
  say: Phrasing,
) {
  const drive = `At ${say.volts(driveVoltageRms)} rms, ${which},`;
  if (neverSafe) return `${drive} every tone drives ${cone} beyond its safe travel. Turn it down.`;
  if (lowestWithoutFilter !== undefined) {
    return `${drive} ${filter} keeps ${cone} within its safe travel. Without it the lowest safe frequency would be ${say.hertz(lowestWithoutFilter)}.`;
  }
  if (lowestSafeFrequency === undefined) return `${drive} no tone drives ${cone} beyond its safe travel.`;
  const safe = `${drive} the lowest safe frequency is ${say.hertz(lowestSafeFrequency)}. Lower tones drive ${cone} beyond its safe travel.`;
  if (lowestSafeFrequency > lowest) {
    return `${safe} Some of these are tones that the brief asks for, so a high-pass filter below the band does not help. Turn it down.`;
  }
  if (filter !== undefined) {
    return `${safe} ${capital(filter)} does not prevent that. Set its corner higher, or turn it down.`;
  }
  return highPass
    ? `${safe} The gentlest high-pass filter that prevents that is ${highPassName(highPass, say)}. ${costOfHighPass(highPass, lowest, say)}`
    : `${safe} No Butterworth high-pass filter of order 1 to 4 below the band prevents that. Turn it down, or keep such tones out of the programme.`;
}

/** Where the kind adds cones of its own, any of them may travel too far. */
const coneOf = ({ atWantedLevel }: Played): string => (atWantedLevel.own?.meaning === 'travel' ? 'a cone' : 'the cone');

/** What keeps the cone safe below the band, each drive by itself. */
function guardsText(design: Played, say: Phrasing): string[] {
  const { atFullVoltage, below: _, ...wanted } = design.protection;
  const { lowest } = bandOf(design);
  const { amplifier } = design;
  const known = {
    lowest,
    cone: coneOf(design),
    ...(amplifier.filter !== undefined && { filter: filterName(amplifier) }),
  };
  const full = guardText(atFullVoltage, 'the most that the amplifier gives', known, say);
  const soft = guardText(wanted, `which gives the wanted level ${flatWhere(design)}`, known, say);
  // A drive that the amplifier cannot give endangers nothing.
  return [full, ...(tooMuch(design) ? [] : [soft])];
}

/** What else is known of how far the cone travels. */
export function travelText(design: Played, say: Phrasing): string[] {
  const { below } = design.protection;
  const hard = [
    ...(design.mechanical ? [mechanicalSentences(design.mechanical, design, say)] : []),
    ...(design.nonlinearTravel ? [nonlinearTravelSentences(design.nonlinearTravel, design, say)] : []),
  ];
  if (design.drivers.Xmax === undefined) {
    return [
      'How far the cone may travel is not known, so no lowest safe frequency can be told. Watch the cone, keep tones below the band out of the programme, and turn it down where the cone moves visibly far.',
      ...hard,
    ];
  }
  const behind =
    below && !tooMuch(design)
      ? [
          `Behind the filter, ${say.volts(design.protection.driveVoltageRms)} rms moves the cone by at most ${say.travel(below.displacementPeak.value)} below the band, at ${say.hertz(below.displacementPeak.frequency)}${below.airSpeedPeak ? `, and the air in the vent at ${say.speed(below.airSpeedPeak.value)}, at ${say.hertz(below.airSpeedPeak.frequency)}` : ''}.`,
        ]
      : [];
  return [...behind, ...hard];
}

/** What keeps the cone safe below the band. */
export const protectionText = (design: Played, say: Phrasing): string[] => [
  ...(design.drivers.Xmax === undefined ? [] : guardsText(design, say)).map(paragraph),
  ...travelText(design, say).map(paragraph),
  ...cautionOf(design, cautions.travel),
];
