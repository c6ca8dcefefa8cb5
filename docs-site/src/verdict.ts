import type { Design, NotMet } from 'airspring';
import type { BriefFacts } from './brief-facts.js';
import { placeWords } from './figures/where-wanted.js';
import { limitInWords, say, tied } from './say.js';

const edges = ({ box: { outer } }: Design, { length }: BriefFacts): string =>
  `${outer.map((edge) => say('length', edge, length, 4).split('\u00a0')[0]).join('\u00a0×\u00a0')}\u00a0${length}`;

const times = (count: number, one: string): string => (count === 1 ? `a ${one}` : `${count} ${one}s`);

/** Whether the vent is quiet at the wanted level, by every published onset of noise. */
function heard({ opening }: Design, level: number): 'quiet' | 'doubtful' | 'noisy' {
  if (opening === undefined) return 'doubtful';
  const { quiet, noisy } = opening.noise;
  return quiet.level >= level - 0.05 ? 'quiet' : noisy.level < level ? 'noisy' : 'doubtful';
}

const HEADS = { quiet: 'Yes', doubtful: 'It fits, but may be heard', noisy: 'It fits, but is noisy' } as const;

/** The levels between which it is doubtful whether the vent is heard. */
function onsets({ opening }: Design): string {
  if (opening === undefined) return '';
  const { quiet, noisy } = opening.noise;
  const vent = quiet.where === undefined ? opening.called : 'every vent';
  return ` Up to ${say('level', quiet.level, 'dB')} ${vent} is quiet: its air stays below every published onset of noise. Above ${say('level', noisy.level, 'dB')} ${noisy.where ?? 'it'} has passed them all. Between the two no formula tells whether it is heard.`;
}

/** The answer to the question in two sentences; every word depends on a number. */
export function verdict(design: Design, facts: BriefFacts, nearest = false): readonly [string, string] {
  const { vent, response, loudness, atWantedLevel } = design;
  const mm = (value: number) => say('length', value, facts.length, 4);
  const level = say('level', facts.level, 'dB');
  const box = `a box of ${edges(design, facts)}`;
  const speed = atWantedLevel.airSpeedPeak?.value;
  let first: string;
  if (vent && speed !== undefined) {
    const ratio = Math.round((100 * speed) / facts.airSpeedPeak);
    const shape = vent.bend ? `bent once to the ${vent.bend.towards}` : 'straight';
    const spare =
      vent.spare >= 0.0005
        ? `with ${say('length', vent.spare, facts.length, 2)} of length to spare`
        : 'with no length to spare';
    const head = speed > facts.airSpeedPeak ? 'No' : nearest ? 'With that brief' : HEADS[heard(design, facts.level)];
    first = `${head}: ${times(vent.count, 'vent')} of ${mm(vent.diameter)}, ${mm(vent.length)} long and ${shape}, fits beside the driver in ${box} ${spare}, and for ${level} its air moves at no more than ${say('airSpeedPeak', speed, 'm/s')} (peak), ${ratio}\u00a0% of what the brief allows.${onsets(design)}`;
  } else if (design.kind !== 'closed') {
    const head = nearest ? 'With that brief' : design.opening ? HEADS[heard(design, facts.level)] : 'Yes';
    first = `${head}: ${design.called}, ${edges(design, facts)}, plays ${level} throughout the band.${onsets(design)}`;
  } else {
    first = `It needs no vent: a closed box, ${edges(design, facts)}, plays ${level} throughout the band.`;
  }
  const deep = response.cutoff <= facts.lowest ? 'reaches' : 'does not reach';
  const second = `${vent ? `Tuned to ${say('frequency', vent.fb, 'Hz')}, it` : 'It'} ${deep} the ${say('frequency', facts.lowest, 'Hz')} that the brief asks for, ${say('level', facts.fall, 'dB')} down at ${say('frequency', response.cutoff, 'Hz')}, and plays at least ${say('level', loudness.level, 'dB')} anywhere in the band${placeWords(design)}; it is limited by ${limitInWords(loudness.binding)}.`;
  return [first, second];
}

/** The verdict in one line: size, vent, reach, level and air speed of the first box. */
export function verdictLine(design: Design, facts: BriefFacts): string {
  const { vent, response, loudness, atWantedLevel } = design;
  const speed = atWantedLevel.airSpeedPeak?.value;
  const tube =
    vent &&
    `${vent.count > 1 ? `${vent.count} vents` : 'vent'} ${say('length', vent.diameter, facts.length)} × ${say('length', vent.length, facts.length, 4)}${vent.bend ? ', bent' : ''}`;
  const air =
    speed !== undefined &&
    `peak air speed ${say('airSpeedPeak', speed, 'm/s')} of ${say('airSpeedPeak', facts.airSpeedPeak, 'm/s')}`;
  const quiet = design.opening && `quiet up to ${say('level', design.opening.noise.quiet.level, 'dB')}`;
  return [
    `Box ${design.name}: ${edges(design, facts)}`,
    tube,
    `reaches ${say('frequency', response.cutoff, 'Hz')} (−${say('level', facts.fall, 'dB')})`,
    `plays ${say('level', loudness.level, 'dB')}${placeWords(design)}`,
    air,
    quiet,
  ]
    .filter(Boolean)
    .join(' · ');
}

/** Why there is no box, and what would have to change. */
export function refusal({ because, nearest }: NotMet): readonly [string, string] {
  const first = `No box meets this brief. ${because.map(tied).join(' ')}`;
  if (!nearest) return [first, 'No similar brief was found that can be met.'];
  const several = nearest.changes.length > 1;
  return [
    first,
    `The nearest brief that can be met asks for ${several ? 'these changes' : 'this change'}; the boxes below answer that brief.`,
  ];
}
