/** The page about music of one's own: what it tells of a piece, at any drive, and what it plays to hear. */
import { readFileSync } from 'node:fs';
import { temperatureAfter } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { float32, type Recording, recordingFrom, sourceOfBytes, wavBytes } from '@airspring/transient/recording';
import { compileTimeline, timelineOfRecording } from '@airspring/transient/timeline';
import { beforeAll, describe, expect, test } from 'vitest';
import { boxAccount } from '../../../docs-site/src/music/account.js';
import { boxes, type Playable, playableOf, wider } from '../../../docs-site/src/music/boxes.js';
import { clock } from '../../../docs-site/src/music/clock.js';
import { coilRise, supposed } from '../../../docs-site/src/music/coil-rise.js';
import { type Heard, playThrough } from '../../../docs-site/src/music/heard.js';
import { excerptOf } from '../../../docs-site/src/music/listening.js';
import { frequencyOf, noteName, semitoneOf } from '../../../docs-site/src/music/notes.js';
import { pieces, recordingOf } from '../../../docs-site/src/music/pieces.js';
import { musicTold } from '../../../docs-site/src/music/told.js';
import { playedBox } from '../../../packages/airspring/src/command/played-box.js';
import { retrofitted } from '../../arbitrary/standing.js';

const boxNamed = (id: string): Playable => {
  const choice = boxes.find((one) => one.id === id)!;
  const made = playableOf(choice, JSON.parse(choice.brief));
  if (!made.ok) throw new Error(made.because);
  return made.box;
};
const [old, wide] = [boxNamed('old'), boxNamed('wider')];
const RATE = 32_000;
const sound = (seconds: number, of: (t: number) => number): Promise<Recording> =>
  recordingFrom(
    sourceOfBytes(
      wavBytes({
        sampleRate: si('frequency', RATE),
        channels: [Float64Array.from({ length: seconds * RATE }, (_, i) => of(i / RATE))],
        format: float32,
      }),
    ),
  );
const tone = (frequency: number, t: number) => Math.sin(2 * Math.PI * frequency * t);

describe('our storm', () => {
  let heard: Heard;
  beforeAll(async () => {
    heard = await playThrough(recordingOf(pieces[0]!), [old, wide]);
  });

  test('at another drive every number is that of a timeline of that very drive', async () => {
    const drive = 7.3;
    const { network, air, limits, vents } = old;
    const timeline = compileTimeline({ network, air }, { sampleRate: '48 kHz', limits, vents, outputs: ['pressure'] });
    const account = await timelineOfRecording(timeline, recordingOf(pieces[0]!), {
      fullScale: si('voltageRms', drive),
    });
    const mine = boxAccount(heard.boxes[0]!, drive, heard);
    const all = [...mine.limits, mine.noise!.quiet, mine.noise!.noisy];
    for (const { name, mostUsed, mostAt, times, passedFor, firstPassed } of account.limits) {
      const kept = all.find((one) => one.name === name)!;
      expect(kept.mostUsed, name).toBeCloseTo(mostUsed, 9);
      expect([kept.times, kept.mostAt], name).toEqual([times, expect.closeTo(mostAt, 9)]);
      expect(kept.passedFor, name).toBeCloseTo(passedFor, 9);
      expect(kept.firstPassed ?? -1, name).toBeCloseTo(firstPassed ?? -1, 9);
    }
    expect(mine.travel).toBeCloseTo(account.peak.displacement!, 12);
    expect(mine.airSpeed).toBeCloseTo(account.peak.ventAirSpeed!, 9);
    const { quiet, doubtful, noisy } = mine.noise!.lasts;
    expect(quiet + doubtful + noisy).toBeCloseTo(account.duration, 6);
  });

  test('the first paragraph says what the short program prints', () => {
    const printed = readFileSync(
      new URL('../../../docs-site/examples/printed/your-own-music-in-short.txt', import.meta.url),
      'utf8',
    );
    const { first, accounts } = musicTold(heard, 20);
    const numbers = (text: string) => text.match(/\d+(?:\.\d)?(?=\u00a0| )/g);
    expect(numbers(printed)).toEqual([accounts[0]!.level.toFixed(0), ...numbers(first)!]);
  });

  test('words flip with the drive: noisy, doubtful, quiet', () => {
    const said = [20, 9, 1].map((drive) => musicTold(heard, drive).first);
    expect(said[0]).toMatch(/^Its vent is noisy 5.times/);
    expect(said[1]).toMatch(/^Its vent is never noisy, but for/);
    expect(said[2]).toMatch(/^Its vent is quiet all the time, and stays so up to [\d.]+.dB louder/);
  });
});

