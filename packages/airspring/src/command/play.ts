import { open } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type Fault, InputError, isInputError, visible } from '@airspring/core/fault';
import { lumpedFit } from '@airspring/core/network';
import { kinds, si } from '@airspring/core/quantity';
import type { Slice, TimelineAccount } from '@airspring/transient/timeline';
import type { Progress } from '../search/search.js';
import { whyUnreadable } from './brief-file.js';
import { peakOf } from './peak-of-full-scale.js';
import { type PlayedAgain, playedAgain } from './played-again.js';
import type { PlayedBox } from './played-box.js';
import { type SimulationTold, simulatedOf } from './simulated.js';

/** What a box did while a recording was played. */
export interface Played {
  readonly version: 1;
  readonly title: string;
  readonly called: string;
  readonly recording: {
    readonly name: string;
    readonly format: string;
    readonly sampleRate: number;
    readonly channels: number;
    readonly warnings: readonly { readonly path: string; readonly got: unknown; readonly expected: string }[];
  };
  /** What a sine of full scale is given, V rms. */
  readonly fullScaleVoltageRms: number;
  /** Greatest error of coil and suspension where they are replaced by lumped parts, 5 Hz to 5 kHz. */
  readonly lumpedError?: number;
  /** How long a slice is, s. */
  readonly slice: number;
  readonly simulation: SimulationTold;
  readonly account: TimelineAccount;
  /** The names of its limits as nouns. */
  readonly givesOut: Readonly<Record<string, string>>;
  readonly slices: readonly Slice[];
  /** For a nonlinear simulation, which is not twice as far at twice the drive: what came out at the level where every limit is just kept. */
  readonly again?: PlayedAgain;
}

/** What the command loads where it plays. */
const transient = async () => ({
  ...(await import('@airspring/transient/recording')),
  ...(await import('@airspring/transient/simulation')),
  ...(await import('@airspring/transient/timeline')),
});
export type Transient = typeof transient;

/** Why nothing was played: one line, and whether a package is missing or the file of the recording cannot be read. */
export interface NotPlayed {
  readonly not: 'installed' | 'readable' | 'accepted';
  readonly line: string;
}

/** The package for it, or `undefined` where it is not installed. */
async function loaded(load: Transient): Promise<Awaited<ReturnType<Transient>> | undefined> {
  try {
    return await load();
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ERR_MODULE_NOT_FOUND' && message.includes('@airspring/transient')) return undefined;
    throw error;
  }
}

/** Rates at which a box is simulated; sound of another rate is brought to 48 kHz. */
const [slowest, fastest, usual] = [32_000, 96_000, 48_000];
/** Sound is brought to at most so many times its rate. */
const MOST_FASTER = 100;

/** Voltages that can be played, V rms. */
const [softest, loudest] = kinds.voltageRms.range;

interface PlayHow {
  /** What a sample of full scale is given, as text with its unit. */
  readonly peak?: string | undefined;
  readonly simulation?: SimulationTold['kind'] | undefined;
  readonly progress: Progress;
  readonly load?: Transient | undefined;
}

/** Plays a recording through a box. */
export async function play(
  box: PlayedBox,
  recordingPath: string,
  standing: string,
  { peak, simulation, progress, load = transient }: PlayHow,
): Promise<Played | NotPlayed> {
  const shown = visible(recordingPath);
  const library = await loaded(load);
  if (library === undefined) {
    return { not: 'installed', line: 'a recording is played by another package: npm install @airspring/transient' };
  }
  const { recordingFrom, sourceOfFile, compileTimeline, timelineOfRecording } = library;
  const fullScale = peak === undefined ? box.voltage : peakOf(peak) / Math.SQRT2;
  const parts = lumped(box);
  if (typeof parts === 'string') return { not: 'accepted', line: parts };
  const { network, error } = parts;
  const simulated = simulatedOf(box, network, simulation, library);
  let file: Awaited<ReturnType<typeof open>>;
  try {
    file = await open(resolve(standing, recordingPath), 'r');
  } catch (fault) {
    return { not: 'readable', line: `${shown}: ${whyUnreadable(fault)}` };
  }
  try {
    if ((await file.stat()).isDirectory()) return { not: 'readable', line: `${shown}: this is a folder, not a file` };
    const source = await sourceOfFile(file);
    const recording = await recordingFrom(source);
    const { sampleRate, channels, format, warnings, duration = 0 } = recording;
    if (MOST_FASTER * sampleRate < usual) throw new InputError([tooSlow(sampleRate)]);
    const timeline = compileTimeline(
      { network, air: box.system.air },
      {
        sampleRate: sampleRate < slowest || sampleRate > fastest ? si('frequency', usual) : sampleRate,
        limits: box.limits,
        vents: box.vents,
        outputs: ['pressure', ...simulated.outputs],
        ...(box.filter && { filter: box.filter }),
        ...(simulated.simulate && { simulate: simulated.simulate }),
      },
    );
    /** Plays it so many times as loud. */
    const playAt = async (factor: number, what: string, keep: (slice: Slice) => void) => {
      const each = (some: readonly Slice[]) => {
        some.forEach(keep);
        const heard = some.at(-1);
        if (heard === undefined) return;
        const count = Math.round(heard.from);
        progress({ doing: 'playing', what, count, of: Math.max(count, Math.round(duration)) });
      };
      const again = await recordingFrom(source);
      return timelineOfRecording(timeline, again, { fullScale: si('voltageRms', factor * fullScale), each });
    };
    const slices: Slice[] = [];
    const account = await playAt(1, 'second', (slice) => slices.push(slice));
    const told = simulated.told();
    const again =
      simulated.simulate &&
      (await playedAgain(account, (factor) =>
        factor * fullScale < softest || factor * fullScale > loudest
          ? undefined
          : playAt(factor, 'second again', () => {}),
      ));
    return {
      version: 1,
      title: box.title,
      called: box.called,
      recording: { name: recordingPath, format, sampleRate, channels, warnings },
      fullScaleVoltageRms: fullScale,
      ...(error > 0 && { lumpedError: error }),
      simulation: told,
      slice: timeline.slice,
      account,
      givesOut: box.givesOut,
      slices,
      ...(again && { again }),
    };
  } catch (fault) {
    if (isInputError(fault)) {
      return {
        not: 'accepted',
        line: fault.faults.map((one) => `${shown}: ${new InputError([one]).message}`).join('\n'),
      };
    }
    return { not: 'readable', line: `${shown}: ${whyUnreadable(fault)}` };
  } finally {
    await file.close();
  }
}

const tooSlow = (got: number): Fault => ({
  code: 'out-of-range',
  path: 'recording.sampleRate',
  got,
  expected: `at least ${usual / MOST_FASTER} Hz`,
  remedy: 'Choose a recording with more samples in each second.',
});

/** The network of a box, with lumped parts in place of a coil or a suspension over frequency; or why it has none. */
function lumped({ system, called, remedy }: PlayedBox) {
  const fit = lumpedFit(system.network, { from: 5, to: 5000 });
  if (fit.ok) return { network: fit.network, error: fit.greatestError };
  const why = fit.because.map(({ text }) => text).join('; ');
  return `${called}, cannot be played over time: ${why}${remedy ? `. ${remedy}` : ''}`;
}
