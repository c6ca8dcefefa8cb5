import { visible } from '@airspring/core/fault';
import { greatestCoilRise } from '@airspring/core/limit';
import { format } from '@airspring/core/quantity';
import type { Slice } from '@airspring/transient/timeline';
import { listOf } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import { caution, heading, paragraph, table } from '../words/layout.js';
import { phrasing, type Units } from '../words/phrasing.js';
import type { Played } from './play.js';
import { isNoise } from './played-again.js';

type LimitAccount = Played['account']['limits'][number];

/** The peaks of the air speed in each vent; vents alike are one. */
const airSpeedsOf = ({ account: { peak } }: Pick<Played, 'account'>): readonly number[] =>
  Object.keys(peak).flatMap((name) => (/^ventAirSpeed( |$)/.test(name) ? [peak[name]!] : []));

/** A limit as a noun. */
export function nounOf(name: string, played: Pick<Played, 'account' | 'givesOut'>): string {
  const where = airSpeedsOf(played).length > 1 ? 'a vent' : 'the vent';
  if (name === 'quiet vent') return `the lowest onset of noise in ${where}`;
  if (name === 'noisy vent') return `the highest onset of noise in ${where}`;
  return played.givesOut[name] ?? name;
}

/** A time in a piece, as 2:05.3. */
export function clock(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const minutes = Math.floor(tenths / 600);
  return `${minutes}:${((tenths - 600 * minutes) / 10).toFixed(1).padStart(4, '0')}`;
}

/** How much louder or quieter it may be, in tenths of a decibel; what is left over is on the side on which the limit is kept. */
function mayBe({ louder }: Pick<LimitAccount, 'louder'>): string {
  if (louder === undefined) return 'any level';
  const tenths = Math.floor(200 * Math.log10(louder) + 1e-6);
  if (tenths === 0) return 'as it is';
  return `${(Math.abs(tenths) / 10).toFixed(1)} dB ${tenths > 0 ? 'louder' : 'quieter'}`;
}

/** Stretches in which a limit is passed. */
function passages({ slices }: Pick<Played, 'slices'>, limit: number): readonly { from: number; to: number }[] {
  const out: { from: number; to: number }[] = [];
  let wasPassed = false;
  for (const { from, duration, used } of slices) {
    const isPassed = used[limit]! > 1 + 1e-9;
    const last = out.at(-1);
    if (isPassed && wasPassed && last) last.to = from + duration;
    else if (isPassed) out.push({ from, to: from + duration });
    wasPassed = isPassed;
  }
  return out;
}

