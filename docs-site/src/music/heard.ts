import { si } from '@airspring/core/quantity';
import { mixDown, type Recording, resampled } from '@airspring/transient/recording';
import { compileTimeline, type Slice, type TimelineAccount } from '@airspring/transient/timeline';
import type { Playable } from './boxes.js';
import { withStrokes } from './strokes.js';

/** What is limited, and by how much. */
export interface HeardLimit {
  readonly name: string;
  /** Greatest rms value of a sine, SI; left out for the noise of a vent, whose onsets depend on the tone. */
  readonly greatestRms?: number;
  /** How much of it is used in each slice. */
  readonly used: Float64Array<ArrayBuffer>;
}

/**
 * What a box did while a piece was played at 1 V for a sine of full scale. The simulation is linear: each number grows with the drive
 * in proportion. Columns have an element for each slice.
 */
export interface HeardBox {
  readonly called: string;
  readonly short: string;
  /** Greatest sine of its amplifier, V rms. */
  readonly voltage: number;
  /** Of lumped parts that stand for its coil or suspension. */
  readonly lumpedError: number;
  readonly limits: readonly HeardLimit[];
  /** Peak values, SI, by the names of outputs: `voltage`, `displacement`, `ventAirSpeed`, `current`. */
  readonly peak: Readonly<Record<string, Float64Array<ArrayBuffer>>>;
  /** Root mean squares of `current`, A, and of `pressure` at 1 m in half space, Pa. */
  readonly rms: Readonly<Record<string, Float64Array<ArrayBuffer>>>;
  /** The tone that moves the air in the vent, Hz: peak speed over peak travel; 0 where it stands. */
  readonly tone: Float64Array<ArrayBuffer>;
}

/** A piece, and what each box did with it. */
export interface Heard {
  readonly sound: Pick<Recording, 'format' | 'sampleRate' | 'channels' | 'warnings'>;
  /** Rate of the simulation, Hz. */
  readonly rate: number;
  /** s; of one slice, and of the piece. */
  readonly slice: number;
  readonly duration: number;
  readonly boxes: readonly HeardBox[];
}

/** Rates at which a box is simulated; sound of another rate is brought to 48 kHz. */
const [slowest, fastest, usual] = [32_000, 96_000, 48_000];
export const rateFor = (sampleRate: number): number =>
  sampleRate < slowest || sampleRate > fastest ? usual : sampleRate;

const SLICE = 0.1;

/** Plays a recording through boxes: it is read once, block by block, and nothing of it is kept but its slices. */
export async function playThrough(
  recording: Recording,
  boxes: readonly Playable[],
  progress: (seconds: number) => void = () => {},
): Promise<Heard> {
  const rate = rateFor(recording.sampleRate);
  const listeners = boxes.map((box) => listener(box, rate));
  let frames = 0;
  for await (const channels of resampled(recording, si('frequency', rate)).blocks()) {
    const drive = mixDown(channels);
    for (let i = 0; i < drive.length; i++) drive[i]! *= Math.SQRT2;
    for (const { take } of listeners) take(drive);
    frames += drive.length;
    progress(frames / rate);
  }
  const { format, sampleRate, channels, warnings } = recording;
  return {
    sound: { format, sampleRate, channels, warnings },
    rate,
    slice: SLICE,
    duration: frames / rate,
    boxes: listeners.map(({ end }) => end()),
  };
}

/** One box that hears block after block. */
function listener(box: Playable, rate: number) {
  const strokes: number[] = [];
  const { limits, vents, filter } = box;
  const timeline = compileTimeline(
    { network: box.network, air: box.air },
    {
      sampleRate: si('frequency', rate),
      slice: si('time', SLICE),
      limits,
      vents,
      outputs: ['pressure'],
      ...(filter && { filter }),
      simulate: withStrokes(Math.round(SLICE * rate), (stroke) => strokes.push(stroke)),
    },
  );
  const hearing = timeline.start();
  const slices: Slice[] = [];
  const collect = (some: readonly Slice[]) => {
    for (const slice of some) slices.push(slice);
  };
  const end = (): HeardBox => {
    collect(timeline.end(hearing));
    return columnsOf(box, timeline.limits, slices, strokes);
  };
  return { take: (drive: Float64Array) => collect(timeline.take(hearing, drive)), end };
}

function columnsOf(
  { called, short, voltage, limits, lumpedError }: Playable,
  judged: readonly { readonly name: string }[],
  slices: readonly Slice[],
  strokes: readonly number[],
): HeardBox {
  const column = (of: (slice: Slice) => number | undefined) => Float64Array.from(slices, (slice) => of(slice) ?? 0);
  const named = (of: (slice: Slice) => TimelineAccount['peak'], names: readonly string[]) =>
    Object.fromEntries(
      names
        .filter((name) => slices[0] && name in of(slices[0]))
        .map((name) => [name, column((slice) => of(slice)[name])]),
    );
  const peak = named((slice) => slice.peak, ['voltage', 'displacement', 'ventAirSpeed', 'current']);
  return {
    called,
    short,
    voltage,
    lumpedError,
    limits: judged.map(({ name }, i) => ({
      name,
      ...(limits[i] && { greatestRms: limits[i].greatestRms }),
      used: column(({ used }) => used[i]),
    })),
    peak,
    rms: named((slice) => slice.rms, ['current', 'pressure']),
    tone: Float64Array.from(slices, (_, i) => {
      const [speed, stroke] = [peak.ventAirSpeed?.[i] ?? 0, strokes[i] ?? 0];
      return speed > 0 && stroke > 0 ? speed / (Math.PI * stroke) : 0;
    }),
  };
}
