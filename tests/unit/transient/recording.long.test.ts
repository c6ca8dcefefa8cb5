/** What a recording promises: the same samples from any source, by any blocks; clear refusals. */
import { mkdtemp, open, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isInputError } from '@airspring/core/fault';
import {
  type Decoder,
  flac,
  float32,
  float64,
  mixDown,
  mp3,
  oggVorbis,
  programmeOfRecording,
  type RecordingSource,
  recordingFrom,
  sourceOfBlob,
  sourceOfBytes,
  sourceOfFile,
  standardDecoders,
  wavBytes,
} from '@airspring/transient/recording';
import { programmeOf, sine } from '@airspring/transient/signal';
import { expect, test } from 'vitest';
import { compressed } from '../../../packages/transient/src/recording/compressed.js';
import { faultsOf } from '../../refusal/faults.js';

const tone = Float64Array.from({ length: 5000 }, (_, i) => Math.sin(i / 9));
const file = wavBytes({ sampleRate: '8 kHz', channels: [tone, tone.map((sample) => -sample)], format: float64 });

async function heard(source: RecordingSource, length?: number): Promise<Float64Array> {
  const { blocks, frames = 0 } = await recordingFrom(source);
  const left = new Float64Array(frames);
  let at = 0;
  for await (const [block] of blocks({ length })) {
    left.set(block!, at);
    at += block!.length;
  }
  expect(at).toBe(frames);
  return left;
}

/** The faults for which work that takes time is refused. */
async function faultsIn(work: () => Promise<unknown>) {
  try {
    await work();
  } catch (error) {
    if (isInputError(error)) return error.faults;
    throw error;
  }
  return [];
}

test('memory, a file of Node and a blob give the same sound, by any blocks', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'recording-'));
  const path = join(folder, 'tone.wav');
  await writeFile(path, file);
  const handle = await open(path);
  try {
    expect(await heard(await sourceOfFile(handle), 999)).toEqual(tone);
  } finally {
    await handle.close();
    await rm(folder, { recursive: true });
  }
  expect(await heard(sourceOfBlob(new Blob([file])), 1)).toEqual(tone);
  expect(await heard(sourceOfBytes(file))).toEqual(tone);
  // A view that does not begin where its memory begins.
  const shifted = new Uint8Array(file.length + 3);
  shifted.set(file, 3);
  expect(await heard(sourceOfBytes(shifted.subarray(3)))).toEqual(tone);
});

test('a source that does not know its size is measured', async () => {
  let reads = 0;
  const { read } = sourceOfBytes(file);
  const unmeasured: RecordingSource = {
    read: (offset, length) => {
      reads++;
      return read(offset, length);
    },
  };
  expect(await heard(unmeasured)).toEqual(tone);
  expect(reads).toBeLessThan(60);
  const cut = sourceOfBytes(file.subarray(0, 44 + 16 * 100 + 5)).read;
  const { frames, warnings } = await recordingFrom({ read: cut });
  expect(frames).toBe(100);
  expect(warnings).toEqual([
    {
      code: 'outside-validity',
      path: 'recording.frames',
      got: 100,
      expected: '5000 frames, as the header says: the end is missing',
    },
  ]);
});

test('an hour of sound is read in constant memory', async () => {
  const frames = 3600 * 2000;
  const header = wavBytes({ sampleRate: '2 kHz', channels: [new Float64Array(1)] }).slice(0, 44);
  new DataView(header.buffer).setUint32(40, 2 * frames, true);
  let [most, read] = [0, 0];
  const long: RecordingSource = {
    size: 44 + 2 * frames,
    read: async (offset, length) => {
      most = Math.max(most, length);
      const bytes = new Uint8Array(Math.min(length, 44 + 2 * frames - offset));
      if (offset === 0) bytes.set(header.subarray(0, bytes.length));
      return bytes;
    },
  };
  for await (const [block] of (await recordingFrom(long)).blocks()) read += block!.length;
  expect(read).toBe(frames);
  expect(most).toBeLessThanOrEqual(2 ** 17);
});

