/** Ours obey their laws, and for each law there is a value that breaks it. */
import {
  type Decoder,
  decoderLaws,
  type Recording,
  sourceOfBytes,
  standardDecoders,
  wav,
  wavBytes,
} from '@airspring/transient/recording';
import {
  clipped,
  pinkNoise,
  type Signal,
  shapedBurst,
  signalLaws,
  simulatedProgramme,
  sine,
  summed,
  sweep,
} from '@airspring/transient/signal';
import { expect, test } from 'vitest';
import compressed from '../../literature/recording/compressed.json' with { type: 'json' };

const broken = (laws: readonly { law: string; holds: boolean }[]) =>
  laws.filter(({ holds }) => !holds).map(({ law }) => law);

const signals = [
  sine({ frequency: '440 Hz' }),
  shapedBurst({ frequency: '100 Hz' }),
  sweep({ from: '20 Hz', to: '200 Hz', duration: '0.05 s' }),
  pinkNoise({ seed: 3 }),
  clipped(summed([simulatedProgramme({ seed: 3 }), sine({ frequency: '50 Hz' })]), 2),
];
test.each(signals)('$name obeys the laws of signals', (signal) => {
  expect(broken(signalLaws(signal, 48_000))).toEqual([]);
});

const liar = (compile: Signal['compile']): Signal => ({ name: 'liar', sources: [], compile });
let calls = 0;
test.each([
  ['each sample is finite', liar(() => () => {})],
  [
    'any block holds the same samples',
    liar(() => {
      let last = 0;
      return (from, out) => {
        if (from === 0 && out.length === 4000) last = 0;
        for (let i = 0; i < out.length; i++) out[i] = last++;
      };
    }),
  ],
  [
    'what is compiled anew is the same',
    liar(() => {
      const start = calls++;
      return (_from, out) => out.fill(start);
    }),
  ],
  [
    'it compiles and fills',
    liar(() => {
      throw new Error('no');
    }),
  ],
])('a signal that breaks it: %s', (law, signal) => {
  expect(broken(signalLaws(signal, 48_000))).toEqual([law]);
});

const tone = Float64Array.from({ length: 1000 }, (_, i) => Math.sin(i / 9));
const file = sourceOfBytes(wavBytes({ sampleRate: '8 kHz', channels: [tone, tone] }));

test('ours obey the laws of decoders', async () => {
  expect(broken(await decoderLaws(wav, file))).toEqual([]);
  for (const { base64 } of compressed.files) {
    const source = sourceOfBytes(new Uint8Array(Buffer.from(base64, 'base64')));
    const start = await source.read(0, 4096);
    const decoder = standardDecoders.find(({ knows }) => knows(start))!;
    expect(broken(await decoderLaws(decoder, source))).toEqual([]);
  }
});

const changed = (change: (recording: Recording) => Partial<Recording>): Decoder => ({
  ...wav,
  open: async (source) => {
    const recording = await wav.open(source);
    return { ...recording, ...change(recording) };
  },
});
const eachBlock = (by: (block: readonly Float64Array[], length: number) => readonly Float64Array[]): Decoder =>
  changed(({ blocks }) => ({
    async *blocks(options) {
      for await (const block of blocks(options)) yield by(block, options?.length ?? 0);
    },
  }));

test.each([
  ['it knows its format by the start', { ...wav, knows: () => false }],
  ['blocks have the channels that are told', eachBlock(([left, right]) => [left!, right!.slice(1)])],
  ['blocks are no longer than asked for', changed(({ blocks }) => ({ blocks: () => blocks({ length: 500 }) }))],
  ['there are as many frames as told', changed(() => ({ frames: 7 }))],
  ['each sample is finite', eachBlock((block) => block.map((channel) => channel.map(() => Number.NaN)))],
  [
    'the sound is the same by any blocks',
    eachBlock((block, length) => block.map((channel) => channel.map((sample) => sample + length))),
  ],
] as const)('a decoder that breaks it: %s', async (law, decoder) => {
  expect(broken(await decoderLaws(decoder, file))).toContain(law);
});