test('the wider vent is the one that the page of the old box proposes behind the larger hole', () => {
  const { rows } = retrofitted(JSON.parse(boxes[0]!.brief));
  const row = rows.find(({ change }) => change.includes('larger saw'))!;
  expect(row).toMatchObject({ ok: true, box: { tubes: [{ diameter: 0.069, length: 0.433 }] } });
  expect([wider.diameter, wider.length]).toEqual(['69 mm', '433 mm']);
  const { netVolume } = (row as { readonly box: { readonly netVolume: number } }).box;
  expect(Number.parseFloat(wider.air)).toBeCloseTo(1000 * netVolume, 2);
});

test('a steady tone is told as its note', async () => {
  for (const frequency of [33, 41.2, 55]) {
    const heard = await playThrough(await sound(2, (t) => tone(frequency, t)), [old]);
    expect(heard.boxes[0]!.tone.at(-1)! / frequency).toBeCloseTo(1, 2);
  }
});

test('notes have their names: the strings of a double bass, and a middle C', () => {
  expect([41.2, 55, 73.4, 98, 261.6].map((f) => noteName(semitoneOf(f)))).toEqual(['E1', 'A1', 'D2', 'G2', 'C4']);
  expect(frequencyOf(semitoneOf(41.2))).toBeCloseTo(41.203, 3);
});

test('a coil warms up as two stages do that are solved exactly', () => {
  const rise = coilRise(new Float64Array(6000).fill(0.4), 0.1);
  for (const seconds of [1, 20, 600]) {
    const { coil } = temperatureAfter(
      {
        coilToMagnet: si('thermalResistance', supposed.coilToMagnet),
        magnetToAir: si('thermalResistance', supposed.magnetToAir),
        coilTime: si('time', supposed.coilTime),
        magnetTime: si('time', supposed.magnetTime),
      },
      { power: si('power', 0.4), time: si('time', seconds) },
    );
    expect(rise[10 * seconds - 1]! / coil).toBeCloseTo(1, 2);
  }
});

test('what is heard of a box differs from its source by the response of the box, and neither is loud', async () => {
  const [low, high] = [35, 80];
  const both = await sound(3, (t) => 0.4 * tone(low, t) + 0.4 * tone(high, t));
  const { tracks, rate } = await excerptOf(both, [old], 0);
  // Over whole periods of both, when the start has died away.
  const amplitude = (samples: Float32Array, frequency: number) => {
    let [re, im] = [0, 0];
    for (let i = 0; i < rate; i++) {
      re += samples[2 * rate + i]! * Math.cos((2 * Math.PI * frequency * i) / rate);
      im += samples[2 * rate + i]! * Math.sin((2 * Math.PI * frequency * i) / rate);
    }
    return Math.hypot(re, im);
  };
  const [source, box] = tracks.map((track) => 20 * Math.log10(amplitude(track, low) / amplitude(track, high)));
  const standing = playedBox(JSON.parse(boxes[0]!.brief), undefined, () => {});
  if (!standing.ok) throw new Error(standing.lines.join());
  const { levelHalfSpace } = respond(standing.system, [low, high]);
  expect(box! - source!).toBeCloseTo(levelHalfSpace[0]! - levelHalfSpace[1]!, 1);
  const rms = tracks.map((track) => Math.sqrt(track.reduce((sum, x) => sum + x * x, 0) / track.length));
  expect(rms[0]).toBeCloseTo(rms[1]!, 6);
  for (const track of tracks)
    expect(track.reduce((most, x) => Math.max(most, Math.abs(x)), 0)).toBeLessThanOrEqual(0.5);
});

test('a stretch is cut where it is asked for, and no longer than half a minute', async () => {
  const piece = await sound(40, (t) => (t < 8 ? 0 : 0.5 * tone(60, t)));
  const { tracks } = await excerptOf(piece, [wide], 7);
  expect(tracks.map(({ length }) => length / RATE)).toEqual([30, 30]);
  const loud = tracks[0]!.findIndex((x) => Math.abs(x) > 0.01);
  expect(loud / RATE).toBeCloseTo(1, 1);
});

test('silence is told as such', async () => {
  const told = musicTold(await playThrough(await sound(1, () => 0), [old, wide]), 20);
  expect(told).toMatchObject({ silent: true, first: 'The recording is silent: nothing moves, and nothing is heard.' });
  expect(told.picture('wide') + told.limits() + told.notes()).not.toMatch(/NaN|Infinity|undefined/);
});

test('times are told in minutes', () => {
  expect([0, 59.96, 125.3].map((time) => clock(time))).toEqual(['0:00.0', '1:00.0', '2:05.3']);
  expect([0, 59.6, 300].map((time) => clock(time, 0))).toEqual(['0:00', '1:00', '5:00']);
});
