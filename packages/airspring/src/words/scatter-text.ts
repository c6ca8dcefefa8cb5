import { listOf } from '../kind/wording.js';
import type { Design } from '../record/design-record.js';
import type { ScatterTold } from '../record/scatter.js';
import { paragraph } from './layout.js';
import type { Phrasing } from './phrasing.js';

/** Numbers of a network as a builder knows them. */
const KNOWN: Readonly<Record<string, string>> = {
  Cms: 'the compliance of the suspension',
  Bl: 'the strength of the motor (Bl)',
  Mms: 'the moving mass',
  Re: 'the resistance of the voice coil',
  Cab: 'the air in the box',
  'Cab front': 'the air in the front chamber',
  'Cab rear': 'the air in the rear chamber',
  vent: 'the vent',
  'vent.length': 'the length of the vent',
  'vent front': 'the vent of the front chamber',
  'vent rear': 'the vent of the rear chamber',
  radiatorCompliance: 'the compliance of the radiators',
  radiatorMass: 'the mass of the radiators',
};
const known = (name: string): string => KNOWN[name] ?? name;

/** What matters is told until this share of the variance is. */
const TOLD = 0.8;

const CAUTIONS: Readonly<Record<string, string>> = {
  firstOrder: 'f3 does not change evenly with these numbers, so take the shares as a rough order only.',
  crossings: 'The response of this box falls by 3 dB at more than one frequency, so f3 can jump from one to another.',
};

type Level = NonNullable<ScatterTold['level']>;

/** How far a column of levels lies from the middle one at a frequency, by a straight line between two of its frequencies. */
function apartAt(level: Level, column: 'low' | 'high', f: number): number {
  const { frequencies, middle } = level;
  const apart = (i: number) => Math.abs(level[column][i]! - middle[i]!);
  const above = frequencies.findIndex((one) => one >= f);
  if (above <= 0) return apart(above < 0 ? frequencies.length - 1 : 0);
  const [low, high] = [frequencies[above - 1]!, frequencies[above]!];
  const part = Math.log(f / low) / Math.log(high / low);
  return apart(above - 1) * (1 - part) + apart(above) * part;
}

/** Between which levels builds lie: at the lowest tone that the box plays, and an octave above. */
function levelText(level: Level, depth: number, say: Phrasing): string {
  const [at, above] = [depth, 2 * depth].map((f) => {
    const [softer, louder] = (['low', 'high'] as const).map((column) => say.decibels(apartAt(level, column, f)));
    return `from ${softer} softer to ${louder} louder than the middle one at ${say.hertz(f)}`;
  });
  return ` Nine of ten play ${at}, and ${above}.`;
}

/** How loud builds can play, and how many of them play what is wanted. */
function loudnessText({ low, high, kept }: NonNullable<ScatterTold['greatest']>, say: Phrasing): string {
  const share =
    kept === 1 ? 'All of them play' : kept === 0 ? 'None of them plays' : `${say.percent(kept)} of them play`;
  return `${share} the wanted level within every limit at each frequency of the band. The loudest tone that they can play there is from ${say.decibels(low)} to ${say.decibels(high)} for nine of ten.`;
}

/** What builds of the design will scatter, and what matters most. */
export function scatterText({ scatter, amplifier, response }: Design, say: Phrasing): string[] {
  if (scatter === undefined) return [];
  const { builds, f3, greatest, level, causes, assumed, warnings } = scatter;
  const filter = amplifier.filter === undefined ? '' : ', without your filter';
  const band = f3.ok
    ? `Of ${builds} builds of this box, nine of ten have their f3 between ${say.hertz(f3.low)} and ${say.hertz(f3.high)}${filter}.`
    : f3.because.map(({ text }) => text).join(' ');
  let sum = 0;
  const most = causes.flatMap(({ name, share }) => {
    const told = sum < TOLD;
    sum += share;
    return told ? [`${known(name)} (${say.percent(share)})`] : [];
  });
  const matters = most.length > 0 ? ` What matters most, by its share of the variance: ${listOf(most)}.` : '';
  const normal = assumed.flatMap((one) =>
    'within' in one ? [] : [`${known(one.name)} ${say.percent(one.standardDeviation)}`],
  );
  const even = assumed.flatMap((one) => ('within' in one ? [`${known(one.name)} ±${say.percent(one.within)}`] : []));
  const spread = [
    normal.length > 0 ? `as standard deviations ${listOf(normal)}` : '',
    even.length > 0 ? `at most ${listOf(even)}` : '',
  ].filter((words) => words !== '');
  if (assumed.length === 0) return [paragraph(band)];
  return [
    paragraph(`${band}${level ? levelText(level, response.depth, say) : ''}${matters}`),
    ...(greatest ? [paragraph(loudnessText(greatest, say))] : []),
    paragraph(
      [
        `Assumed by common practice: ${spread.join('; ')}.`,
        ...warnings.flatMap(({ path }) => CAUTIONS[path] ?? []),
      ].join(' '),
    ),
  ];
}
