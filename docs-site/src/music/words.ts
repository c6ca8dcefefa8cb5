import { list, say } from '../say.js';
import { type BoxAccount, type Kept, ROUNDING } from './account.js';
import { clock } from './clock.js';
import type { Heard } from './heard.js';
import { noteName, semitoneOf } from './notes.js';

const decibels = (factor: number): string => `${Math.abs(20 * Math.log10(factor)).toFixed(1)} dB`;
export const often = (times: number): string => (times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`);
export const seconds = (time: number): string => `${time.toFixed(1)} s`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How much louder or softer it may be until a limit is just kept; a tenth of a decibel is no difference. */
export function mayBe({ mostUsed }: Kept): string {
  if (mostUsed === 0) return 'as loud as you like';
  if (decibels(mostUsed) === '0.0 dB') return mostUsed > 1 + ROUNDING ? '0.1 dB softer' : 'as it is';
  return `${decibels(mostUsed)} ${mostUsed < 1 ? 'louder' : 'softer'}`;
}

const NOUNS: Readonly<Record<string, string>> = {
  travel: 'the travel of the cone (Xmax)',
  heat: 'the heat of the coil (Pe)',
  vent: 'the air speed that its brief allows',
  'amplifier voltage': 'the voltage of the amplifier',
  'amplifier current': 'the current of the amplifier',
  'radiator travel': 'the travel of the passive radiator (Xmax)',
  'quiet vent': 'the lowest onset of noise in the vent',
  'noisy vent': 'the highest onset of noise in the vent',
};
export const nounOf = (name: string): string => NOUNS[name] ?? name;

/** Whether the vent is heard, and what would make it quiet. */
export function noiseSentence({ noise }: BoxAccount): string {
  if (!noise) return 'It has no vent that could be heard.';
  const { quiet, noisy, lasts } = noise;
  if (quiet.times === 0) return `Its vent is quiet all the time, and stays so up to ${mayBe(quiet)}.`;
  if (noisy.times === 0) {
    return `Its vent is never noisy, but for ${seconds(lasts.doubtful)} it may be heard. Played ${mayBe(quiet)} it is quiet throughout; ${mayBe(noisy)}, and it begins to be noisy.`;
  }
  const doubt = lasts.doubtful > 0 ? `, and for another ${seconds(lasts.doubtful)} it may be heard` : '';
  return `Its vent is noisy ${often(noisy.times)}, ${seconds(noisy.passedFor)} in all${doubt}. Played ${mayBe(noisy)} it is never noisy, and ${mayBe(quiet)} it is quiet throughout.`;
}

/** Where it is worst, and on which note. */
export function worstSentence({ noise }: BoxAccount): string {
  if (!noise || noise.quiet.times === 0 || !(noise.worst > 0)) return '';
  const note = noteName(semitoneOf(noise.worst));
  const how = noise.noisy.times > 0 ? 'It is noisiest' : 'It is nearest to being noisy';
  return `${how} at ${clock(noise.noisy.mostAt)}, where the air in the vent swings at ${say('frequency', noise.worst, 'Hz')}, near the note ${note}. `;
}

/** What gives out first besides the vent. */
export function limitSentence({ limits }: BoxAccount): string {
  const own = limits.filter(({ name }) => name !== 'vent');
  const [worst] = [...own].sort((a, b) => b.mostUsed - a.mostUsed);
  if (!worst) return '';
  if (worst.times === 0)
    return `All else keeps its limits: the nearest is ${nounOf(worst.name)}, reached ${mayBe(worst)}.`;
  const others = own.filter((one) => one !== worst && one.times > 0);
  const also = others.length > 0 ? ` It also passes ${list(others.map(({ name }) => nounOf(name)))}.` : '';
  const beyond = own.some(({ name, times }) => name.endsWith('travel') && times > 0)
    ? ' Beyond its travel a cone does something else: where it is passed, these numbers no longer hold.'
    : '';
  return `It passes ${nounOf(worst.name)} ${often(worst.times)}, ${seconds(worst.passedFor)} in all, for the first time at ${clock(worst.firstPassed ?? 0)}; ${mayBe(worst)} it is kept.${also}${beyond}`;
}

/** What stands for a coil that is no circuit. */
export const lumpedSentence = ({ lumpedError }: BoxAccount): string =>
  lumpedError > 0.01
    ? ` Lumped parts stand for its coil or suspension, at most ${(100 * lumpedError).toFixed(1)} % off from 5 Hz to 5 kHz.`
    : '';

/** '44,100'. */
const grouped = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',');

/** What was read, and what is odd about it. */
export function soundSentence({ sound, rate, duration }: Heard, name: string): string {
  const { format, sampleRate, channels, warnings } = sound;
  const mixed = channels === 1 ? 'one channel' : `the mean of ${channels} channels`;
  const brought = rate === sampleRate ? '' : `, brought to ${grouped(rate)} Hz`;
  const odd = warnings.map(({ path, got, expected }) =>
    path === 'recording.frames'
      ? ' The end of the file is missing; what is there was played.'
      : ` Its sample rate of ${String(got)} Hz is odd: sound is recorded ${expected.replace(/, as sound is recorded$/, '')}.`,
  );
  return `${name}: ${format}, ${grouped(sampleRate)} Hz${brought}, ${mixed}, ${clock(duration)} long.${odd.join('')}`;
}