test('a format of your own is passed in as ours is', async () => {
  const raw: Decoder = {
    name: 'raw bytes',
    knows: ([first]) => first === 7,
    open: async ({ size = 0 }) => {
      const one = await recordingFrom(
        sourceOfBytes(wavBytes({ sampleRate: '1 kHz', channels: [new Float64Array(size)] })),
      );
      return { ...one, format: 'raw' };
    },
  };
  const decoders = [...standardDecoders, raw];
  expect(await recordingFrom(sourceOfBytes(Uint8Array.of(7, 8, 9)), { decoders })).toMatchObject({
    format: 'raw',
    frames: 3,
  });
});

test('the programme of a recording is that of its signal', async () => {
  const signal = sine({ frequency: '125 Hz' });
  const out = new Float64Array(16_000);
  signal.compile(8000)(0, out);
  const bytes = wavBytes({ sampleRate: '8 kHz', channels: [out, out], format: float64 });
  const recording = await recordingFrom(sourceOfBytes(bytes));
  expect(await programmeOfRecording(recording)).toEqual(programmeOf(signal, { sampleRate: '8 kHz', duration: '2 s' }));
  const difference = await programmeOfRecording(recording, { weights: [1, -1], resolution: '4 Hz' });
  expect(difference).toMatchObject({ ok: false, because: [{ code: 'silence' }] });
});

const changed = (change: (view: DataView) => void, bytes = file) => {
  const copy = bytes.slice();
  change(new DataView(copy.buffer));
  return sourceOfBytes(copy);
};
const ogg = Uint8Array.from([...'OggS'].map((letter) => letter.charCodeAt(0)));

test.each([
  ['no bytes', 'recording', 'empty', sourceOfBytes(new Uint8Array())],
  ['no WAV', 'recording', 'unknown-field', sourceOfBytes(ogg)],
  ['a text', 'recording', 'unknown-field', sourceOfBytes(new TextEncoder().encode('RIFFraff'))],
  ['a header alone', 'recording', 'empty', sourceOfBytes(file.subarray(0, 12))],
  ['half a format', 'recording', 'empty', sourceOfBytes(file.subarray(0, 30))],
  ['no sound', 'recording', 'empty', sourceOfBytes(file.subarray(0, 36))],
  ['no frames', 'recording.frames', 'empty', sourceOfBytes(file.subarray(0, 44))],
  ['half a frame', 'recording.frames', 'empty', sourceOfBytes(file.subarray(0, 50))],
  ['no channels', 'recording.channels', 'empty', changed((view) => view.setUint16(22, 0, true))],
  ['no rate', 'recording.sampleRate', 'out-of-range', changed((view) => view.setUint32(24, 0, true))],
  ['a rate of 4 GHz', 'recording.sampleRate', 'out-of-range', changed((view) => view.setUint32(24, 4e9, true))],
  ['another coding', 'recording.format', 'unknown-field', changed((view) => view.setUint16(20, 2, true))],
  ['80 bits', 'recording.format', 'unknown-field', changed((view) => view.setUint16(32, 20, true))],
  ['more bits than bytes', 'recording.format', 'unknown-field', changed((view) => view.setUint16(34, 65, true))],
  ['odd bytes', 'recording.format', 'unknown-field', changed((view) => view.setUint16(32, 15, true))],
  ['an odd size', 'recording.size', 'out-of-range', { ...sourceOfBytes(file), size: -1 }],
  ['too many bytes', 'recording.read', 'inconsistent', { size: 9, read: async () => new Uint8Array(9999) }],
  ['no bytes at all', 'recording.read', 'inconsistent', { read: async () => 'RIFF' as unknown as Uint8Array }],
] as const)('%s is refused at %s as %s', async (_name, path, code, source: RecordingSource) => {
  expect(await faultsIn(() => recordingFrom(source))).toMatchObject([{ path, code }]);
});

