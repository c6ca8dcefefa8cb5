import type { At, Design, Guard } from '../answer.js';
import { cautionOf } from './build-text.js';
import { cautions } from './cautions.js';
import { paragraph, table } from './layout.js';
import { limitName, type Sayings } from './sayings.js';

/** The band that the brief asks for. */
const bandOf = ({ loudness }: Design) => ({
  lowest: loudness.stretches[0]?.from ?? loudness.frequency,
  highest: loudness.stretches.at(-1)?.to ?? loudness.frequency,
});

const limitOf = ({ margins }: Design, path: string): string | undefined =>
  margins.find((margin) => margin.path === path)?.limit;

/** How loud, and what gives out first there. */
export function loudest(design: Design, say: Sayings): string {
  const { level, frequency, binding } = design.loudness;
  const { lowest, highest } = bandOf(design);
  const wanted = limitOf(design, 'wanted.level');
  return `It plays a steady tone of ${say.decibels(level)} anywhere from ${say.edge(lowest)} to ${say.edge(highest)}, at 1 m in half space${wanted === undefined ? '' : ` (wanted: ${wanted})`}. Beyond that the first to give out is ${limitName(binding)}, at ${say.hertz(frequency)}.`;
}

/** What gives out first, stretch by stretch. */
export const stretches = ({ loudness }: Design, say: Sayings): string =>
  table('ll', [
    ['where', 'what gives out first'],
    ...loudness.stretches.map(({ from, to, binding }) => {
      const [low, high] = [say.edge(from), say.edge(to)];
      return [low === high ? `at ${low}` : `${low} to ${high}`, limitName(binding)];
    }),
  ]);

/** What the wanted level asks of everything, each at its worst frequency. */
function atWanted(design: Design, say: Sayings): string {
  const { driveVoltageRms, currentRms, displacementPeak, heat, airSpeedPeak } = design.atWantedLevel;
  const row = (what: string, { value, frequency }: At, text: (value: number) => string, limit?: string) => [
    what,
    text(value),
    say.edge(frequency),
    limit ?? '',
  ];
  return table('lrrr', [
    ['at the wanted level', 'most', 'at', 'limit'],
    row('drive, rms', driveVoltageRms, say.volts, limitOf(design, 'amplifier.voltage')),
    row('current, rms', currentRms, say.amperes, limitOf(design, 'amplifier.current')),
    row('cone travel, peak', displacementPeak, say.travel, say.travel(design.drivers.Xmax)),
    row('heat in each voice coil', heat, say.watts, say.watts(design.drivers.Pe)),
    ...(airSpeedPeak
      ? [row('air speed in the vent, peak', airSpeedPeak, say.speed, limitOf(design, 'vent.airSpeed'))]
      : []),
  ]);
}

export const loudText = (design: Design, say: Sayings): string[] => [
  paragraph(loudest(design, say)),
  stretches(design, say),
  atWanted(design, say),
  paragraph(
    `${say.volts(design.protection.driveVoltageRms)} play the wanted level in the flat part; a level that is the same at every tone asks for the drive above at the tone named, so for an equaliser.`,
  ),
  ...(design.vent
    ? [paragraph('The limit of the air speed is a stated speed, common practice; no sound is predicted from it.')]
    : []),
  ...cautionOf(design, cautions.hearing),
];

/** One drive: down to where it is safe, and what keeps it safe below. */
function guardText(
  { driveVoltageRms, lowestSafeFrequency, neverSafe, highPass }: Guard,
  which: string,
  lowest: number,
  say: Sayings,
) {
  const drive = `At ${say.volts(driveVoltageRms)} rms, ${which},`;
  if (neverSafe) return `${drive} every tone is too much for the travel of the cone: turn down.`;
  if (lowestSafeFrequency === undefined) return `${drive} every tone is safe for the travel of the cone.`;
  const safe = `${drive} the lowest safe frequency is ${say.hertz(lowestSafeFrequency)}: lower tones are too much for the travel of the cone.`;
  if (lowestSafeFrequency > lowest) {
    return `${safe} Wanted tones are among them: turn down; no high-pass below the band helps.`;
  }
  return highPass
    ? `${safe} A second-order Butterworth high-pass at ${say.hertz(highPass.corner)} prevents that; it costs ${say.decibels(highPass.costAtLowest)} at ${say.edge(lowest)}.`
    : `${safe} No second-order high-pass below the band prevents that: turn down, or keep such tones out of the programme.`;
}

/** What keeps the cone safe below the band. */
export function protectionText(design: Design, say: Sayings): string[] {
  const { atFullVoltage, ...wanted } = design.protection;
  const { lowest } = bandOf(design);
  const full = guardText(atFullVoltage, 'all that the amplifier gives', lowest, say);
  const soft = guardText(wanted, 'which play the wanted level in the flat part', lowest, say);
  return [paragraph(`${full} ${soft}`), ...cautionOf(design, cautions.travel)];
}

/** What an impedance measurement of the finished box should show. */
export function impedanceText({ impedance, vent }: Design, say: Sayings): string {
  const spot = ({ value, frequency }: At) => `${say.ohms(value)} at ${say.hertz(frequency)}`;
  const { maxima, minima } = impedance;
  const [first, second] = maxima;
  const dip = minima.find(
    ({ frequency }) => first && second && frequency > first.frequency && frequency < second.frequency,
  );
  const { least } = impedance;
  const peaks = `${maxima.length === 1 ? 'One peak' : 'Peaks'}: ${maxima.map(spot).join(', ')}.`;
  const between = vent && dip ? ` Between them the least is ${spot(dip)}, close to the tuning.` : '';
  return `${peaks}${between} Least of all: ${spot(least)}. Measure this to prove the box: peaks within a few per cent (common practice) are those of this design.`;
}