const often = (times: number) => (times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`);

const COUNTS: Readonly<Record<number, string>> = { 2: 'Two', 3: 'Three', 4: 'Four', 5: 'Five', 6: 'Six' };

/** What gives out most, as sentences. */
function verdict(played: Played): string {
  const { account, again } = played;
  const [worst] = account.limits.filter((one) => !isNoise(one)).toSorted((a, b) => b.mostUsed - a.mostUsed);
  if (account.peak.voltage === 0) return 'The recording is silent: no limit is used.';
  if (worst === undefined) return 'The brief states no limit.';
  const noun = nounOf(worst.name, played);
  if (worst.firstPassed === undefined) {
    return `Every limit is kept. The nearest is ${noun}, at ${clock(worst.mostAt)}: the recording may be played ${mayBe(again ?? worst)}.${againText(played)}`;
  }
  const many = account.limits.filter((one) => !isNoise(one) && one.firstPassed !== undefined).length;
  return `${many === 1 ? 'One limit is' : `${COUNTS[many] ?? many} limits are`} passed. What gives out most is ${noun}: it is passed ${often(worst.times)}, ${worst.passedFor.toFixed(1)} s in all, for the first time at ${clock(worst.firstPassed)} and most at ${clock(worst.mostAt)}. The recording must be played ${mayBe(again ?? worst)} to keep ${again ? 'every limit' : 'it'}.${againText(played)}`;
}

/** What came out of playing it again. */
const againText = (played: Played): string =>
  played.again
    ? ` Played again so, it uses ${(100 * played.again.mostUsed).toFixed(0)} % of the most used limit: ${nounOf(played.again.limit, played)}.`
    : '';

const hotText = (rise: number): string =>
  rise > greatestCoilRise
    ? ` Above ${greatestCoilRise} K the model of the heat ends, and few coils survive: play it quieter.`
    : '';

type Travel = (metres: number) => string;

/** How it was simulated, and what that leaves out. */
function simulationText({ simulation, account: { unsolved, peak } }: Played, travel: Travel): string {
  const { kind, includes, leftOut, untold, beyond } = simulation;
  if (kind === 'linear') {
    const more = leftOut.length > 0 ? ` With --nonlinear it has ${listOf(leftOut)} as well.` : '';
    return `The simulation is linear: beyond the travel of the cone a driver does something else.${more}`;
  }
  const left = untold.length > 0 ? ` Left out, since the brief does not tell it: ${listOf(untold)}.` : '';
  const says = [
    `The simulation is nonlinear. What changes with level in it: ${listOf(includes)}.${left}`,
    'The last column but one is in proportion to the level, which is only about right here.',
    beyond &&
      `The cone goes ${travel(beyond.farthest)}; the curves are known up to ${travel(beyond.reach)}, and taken to stay as they are there.`,
    peak.coilRise !== undefined && `The coil gets warmer by ${peak.coilRise.toFixed(0)} K.${hotText(peak.coilRise)}`,
    unsolved > 0 && `${unsolved} samples have no solution: do not trust the loudest passages.`,
  ];
  return says.filter((one) => typeof one === 'string').join(' ');
}

/** For which part of the time a vent is quiet, doubtful and noisy. */
function ventText(played: Played): string | undefined {
  const { account, slices } = played;
  const at = account.limits.findIndex(({ name }) => name === 'quiet vent');
  if (at < 0 || account.duration === 0) return undefined;
  const [quiet, noisy] = [account.limits[at]!, account.limits[at + 1]!];
  const several = airSpeedsOf(played).length > 1;
  const subject = several ? 'Every vent' : 'The vent';
  const share = (seconds: number) => `${((100 * seconds) / account.duration).toFixed(1)} %`;
  if (quiet.louder === undefined) return `${subject} is quiet all the time.`;
  if (quiet.firstPassed === undefined) {
    return `${subject} is quiet all the time: no published onset of noise is reached when the recording is played ${mayBe(quiet)}.`;
  }
  const sure = slices.reduce((sum, { used, duration }) => sum + (used[at]! > 1 ? 0 : duration), 0);
  const noise = noisy.passedFor > 0 ? `, noisy for ${share(noisy.passedFor)} (above every published onset)` : '';
  const doubt = `doubtful for ${share(Math.max(0, account.duration - sure - noisy.passedFor))} (between the published onsets)`;
  return `${subject} is quiet for ${share(sure)} of the time, ${several ? 'one is ' : ''}${doubt}${noise}. It would be quiet all the time ${mayBe(quiet)}.`;
}

/** What it did at most. */
function greatest(played: Played, travel: Travel): string {
  const { peak, rms } = played.account;
  const speeds = airSpeedsOf(played);
  const says = [
    peak.displacement !== undefined && `the cone travels ${travel(peak.displacement)} one way`,
    speeds.length > 0 &&
      `the air in ${speeds.length > 1 ? 'a vent' : 'the vent'} moves at ${format('airSpeedPeak', Math.max(...speeds), 'm/s')}`,
    peak.current !== undefined && `the current is ${format('currentRms', peak.current, 'A')}`,
  ].filter((one) => one !== false);
  const level = 20 * Math.log10((rms.pressure ?? 0) / 20e-6);
  const mean = level > 0 ? ` The mean level is ${level.toFixed(0)} dB at 1 m in half space.` : '';
  return `At most, ${says.join(', ')}.${mean}`;
}

/** What a box did while a recording was played, as data: a column for each reading and for each limit, an element a slice. */
export function playData({ slices, account, ...rest }: Played) {
  const columns = (of: (slice: Slice) => Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.keys(account.peak).map((name) => [name, slices.map((slice) => of(slice)[name]!)]));
  const limits = account.limits.map((limit, i) => ({
    ...limit,
    passages: passages({ slices }, i),
    used: slices.map(({ used }) => used[i]!),
  }));
  return {
    ...rest,
    account: { ...account, limits },
    peak: columns(({ peak }) => peak),
    rms: columns(({ rms }) => rms),
  };
}

/** What a box did while a recording was played, for a terminal. */
export function playText(played: Played, units: Units): string {
  const { travel } = phrasing(units);
  const { title, called, recording, account, fullScaleVoltageRms, lumpedError = 0 } = played;
  const rows = account.limits.map((limit) => {
    const { name, mostUsed, times, passedFor, firstPassed, mostAt } = limit;
    const passed = times === 0 ? 'kept' : `${often(times)}, ${passedFor.toFixed(1)} s`;
    const when = firstPassed === undefined ? '' : clock(firstPassed);
    return [`${(100 * mostUsed).toFixed(0)} %`, clock(mostAt), passed, when, mayBe(limit), nounOf(name, played)];
  });
  const listed = account.limits.flatMap((limit, i) => {
    if (isNoise(limit) || limit.times === 0) return [];
    const all = passages(played, i);
    const shown = all.slice(0, 8).map(({ from, to }) => `${clock(from)}–${clock(to)}`);
    return [
      `${nounOf(limit.name, played)}: ${shown.join(', ')}${all.length > 8 ? ` and ${all.length - 8} more` : ''}.`,
    ];
  });
  const channels = recording.channels === 1 ? 'one channel' : `the mean of ${recording.channels} channels`;
  const volts = (rms: number) => format('voltageRms', rms, 'V');
  const full = `A sample of full scale is ${volts(Math.SQRT2 * fullScaleVoltageRms)}, the peak of a sine of ${volts(fullScaleVoltageRms)}.`;
  const sound = `${visible(recording.name)}: ${recording.format}, ${recording.sampleRate} Hz, ${channels}, ${clock(account.duration)} min.`;
  const odd = recording.warnings.map(
    ({ path, got, expected }) => `Note: ${path} is ${visible(String(got))}; expected ${expected}.`,
  );
  const fitted =
    lumpedError > 0.01
      ? `Coil or suspension over frequency are replaced by lumped parts, at most ${(100 * lumpedError).toFixed(1)} % off from 5 Hz to 5 kHz.`
      : undefined;
  const vent = ventText(played);
  return `${[
    heading(`${title}: ${called}, plays`, '='),
    paragraph(`${sound} ${full}`),
    ...odd.map(paragraph),
    paragraph(verdict(played)),
    ...(vent ? [paragraph(vent)] : []),
    paragraph(greatest(played, travel)),
    table('rrllll', [['most', 'at', 'passed', 'first', 'may be', 'limit'], ...rows]),
    ...(listed.length > 0 ? [listed.map(paragraph).join('\n')] : []),
    paragraph(
      `Peaks are judged in slices of ${played.slice.toFixed(1)} s, heat over 10 s. ${simulationText(played, travel)}`,
    ),
    ...(fitted ? [paragraph(fitted)] : []),
    caution(cautions.hearing),
  ].join('\n\n')}\n`;
}