test.each([
  ['NaN', 'not-finite', Number.NaN],
  ['an infinity', 'not-finite', Number.POSITIVE_INFINITY],
  ['a number that is no sound', 'out-of-range', 1e7],
] as const)('a recording that holds %s is refused where it is', async (_name, code, value) => {
  const source = changed((view) => view.setFloat64(44 + 16 * 4000 + 8, value, true));
  expect(await faultsIn(() => heard(source, 300))).toMatchObject([{ code, path: 'recording.channels[1][4000]' }]);
});

test('a file that becomes shorter while it is read is refused', async () => {
  const source = { ...sourceOfBytes(file.subarray(0, 9000)), size: file.length };
  expect(await faultsIn(() => heard(source, 300))).toMatchObject([{ code: 'inconsistent', path: 'recording.size' }]);
});

test('blocks of no frames are refused', async () => {
  expect(await faultsIn(() => heard(sourceOfBytes(file), 0))).toMatchObject([{ path: 'recording.length' }]);
});

const sampleRate = '8 kHz';
test.each([
  ['wav.channels', 'empty', () => wavBytes({ sampleRate, channels: [] })],
  ['wav.channels', 'inconsistent', () => wavBytes({ sampleRate, channels: [[0], [0, 1]] })],
  ['wav.channels[0][1]', 'not-finite', () => wavBytes({ sampleRate, channels: [[0, Number.NaN]] })],
  ['wav.channels', 'out-of-range', () => wavBytes({ sampleRate, channels: Array.from({ length: 65_536 }, () => [0]) })],
  ['wav.sampleRate', 'out-of-range', () => wavBytes({ sampleRate: '0.5 Hz', channels: [[0]] })],
  ['channels', 'empty', () => mixDown([])],
  ['channels', 'inconsistent', () => mixDown([tone, new Float64Array(1)])],
  ['weights', 'inconsistent', () => mixDown([tone], [1, 2])],
  ['weights', 'not-finite', () => mixDown([tone], [Number.NaN])],
] as const)('%s is refused as %s', (path, code, work) => {
  expect(faultsOf(work)).toMatchObject([{ path, code }]);
});

test('whole numbers are cut off at full scale, floating point is not', async () => {
  const loud = [2, -2, 0.5];
  expect([...(await heard(sourceOfBytes(wavBytes({ sampleRate, channels: [loud] }))))]).toEqual([
    1 - 2 ** -15,
    -1,
    0.5,
  ]);
  expect([...(await heard(sourceOfBytes(wavBytes({ sampleRate, channels: [loud], format: float32 }))))]).toEqual(loud);
});

test('a package that is not installed is named, with the line that installs it', async () => {
  const decoders = [
    compressed({
      name: 'Odd',
      package: 'odd-decoder',
      knows: () => true,
      make: () => Promise.reject(new Error('Cannot find package')),
    }),
  ];
  expect(await faultsIn(() => recordingFrom(sourceOfBytes(file), { decoders }))).toEqual([
    {
      code: 'unknown-field',
      path: 'recording',
      got: 'Odd; its decoder was not loaded: Cannot find package',
      expected: 'the package odd-decoder',
      remedy: 'Install it: npm install odd-decoder',
    },
  ]);
});

test.each([flac, mp3, oggVorbis])('a file that only begins as $name is refused', async (decoder) => {
  const starts = { FLAC: 'fLaC', MP3: 'ID3', 'Ogg Vorbis': `OggS${' '.repeat(25)}vorbis` };
  const bytes = new TextEncoder().encode(`${starts[decoder.name as keyof typeof starts]}${'no sound '.repeat(4000)}`);
  expect(decoder.knows(bytes)).toBe(true);
  expect(await faultsIn(() => recordingFrom(sourceOfBytes(bytes)))).toMatchObject([
    { path: 'recording', code: 'empty' },
  ]);
});
